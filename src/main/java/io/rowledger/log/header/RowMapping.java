package io.rowledger.log.header;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan.Column;
import io.rowledger.log.header.ColumnPlan.Place;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * How the numbers of columns stand for rows: one flow column per row, one per meter that feeds several rows, or one for the
 * whole bar; one on/off column per row or per section.
 *
 * @param rows number of rows of the bar
 * @param meters for each product the rows (from 1) of each meter, meters in the order of their numbers; empty if each row
 *     has its own meter
 * @param sections the rows (from 1) of each on/off column; empty if each row has its own
 * @param assumed true if the sections are an equal division of the bar that nothing confirms
 */
public record RowMapping(int rows, List<List<List<Integer>>> meters, List<List<Integer>> sections, boolean assumed) {
    /** A flow column of row 0. */
    private static final Pattern FROM_ZERO = Pattern.compile("(?:[a-z0-9]+\\.)?(?:row0+flow.*|flow0+(?:\\D.*)?)");

    /** Parts of a name that speak of liquid. */
    private static final Pattern MAY_BE_RATE = Pattern.compile("(?i)rate|appl|flow|gal|vol|prod|liq|amount|amt|nitro");

    private static final Pattern UNIT = Pattern.compile("[\\[(]\\s*([^\\[\\]()]+?)\\s*[\\])]");
    /** Columns of unknown meaning that a refusal names. */
    private static final int MAX_SHOWN = 8;
    /** More missing columns are counted, not named. */
    private static final int MAX_NAMED = 4;

    /** Copies the lists. */
    public RowMapping {
        meters = meters.stream()
                .map(product -> product.stream().map(List::copyOf).toList())
                .toList();
        sections = sections.stream().map(List::copyOf).toList();
    }

    /** Returns the rows (from 1) of a flow column of a product (from 0); column 0 is the whole bar. */
    public List<Integer> rowsOfMeter(int product, int column) {
        List<List<Integer>> shared = meters.get(product);
        if (column == 0) {
            return BarLayout.equalGroups(rows, 1).get(0);
        }
        return shared.isEmpty() ? List.of(column) : shared.get(column - 1);
    }

    /** Returns the number of the on/off column of a row (from 1); 0 if the row has none. */
    public int sectionOf(int row) {
        for (int s = 0; s < sections.size(); s++) {
            if (sections.get(s).contains(row)) {
                return s + 1;
            }
        }
        return sections.isEmpty() ? row : 0;
    }

    static RowMapping of(
            Place place,
            List<String> headers,
            List<Column> columns,
            List<String> products,
            LogOptions options,
            Questions questions) {
        for (String header : headers) {
            if (FROM_ZERO.matcher(ColumnName.plain(header)).matches()) {
                questions.ask(place.found("a row numbered 0")
                        .kind(RefusalKind.ROWS)
                        .atColumn(header)
                        .expected("rows numbered from 1 at the left")
                        .hint("add one to the row number in each header"));
            }
        }
        if (columns.stream().noneMatch(c -> c.role().quantity() == LogQuantity.FLOW)) {
            questions.ask(noFlow(place, headers, columns, options));
        }
        int switches = highest(columns, LogQuantity.ON);
        int rows = options.rowsExpected() > 0
                ? options.rowsExpected()
                : Math.max(1, Math.max(highest(columns, LogQuantity.FLOW), switches));
        List<List<List<Integer>>> meters = new ArrayList<>();
        for (String product : products) {
            meters.add(meters(place, columns, product, products.size() > 1, rows, options, questions));
        }
        List<List<Integer>> sections = sections(place, switches, rows, options, questions);
        boolean assumed = !sections.isEmpty()
                && options.bar().sections().isEmpty()
                && !sections.equals(options.bar().meters())
                && switches > 1;
        if (options.rowsExpected() > 0) {
            beyondRig(place, columns, rows, questions);
        }
        return new RowMapping(rows, meters, sections, assumed);
    }

