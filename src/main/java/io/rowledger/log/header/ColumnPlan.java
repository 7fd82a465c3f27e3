package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Which column of a file is which quantity, in which unit. Built from the header line alone; whatever is missing, double
 * or without a unit ends here with a message.
 */
public final class ColumnPlan {
    /**
     * A column in use.
     *
     * @param index its place in the line, from 0
     * @param header as written
     * @param role what it stands for, the product resolved
     * @param unit the unit's symbol, empty where there is none
     * @param toSi factor to the program's own unit; for what counts a volume, to litres
     * @param written what the header names: other than the role's quantity where a flow is written as a volume or count
     */
    public record Column(int index, String header, Role role, String unit, double toSi, LogQuantity written) {}

    private final List<String> headers;
    private final List<String> rawHeaders;
    private final List<Column> columns;
    private final List<String> products;
    private final int outlets;
    private final int headerLine;
    private final List<String> rivalDates;

    private ColumnPlan(
            List<String> headers,
            List<String> rawHeaders,
            List<Column> columns,
            List<String> products,
            int outlets,
            int headerLine,
            List<String> rivalDates) {
        this.headers = List.copyOf(headers);
        this.rawHeaders = List.copyOf(rawHeaders);
        this.columns = List.copyOf(columns);
        this.products = List.copyOf(products);
        this.outlets = outlets;
        this.headerLine = headerLine;
        this.rivalDates = List.copyOf(rivalDates);
    }

    /** Finds every quantity among the headers. */
    public static ColumnPlan of(String file, List<String> headers, Headers found, LogOptions options) {
        int headerLine = found.line();
        Map<String, Column> byRole = new LinkedHashMap<>();
        Place place = new Place(file, headerLine);
        Map<Integer, Column> chosen = ChosenColumns.of(place, headers, options);
        for (Column column : chosen.values()) {
            byRole.put(column.role().canonical(), column);
        }
        List<String> rivalDates = new ArrayList<>();
        Map<String, Candidate> candidates = candidates(place, headers, chosen, options);
        for (Map.Entry<String, Candidate> entry : candidates.entrySet()) {
            if (!byRole.containsKey(entry.getKey())) {
                Candidate c = entry.getValue();
                Column column = column(place, c.index, c.name, c.role, options);
                if (c.alternative >= 0 && c.role.measured().isHelper()) {
                    // Asked only where it is needed: a time that is whole without it needs none.
                    if (c.role.measured() == LogQuantity.DATE) {
                        rivalDates.add(headers.get(c.index).strip());
                        rivalDates.add(headers.get(c.alternative).strip());
                    }
                    continue;
                }
                if (c.alternative >= 0) {
                    throw twice(place, column, headers.get(c.alternative).strip(), options);
                }
                byRole.put(entry.getKey(), column);
            }
        }
        dateAsTime(byRole);
        List<Column> columns = new ArrayList<>(byRole.values());
        columns.sort(Comparator.comparing((Column c) -> c.role().measured())
                .thenComparing(c -> c.role().product())
                .thenComparingInt(c -> c.role().row()));
        List<String> products = products(columns, options);
        int outlets = OutletCheck.outlets(place, headers, columns, products, options);
        if (columns.stream().noneMatch(c -> c.role().measured() == LogQuantity.TIME_OF_WEEK)) {
            need(place, columns, LogQuantity.TIME, "time", "a time such as 2026-05-14T10:00:00Z");
        }
        need(place, columns, LogQuantity.LAT, "lat", "the latitude in degrees");
        need(place, columns, LogQuantity.LON, "lon", "the longitude in degrees");
        return new ColumnPlan(headers, found.raw(), columns, products, outlets, headerLine, rivalDates);
    }

    /** A header that can stand for a role, and the place of another that can as well, or -1. */
    private record Candidate(int index, ColumnName name, Role role, int rank, int alternative) {}

