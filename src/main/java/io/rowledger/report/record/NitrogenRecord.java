package io.rowledger.report.record;

import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSection;
import java.util.ArrayList;
import java.util.List;

/**
 * Content of the nitrogen record, for a reader who does not farm and may need it in five years: figures rounded, labeled
 * and in the reader's units. What a person entered is flagged, so that the page can mark it.
 *
 * @param head title and particulars
 * @param answer what was applied where, in sentences
 * @param hasGround true if any ground was covered and there is something to map
 * @param map the map's title and legend
 * @param liquids one per product
 * @param liquidNotes the nitrogen worked out, ordered and delivered compared with metered volume, other nutrients
 * @param budget this job, what came before, and the sum compared with plan and cap
 * @param days one per day; empty if the work took one day
 * @param setbacks what was applied within setbacks
 * @param zones the prescription compared with what was done, cut to the zones that are listed
 * @param ground covered, skipped and overlapped ground, and how it was measured
 * @param method how the product was put into the ground
 * @param entered what only a person can know
 * @param missing what such a record should hold and nobody entered
 * @param missingIntro which rules ask for it
 * @param basis files, settings and uncertainties behind the figures
 * @param cautions in the order they are printed
 */
public record NitrogenRecord(
        Head head,
        List<Sentence> answer,
        boolean hasGround,
        MapKey map,
        List<Liquid> liquids,
        List<Sentence> liquidNotes,
        Budget budget,
        List<Day> days,
        SetbackTable setbacks,
        ZoneSection zones,
        List<Item> ground,
        List<Item> method,
        List<Item> entered,
        List<Missing> missing,
        String missingIntro,
        Basis basis,
        List<String> cautions) {
    /** What a table cell holds if there is no figure. */
    static final String NONE = "\u2013";
    /** Most lines that two pages hold with the full map and type size. */
    private static final int MAX_LINES = 28;
    /** Most entered items that stand in two columns. */
    private static final int MAX_TWO_COLUMNS = 18;

    /** Copies the lists. */
    public NitrogenRecord {
        answer = List.copyOf(answer);
        liquids = List.copyOf(liquids);
        liquidNotes = List.copyOf(liquidNotes);
        days = List.copyOf(days);
        ground = List.copyOf(ground);
        method = List.copyOf(method);
        entered = List.copyOf(entered);
        missing = List.copyOf(missing);
        cautions = List.copyOf(cautions);
    }

    /** Largest deviation from the plan, percent, of ground that counts as on it. */
    public int onPlanPct() {
        return NitrogenGrid.ON_PLAN_PCT;
    }

    /** True if the page is set tighter to keep to two pages. */
    public boolean tight() {
        int tables =
                4 * (Math.min(setbacks.lines().size(), 1) + zones.products().size());
        int rows = setbacks.lines().size();
        for (ZoneSection.ZoneTable table : zones.products()) {
            rows += table.zones().size();
        }
        return entered.size() + missing.size() / 2 + tables + rows + liquidNotes.size() > MAX_LINES;
    }

    /** True if the work took more than one day. */
    public boolean severalDays() {
        return !days.isEmpty();
    }

    /** True if a person entered anything. */
    public boolean hasEntered() {
        return !entered.isEmpty();
    }

    /** What was entered, in two or three columns of about the same height. */
    public List<Column> enteredColumns() {
        int columns = entered.size() > MAX_TWO_COLUMNS ? 3 : 2;
        int lines = entered.stream().mapToInt(item -> lines(item, columns)).sum();
        List<Column> result = new ArrayList<>();
        List<Item> column = new ArrayList<>();
        int done = 0;
        for (Item item : entered) {
            int own = lines(item, columns);
            // An item goes into the column that its middle falls in.
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

    /** Estimated number of lines of an item. */
    private static int lines(Item item, int columns) {
        int labelWidth = columns == 3 ? 16 : 18;
        int valueWidth = columns == 3 ? 22 : 38;
        return Math.max(1 + item.label().length() / labelWidth, 1 + item.value().length() / valueWidth);
    }

    /** A column of items; slim if it is one of three. */
    public record Column(List<Item> items, boolean slim) {
        /** Copies the items. */
        public Column {
            items = List.copyOf(items);
        }
    }

    /** True if such an item is not recorded. */
    public boolean hasMissing() {
        return !missing.isEmpty();
    }

    /** True if a product's order or delivery is known. */
    public boolean hasOrders() {
        return liquids.stream().anyMatch(Liquid::hasOrder);
    }

    /**
     * Title and particulars.
     *
     * @param title for the document's title
     * @param field the field's name as entered, or what stands for it
     * @param named true if the user named the field
     * @param place farm, tract and county as entered, or empty
     * @param when day and hours, with their time zone
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

    /** A sentence; strong if it needs attention. */
    public record Sentence(String text, boolean strong) {}

    /** A label and its value; entered by the user, or measured. */
    public record Item(String label, String value, boolean entered) {}

    /**
     * The map's title and legend.
     *
     * @param title what the map shows
     * @param unit of the classes
     * @param classes from the lowest
     * @param skipped what the legend calls skipped ground
     * @param boundsPerM2 upper bounds of the classes but the last, kg/m² or L/m²
     * @param firstColor colors left out at the low end: earlier nitrogen alone is more than these classes
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
     * @param note says if the class lies around the plan, else empty
     */
    public record MapClass(String label, String share, String note) {}

    /** One product; an unknown cell holds a dash. */
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
        /** True if an order or a delivery is known. */
        public boolean hasOrder() {
            return !NONE.equals(ordered) || !NONE.equals(delivered);
        }
    }

    /**
     * Nitrogen from all sources.
     *
     * @param lines this job, then what came before, then the total
     * @param limits plan and cap
     */
    public record Budget(List<BudgetLine> lines, List<BudgetLine> limits) {
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
     * @param remark the text as entered, or the comparison with the total
     * @param entered by the user
     * @param total true for the sum
     * @param strong true if a limit is exceeded
     */
    public record BudgetLine(
            String what, String when, String perArea, String remark, boolean entered, boolean total, boolean strong) {
        /** A line that the program computed. */
        static BudgetLine computed(String what, String when, String perArea, String remark) {
            return new BudgetLine(what, when, perArea, remark, false, false, false);
        }

        /** A line that the user entered. */
        static BudgetLine entered(String what, String when, String perArea, String remark) {
            return new BudgetLine(what, when, perArea, remark, true, false, false);
        }

        BudgetLine asTotal() {
            return new BudgetLine(what, when, perArea, remark, entered, true, strong);
        }

        BudgetLine asStrong() {
            return new BudgetLine(what, when, perArea, remark, entered, total, true);
        }
    }

    /**
     * Places with a setback.
     *
     * @param lines places within whose setback anything was applied first, cut to those that are listed
     * @param rest says what the list leaves out, or empty
     * @param basis says where the distances come from
     */
    public record SetbackTable(List<SetbackSection.Line> lines, String rest, String basis) {
        /** Without a keep-out file. */
        static final SetbackTable NONE = new SetbackTable(List.of(), "", "");

        /** Copies the lines. */
        public SetbackTable {
            lines = List.copyOf(lines);
        }

        /** True if a keep-out file was given. */
        public boolean given() {
            return !basis.isEmpty();
        }
    }

    /** One day of work, or all days together; the rounded figures of the days add up to those of the total. */
    public record Day(String date, String hours, String swept, String volumes, String nitrogen, boolean total) {}

    /** An item that is not recorded, and the rules that ask for it. */
    public record Missing(String item, String rules) {}

    /**
     * Files, settings and uncertainties behind the figures.
     *
     * @param files all files handed in
     * @param settings lengths, lag, units
     * @param command that makes this record again
     * @param notes assumptions and other notes of the analysis
     */
    public record Basis(List<File> files, List<Item> settings, String command, List<String> notes) {
        /** Copies the lists. */
        public Basis {
            files = List.copyOf(files);
            settings = List.copyOf(settings);
            notes = List.copyOf(notes);
        }

        /** True if there are notes. */
        public boolean hasNotes() {
            return !notes.isEmpty();
        }
    }

    /** A file handed in: its name, its role and its SHA-256. */
    public record File(String name, String what, String sha256) {}
}