    private static UnusableInputException noFlow(
            Place place, List<String> headers, List<Column> columns, LogOptions options) {
        String key = options.productKeys().size() > 1 ? options.productKeys().get(0) + "." : "";
        List<String> unknown = IntStream.range(0, headers.size())
                .filter(i -> columns.stream().noneMatch(c -> c.index() == i))
                .mapToObj(i -> headers.get(i).strip())
                .filter(header -> !header.isEmpty())
                .toList();
        String among = unknown.isEmpty()
                ? ""
                : " among " + String.join(", ", unknown.subList(0, Math.min(MAX_SHOWN, unknown.size())))
                        + (unknown.size() > MAX_SHOWN ? " and " + (unknown.size() - MAX_SHOWN) + " more" : "");
        return place.found("no column for a flow or a rate" + among)
                .kind(RefusalKind.FLOW_COLUMN)
                .expected("a column for each row, " + key
                        + "flow_01[gal/min] at the left and so on to the right, or one for the whole bar, " + key
                        + "flow[gal/min], " + key + "rate[gal/ac] or " + key + "volume_total[gal]")
                .hint(
                        "name the columns like that, with the unit they are in, or name their headers under columns in the rig "
                                + "file, such as " + example(unknown, key));
    }

    /** A header whose unit, as it writes it, is one of flow, of rate or of volume. */
    private record Metered(String header, String quantity, String unit) {
        static Optional<Metered> of(String header) {
            Matcher unit = UNIT.matcher(header);
            if (!unit.find()) {
                return Optional.empty();
            }
            boolean flow = Unit.find(unit.group(1), Dimension.FLOW).isPresent();
            boolean rate = Unit.find(unit.group(1), Dimension.RATE).isPresent();
            boolean volume = Unit.find(unit.group(1), Dimension.VOLUME).isPresent();
            return flow || rate || volume
                    ? Optional.of(new Metered(header, flow ? "flow" : rate ? "rate" : "volume", unit.group(1)))
                    : Optional.empty();
        }

        String line(String row) {
            return quantity + row + "[" + unit + "]: \"" + header + "\"";
        }
    }

    /** Returns true for a name that speaks of liquid or of a rate. */
    public static boolean mayBeRate(String header) {
        return MAY_BE_RATE.matcher(header).find();
    }

    /** Returns a line for the rig file with the first header that has a unit of flow, rate or volume; without one, the first that speaks of liquid. */
    private static String example(List<String> headers, String key) {
        List<Metered> metered =
                headers.stream().map(Metered::of).flatMap(Optional::stream).toList();
        if (metered.isEmpty()) {
            return headers.stream()
                    .filter(RowMapping::mayBeRate)
                    .findFirst()
                    .map(header -> key + "rate[gal/ac]: \"" + header + "\" if it is a rate in gal/ac")
                    .orElse(key + "rate[gal/ac]: \"its header in the log\"");
        }
        Metered first = metered.get(0);
        return key + (metered.size() > 1 ? first.line("_01") : first.line("") + " if it is that of the whole bar");
    }

    private static int highest(List<Column> columns, LogQuantity quantity) {
        return columns.stream()
                .filter(c -> c.role().quantity() == quantity)
                .mapToInt(c -> c.role().row())
                .max()
                .orElse(0);
    }

    /** Returns the rows of each meter of a product, empty for a meter per row; asks if the columns fit neither. */
    private static List<List<Integer>> meters(
            Place place,
            List<Column> columns,
            String product,
            boolean several,
            int rows,
            LogOptions options,
            Questions questions) {
        TreeSet<Integer> found = new TreeSet<>();
        for (Column column : columns) {
            if (column.role().quantity() == LogQuantity.FLOW
                    && column.role().product().equals(product)) {
                found.add(column.role().row());
            }
        }
        boolean bar = found.remove(0) && found.isEmpty();
        if (bar) {
            return rows == 1 ? List.of() : BarLayout.equalGroups(rows, 1);
        }
        List<List<Integer>> shared = options.bar().meters();
        boolean perMeter = !shared.isEmpty();
        if (options.rowsExpected() > 0) {
            require(place, found, perMeter ? shared.size() : rows, perMeter, several ? product : "", rows, questions);
        }
        return perMeter ? shared : List.of();
    }