    /** The best header for each role: plain names before those that mean other things too, flows before volumes. */
    private static Map<String, Candidate> candidates(
            Place place, List<String> headers, Map<Integer, Column> chosen, LogOptions options) {
        TreeSet<String> settled = new TreeSet<>();
        chosen.values().forEach(column -> settled.add(column.role().canonical()));
        Map<String, Candidate> best = new LinkedHashMap<>();
        boolean flows = chosen.values().stream().anyMatch(c -> c.written() == LogQuantity.FLOW);
        for (int i = 0; i < headers.size(); i++) {
            Optional<ColumnName> name = chosen.containsKey(i) ? Optional.empty() : ColumnName.of(headers.get(i));
            if (name.isEmpty()) {
                continue;
            }
            if (options.productKeys().size() > 1 && isByTheWay(name.get())) {
                continue;
            }
            Role role = withProduct(place, name.get(), options);
            flows |= role.measured() == LogQuantity.FLOW && !name.get().weak();
            Role of = role.measured().metersFlow() ? new Role(LogQuantity.FLOW, role.product(), role.row()) : role;
            if (settled.contains(of.canonical())) {
                continue;
            }
            int rank = rank(name.get());
            Candidate other = best.get(of.canonical());
            if (other == null || rank < other.rank) {
                best.put(of.canonical(), new Candidate(i, name.get(), role, rank, -1));
            } else if (rank == other.rank && other.alternative < 0 && role.measured() != LogQuantity.ROW) {
                best.put(of.canonical(), new Candidate(other.index, other.name, other.role, rank, i));
            }
        }
        if (flows) {
            // A log that has flows may have totals and row numbers of anything else beside them.
            best.values().removeIf(c -> c.role.measured().metersFlow() && c.rank > 0);
        }
        return best;
    }

    /** A volume or a figure of some row that does not say of which product: no reason to ask. */
    private static boolean isByTheWay(ColumnName name) {
        LogQuantity measured = name.role().measured();
        boolean plain = measured == LogQuantity.FLOW && !name.weak();
        return measured.metersFlow() && !plain && name.role().product().isEmpty();
    }

    /** Flows before volumes, volumes before pulses, and those that say what they count from before the others. */
    private static int rank(ColumnName name) {
        int kind =
                switch (name.role().measured()) {
                    case VOLUME_SINCE_LAST -> 2;
                    case VOLUME_TOTAL -> 4;
                    case VOLUME -> 6;
                    case COUNT_SINCE_LAST -> 8;
                    case COUNT_TOTAL -> 10;
                    case COUNT -> 12;
                    default -> 0;
                };
        return kind + (name.weak() ? 1 : 0);
    }

    /** A date column where there is no other time holds the time as well, or the reading will say that it does not. */
    private static void dateAsTime(Map<String, Column> byRole) {
        Column date = byRole.get(LogQuantity.DATE.canonical());
        boolean hasTime = byRole.containsKey(LogQuantity.TIME.canonical())
                || byRole.containsKey(LogQuantity.TIME_OF_WEEK.canonical());
        if (date != null && !hasTime) {
            byRole.remove(LogQuantity.DATE.canonical());
            Role time = new Role(LogQuantity.TIME, "", 0);
            byRole.put(
                    time.canonical(),
                    new Column(date.index(), date.header(), time, date.unit(), Double.NaN, LogQuantity.TIME));
        }
    }

    /** Where the header line stands. */
    record Place(String file, int line) {
        UnusableInputException found(String found) {
            return UnusableInputException.found(found).inFile(file).atLine(line);
        }
    }

    /** Headers as written, unrecognised ones included. */
    public List<String> headers() {
        return headers;
    }

    /** Names as they stand in the header line, without units from a line below and before rows were put side by side. */
    List<String> rawHeaders() {
        return rawHeaders;
    }

    /** The headers of two columns of dates, of which neither is in use; empty where there is one or none. */
    public List<String> rivalDates() {
        return rivalDates;
    }

    /** Columns in use, by quantity, product and outlet whatever their order in the file. */
    public List<Column> columns() {
        return columns;
    }

    public List<String> products() {
        return products;
    }

    public int outlets() {
        return outlets;
    }

    public int headerLine() {
        return headerLine;
    }

    /** The one column of a quantity that the log has once, or null. */
    @Nullable
    public Column find(LogQuantity measured) {
        for (Column column : columns) {
            if (column.role().measured() == measured && column.role().row() == 0) {
                return column;
            }
        }
        return null;
    }

    /** The column the time is read from: the time itself, or the seconds of the GPS week. */
    public Column timeColumn() {
        Column time = find(LogQuantity.TIME);
        Column column = time != null ? time : find(LogQuantity.TIME_OF_WEEK);
        if (column == null) {
            throw new IllegalStateException("a plan has a time");
        }
        return column;
    }

