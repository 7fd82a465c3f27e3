package io.rowledger.report.record;

import io.rowledger.report.common.SetbackSection;
import io.rowledger.report.common.ZoneSection;
import java.util.ArrayList;
import java.util.List;

/**
 * What the nitrogen record says, for a reader who does not farm and may need it in five years: everything rounded, labelled
 * and in the reader's units. What a person entered carries a flag, so that the page can tell it from what was measured.
 *
 * @param head title and particulars
 * @param answer what happened, sentence by sentence
 * @param hasGround true where any ground was covered, so that there is something to map
 * @param map the map's title and legend
 * @param liquids per product
 * @param liquidNotes ordered and delivered against metered, other nutrients, one sentence each
 * @param budget this job, what came before, and the sum against plan and cap
 * @param days per day, where the work took more than one
 * @param setbacks what was applied near places to keep away from
 * @param zones the prescription against what was done, as many zones as are listed
 * @param ground what was covered, skipped and doubled, and how it was measured
 * @param how the way it was put into the ground
 * @param entered what only a person could know
 * @param missing what a cited rule asks for and nobody entered
 * @param missingNote whose rules decide what must be recorded
 * @param basis what the figures rest on
 * @param cautions in the order they are printed
 */
public record NitrogenRecord(
        Head head,
        List<Sentence> answer,
        boolean hasGround,
        MapKey map,
        List<Liquid> liquids,
        List<String> liquidNotes,
        Budget budget,
        List<Day> days,
        SetbackTable setbacks,
        ZoneSection zones,
        List<Item> ground,
        List<Item> how,
        List<Item> entered,
        List<Missing> missing,
        String missingNote,
        Basis basis,
        List<String> cautions) {
    /** With more lines than this, about, two pages need a smaller map and type. */
    private static final int MUCH_IN_ALL = 28;
    /** More items than this stand in three columns. */
    private static final int MUCH_ENTERED = 18;

    /** Copies the lists. */
    public NitrogenRecord {
        answer = List.copyOf(answer);
        liquids = List.copyOf(liquids);
        liquidNotes = List.copyOf(liquidNotes);
        days = List.copyOf(days);
        ground = List.copyOf(ground);
        how = List.copyOf(how);
        entered = List.copyOf(entered);
        missing = List.copyOf(missing);
        cautions = List.copyOf(cautions);
    }

    /** True where there is so much to hold that the page is set tighter. */
    public boolean tight() {
        int tables =
                4 * (Math.min(setbacks.lines().size(), 1) + zones.products().size());
        int rows = setbacks.lines().size();
        for (ZoneSection.ZoneTable table : zones.products()) {
            rows += table.zones().size();
        }
        return entered.size() + missing.size() / 2 + tables + rows + liquidNotes.size() > MUCH_IN_ALL;
    }

    /** True where the work took more than one day. */
    public boolean severalDays() {
        return !days.isEmpty();
    }

    /** True where a person entered anything. */
    public boolean hasEntered() {
        return !entered.isEmpty();
    }

    /** What was entered in columns of about the same height: three where it is much, else two. */
    public List<Column> enteredColumns() {
        int columns = entered.size() > MUCH_ENTERED ? 3 : 2;
        int lines = entered.stream().mapToInt(item -> lines(item, columns)).sum();
        List<Column> result = new ArrayList<>();
        List<Item> column = new ArrayList<>();
        int done = 0;
        for (Item item : entered) {
            int own = lines(item, columns);
            // The middle of the item decides, so that no column runs over by more than half an item.
            if (done + own / 2 >= lines * (result.size() + 1) / columns && result.size() < columns - 1) {
                result.add(new Column(column, columns == 3));
                column = new ArrayList<>();
            }
            column.add(item);
            done += own;
        }
        result.add(new Column(column, columns == 3));
        return result;
    }

    /** Lines an item takes, about. */
    private static int lines(Item item, int columns) {
        int labelWidth = columns == 3 ? 16 : 18;
        int valueWidth = columns == 3 ? 22 : 38;
        return Math.max(1 + item.label().length() / labelWidth, 1 + item.value().length() / valueWidth);
    }

    /** A column of items; a slim one is one of three. */
    public record Column(List<Item> items, boolean slim) {
        /** Copies the items. */
        public Column {
            items = List.copyOf(items);
        }
    }

    /** True where something a rule asks for is not recorded. */
    public boolean hasMissing() {
        return !missing.isEmpty();
    }

    /** True where some product's order or delivery is known. */
    public boolean hasOrders() {
        return liquids.stream().anyMatch(Liquid::hasOrder);
    }

    /**
     * Title and particulars.
     *
     * @param title for the document's title
     * @param field the field's name as entered, or what stands for it
     * @param named true where the user named the field
     * @param place farm, tract and county as entered, or empty
     * @param when local day and hours, with their zone
     * @param who who applied it, as entered, or that it is not recorded
     * @param endS when the work ended, epoch seconds: the date of the document
     * @param units what the tables' columns are in
     * @param madeWith program and version
     */
    public record Head(
            String title,
            String field,
            boolean named,
            String place,
            String when,
            Item who,
            double endS,
            Units units,
            String madeWith) {}

    /** Units for column headings. */
    public record Units(String area, String volume, String rate, String nitrogen, String nitrogenRate) {}

    /** A sentence; a strong one asks for a look. */
    public record Sentence(String text, boolean strong) {}

    /** A label and what stands beside it; entered by the user, or measured. */
    public record Item(String label, String value, boolean entered) {}

    /**
     * The map's title and legend.
     *
     * @param title what the map shows
     * @param unit of the classes
     * @param classes from the lowest
     * @param skipped what the legend calls bare ground
     * @param boundsPerM2 upper bounds of the classes but the last, kg/m² or L/m²
     * @param firstColor colours left out at the low end, because no ground can have so little
     */
    public record MapKey(
            String title,
            String unit,
            List<MapClass> classes,
            String skipped,
            List<Double> boundsPerM2,
            int firstColor) {
        /** Copies the lists. */
        public MapKey {
            classes = List.copyOf(classes);
            boundsPerM2 = List.copyOf(boundsPerM2);
        }

        /** The bounds as an array. */
        public double[] bounds() {
            return boundsPerM2.stream().mapToDouble(Double::doubleValue).toArray();
        }
    }

    /**
     * A class of the map.
     *
     * @param label from where to where
     * @param share of the covered ground
     * @param note what is special about it, or empty
     */
    public record MapClass(String label, String share, String note) {}

    /** One product; a cell nobody knows holds a dash. */
    public record Liquid(
            String name,
            String analysis,
            String density,
            String volume,
            String rate,
            String nitrogen,
            String nitrogenRate,
            String ordered,
            String delivered) {
        /** True where an order or a delivery is known. */
        public boolean hasOrder() {
            return !"\u2013".equals(ordered) || !"\u2013".equals(delivered);
        }
    }

    /**
     * Nitrogen from all sources.
     *
     * @param lines this job, then what came before, then the total
     * @param limits plan and cap
     * @param note how the total is to be read
     */
    public record Budget(List<BudgetLine> lines, List<BudgetLine> limits, String note) {
        /** Copies the lists. */
        public Budget {
            lines = List.copyOf(lines);
            limits = List.copyOf(limits);
        }
    }

    /**
     * One source of nitrogen, their total, or a limit.
     *
     * @param what the source
     * @param when its date, or a dash
     * @param perArea nitrogen per area
     * @param remark as entered, or the comparison
     * @param entered by the user
     * @param total true for the sum
     * @param strong true where a limit is exceeded
     */
    public record BudgetLine(
            String what, String when, String perArea, String remark, boolean entered, boolean total, boolean strong) {}

    /**
     * Places to keep away from.
     *
     * @param lines those within whose setback anything was applied first, as many as are listed
     * @param rest what the list leaves out, or empty
     * @param basis whose distances these are
     */
    public record SetbackTable(List<SetbackSection.Line> lines, String rest, String basis) {
        /** No keep-out file was given. */
        static final SetbackTable NONE = new SetbackTable(List.of(), "", "");

        /** Copies the lines. */
        public SetbackTable {
            lines = List.copyOf(lines);
        }

        /** True where places were given. */
        public boolean given() {
            return !basis.isEmpty();
        }
    }

    /** One day of work. */
    public record Day(String date, String hours, String swept, String volumes) {}

    /** Something a rule asks for that is not recorded, and the rules that ask. */
    public record Missing(String item, String rules) {}

    /**
     * What the figures rest on.
     *
     * @param files everything handed in
     * @param settings lengths, lag, units
     * @param command that makes this record again
     * @param notes what was assumed or should be known
     */
    public record Basis(List<File> files, List<Item> settings, String command, List<String> notes) {
        /** Copies the lists. */
        public Basis {
            files = List.copyOf(files);
            settings = List.copyOf(settings);
            notes = List.copyOf(notes);
        }

        /** True where something was assumed. */
        public boolean hasNotes() {
            return !notes.isEmpty();
        }
    }

    /** A file handed in: its name, what it is, and the digest by which it is known again. */
    public record File(String name, String what, String sha256) {}
}