    private static void require(
            Place place,
            TreeSet<Integer> found,
            int count,
            boolean perMeter,
            String product,
            int rows,
            Questions questions) {
        String of = product.isEmpty() ? "" : " of " + product;
        String prefix = product.isEmpty() ? "" : product + ".";
        String rig = perMeter ? count + " meters" : count + " rows";
        if (!found.isEmpty() && found.last() > count) {
            questions.ask(place.found(
                            "flow columns" + of + " up to number " + found.last() + " where the rig file has " + rig)
                    .kind(RefusalKind.ROWS)
                    .atColumn(prefix + name(found.last()))
                    .expected(perMeter ? "one flow column for each meter" : "one flow column for each row of the rig")
                    .hint(
                            perMeter
                                    ? "correct meters under rows in the rig file; take it out if each row has its own meter"
                                    : "correct the rows in the rig file, or take the columns that belong to no row out of "
                                            + "the log"));
            return;
        }
        List<String> missing = new ArrayList<>();
        for (int number = 1; number <= count; number++) {
            if (!found.contains(number)) {
                missing.add(prefix + name(number));
            }
        }
        if (missing.isEmpty()) {
            return;
        }
        boolean divides = !perMeter && !found.isEmpty() && rows % found.size() == 0 && found.last() == found.size();
        String meters = divides
                ? "if each meter feeds " + rows / found.size() + " rows, write meters: "
                        + BarLayout.equalGroups(rows, found.size()) + " under rows in the rig file; else "
                : "";
        questions.ask(place.found(found.size() + " flow columns" + of + " where the rig file has " + rig + "; "
                        + (missing.size() > MAX_NAMED
                                ? missing.get(0) + " and " + (missing.size() - 1) + " more are"
                                : String.join(", ", missing) + (missing.size() == 1 ? " is" : " are"))
                        + " missing")
                .kind(RefusalKind.ROWS)
                .expected("one flow column for each " + (perMeter ? "meter" : "row")
                        + " of the rig, numbered from 1 at the left")
                .hint(meters + "correct the " + (perMeter ? "meters" : "rows")
                        + " in the rig file, or name the columns in the log " + prefix + "flow_01[unit] to " + prefix
                        + name(count) + "[unit]"));
    }

    /** Returns the rows of each on/off column; empty if each row has its own or none has. */
    private static List<List<Integer>> sections(
            Place place, int switches, int rows, LogOptions options, Questions questions) {
        if (switches == 0 || switches >= rows) {
            return List.of();
        }
        if (options.bar().sections().size() == switches) {
            return options.bar().sections();
        }
        if (options.bar().meters().size() == switches) {
            return options.bar().meters();
        }
        if (rows % switches != 0) {
            questions.ask(place.found(switches + " on/off columns for " + rows + " rows")
                    .kind(RefusalKind.ROWS)
                    .expected("one for each row, or sections of equal size")
                    .hint(
                            "list the outlets in the rig file with the section of each, such as {at: -165 in, band: [-180 in, "
                                    + "-150 in], section: left}"));
            return List.of();
        }
        return BarLayout.equalGroups(rows, switches);
    }

    private static void beyondRig(Place place, List<Column> columns, int rows, Questions questions) {
        for (Column column : columns) {
            if (column.role().row() > rows && column.role().quantity() != LogQuantity.FLOW) {
                questions.ask(place.found(column.role().canonical() + " where the rig file has " + rows + " rows")
                        .kind(RefusalKind.ROWS)
                        .atColumn(column.header())
                        .expected("row numbers from 1 to " + rows)
                        .hint("correct the rows in the rig file, or the number in the header"));
            }
        }
    }

    private static String name(int row) {
        return String.format(Locale.ROOT, "flow_%02d", row);
    }
}