    /** A column with its factor, or the message that its unit is missing or unfit. */
    static Column column(Place place, int index, ColumnName name, Role role, LogOptions options) {
        LogQuantity measured = role.measured();
        Dimension dimension = measured.dimension();
        String header = name.header().strip();
        Role of = measured.metersFlow() ? new Role(LogQuantity.FLOW, role.product(), role.row()) : role;
        if (measured.isCount()) {
            return new Column(index, header, of, "pulses", 1 / options.hints().pulsesPerL(), measured);
        }
        if (dimension == null) {
            String form = measured == LogQuantity.DATE ? FormatUnits.date(name.unitText()) : "";
            return new Column(index, header, of, form, 1, measured);
        }
        Unit unit = name.unit();
        if (unit == null && dimension == Dimension.FLOW && name.unitText().isEmpty()) {
            unit = options.hints().flowUnit();
        }
        if (unit != null) {
            return new Column(index, header, of, unit.symbol(), unit.toSi(), measured);
        }
        if ((measured == LogQuantity.LAT || measured == LogQuantity.LON)
                && FormatUnits.isDegreesMinutes(name.unitText())) {
            return new Column(index, header, of, FormatUnits.DEGREES_MINUTES, Math.PI / 180, measured);
        }
        String implied = measured.impliedUnit();
        if (name.unitText().isEmpty() && implied != null) {
            double factor = implied.isEmpty()
                    ? Double.NaN
                    : Unit.find(implied, dimension).orElseThrow().toSi();
            return new Column(index, header, of, implied, factor, measured);
        }
        if (measured == LogQuantity.TIME) {
            return new Column(index, header, of, FormatUnits.time(name.unitText()), Double.NaN, measured);
        }
        throw noUnit(place, name, header, dimension);
    }

    private static UnusableInputException noUnit(Place place, ColumnName name, String header, Dimension dimension) {
        String proposal = name.role().canonical() + "[" + dimension.exampleUnit() + "]";
        if (name.unitText().isEmpty()) {
            String rig = dimension == Dimension.FLOW
                    ? ", or into the rig file if all rows have it, such as log: {flow_unit: gal/min}"
                    : ", or into the rig file: columns: {\"" + proposal + "\": \"" + header + "\"}";
            return place.found("no unit in the column name")
                    .atColumn(header)
                    .expected("a unit of " + dimension.words().replaceFirst("^an? ", "") + ": "
                            + dimension.unitsToWrite())
                    .hint("write the unit the figures are in into the header, such as " + proposal + rig);
        }
        Optional<Unit> other = Unit.findAny(name.unitText());
        String words = other.isPresent()
                ? "the unit " + name.unitText() + ", which is "
                        + other.get().dimension().words()
                : "the unknown unit " + name.unitText();
        return place.found(words)
                .atColumn(header)
                .expected(dimension.words() + " in " + dimension.unitsToWrite())
                .hint("write the unit the figures are in, such as " + proposal);
    }

    /** The role with the product's key as the rig file spells it. */
    static Role withProduct(Place place, ColumnName name, LogOptions options) {
        Role role = name.role();
        List<String> keys = options.productKeys();
        if (!role.measured().ofProduct() || keys.isEmpty()) {
            return role;
        }
        if (role.product().isEmpty()) {
            if (keys.size() == 1) {
                return new Role(role.measured(), keys.get(0), role.row());
            }
            throw place.found("a column that does not say which product it is of")
                    .atColumn(name.header().strip())
                    .expected("a product's key before the name, one of " + String.join(", ", keys))
                    .hint("write " + keys.get(0) + "." + role.canonical() + " or " + keys.get(1) + "."
                            + role.canonical() + ", with the unit");
        }
        for (String key : keys) {
            if (ColumnName.plain(key).equals(ColumnName.plain(role.product()))) {
                return new Role(role.measured(), key, role.row());
            }
        }
        throw place.found("the product " + role.product() + ", which the rig file does not have")
                .atColumn(name.header().strip())
                .expected("a key under products in the rig file: " + String.join(", ", keys))
                .hint("use that key in the header, or add " + role.product() + " under products");
    }

    private static UnusableInputException twice(Place place, Column first, String second, LogOptions options) {
        Role role = first.role();
        String canonical =
                (options.productKeys().size() == 1 ? new Role(role.measured(), "", role.row()) : role).canonical();
        return place.found("two columns for " + canonical + ": " + first.header() + " and " + second)
                .atColumn(second)
                .expected("one column for a quantity")
                .hint(
                        first.header().equals(second)
                                ? "rename one of the two in a copy of the log; which of them it is, only you know"
                                : "say which one counts with a line under columns in the rig file, such as " + canonical
                                        + ": \"" + first.header() + "\"");
    }

    private static void need(Place place, List<Column> columns, LogQuantity measured, String canonical, String what) {
        if (columns.stream().noneMatch(c -> c.role().measured() == measured)) {
            throw place.found("no column for " + canonical)
                    .expected("a column " + canonical + " with " + what)
                    .hint("name the column " + canonical + ", or add a line under columns in the rig file: " + canonical
                            + ": \"its header in the log\"");
        }
    }

    private static List<String> products(List<Column> columns, LogOptions options) {
        if (!options.productKeys().isEmpty()) {
            return options.productKeys();
        }
        List<String> products = new ArrayList<>();
        for (Column column : columns) {
            if (column.role().measured() == LogQuantity.FLOW
                    && !products.contains(column.role().product())) {
                products.add(column.role().product());
            }
        }
        return products;
    }
}
