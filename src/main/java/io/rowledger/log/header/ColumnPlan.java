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
 * Maps the columns of a file to quantities and units, from the header line alone. Throws if something needed is missing,
 * ambiguous or without a unit.
 */
public final class ColumnPlan {
    /**
     * A column in use.
     *
     * @param index position in the line, from 0
     * @param header as written
     * @param role its meaning, with the product resolved
     * @param unit the unit's symbol, empty if there is none
     * @param toSi factor to SI (L/s for flows, L for volumes and counts); NaN if the values are not plain numbers
     * @param written the quantity in the header; differs from the role's if a flow is derived from it
     */
    public record Column(int index, String header, Role role, String unit, double toSi, LogQuantity written) {}

    private final List<String> headers;
    private final List<String> rawHeaders;
    private final List<Column> columns;
    private final List<String> products;
    private final int outlets;
    private final int headerLine;
    private final List<String> ambiguousDates;

    private ColumnPlan(
            List<String> headers,
            List<String> rawHeaders,
            List<Column> columns,
            List<String> products,
            int outlets,
            int headerLine,
            List<String> ambiguousDates) {
        this.headers = List.copyOf(headers);
        this.rawHeaders = List.copyOf(rawHeaders);
        this.columns = List.copyOf(columns);
        this.products = List.copyOf(products);
        this.outlets = outlets;
        this.headerLine = headerLine;
        this.ambiguousDates = List.copyOf(ambiguousDates);
    }

    /** Maps every header; throws if the log can't be used. */
    public static ColumnPlan of(String file, List<String> headers, Headers found, LogOptions options) {
        int headerLine = found.line();
        Map<String, Column> byRole = new LinkedHashMap<>();
        Place place = new Place(file, headerLine);
        Map<Integer, Column> chosen = ChosenColumns.of(place, headers, options);
        for (Column column : chosen.values()) {
            byRole.put(column.role().canonical(), column);
        }
        List<String> ambiguousDates = new ArrayList<>();
        Map<String, Candidate> candidates = candidates(place, headers, chosen, options);
        for (Map.Entry<String, Candidate> entry : candidates.entrySet()) {
            if (!byRole.containsKey(entry.getKey())) {
                Candidate c = entry.getValue();
                Column column = column(place, c.index, c.name, c.role, options);
                if (c.alternative >= 0 && c.role.quantity().isHelper()) {
                    // Not refused here: a complete time does not need the date column.
                    if (c.role.quantity() == LogQuantity.DATE) {
                        ambiguousDates.add(headers.get(c.index).strip());
                        ambiguousDates.add(headers.get(c.alternative).strip());
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
        columns.sort(Comparator.comparing((Column c) -> c.role().quantity())
                .thenComparing(c -> c.role().product())
                .thenComparingInt(c -> c.role().row()));
        List<String> products = products(columns, options);
        int outlets = OutletCheck.outlets(place, headers, columns, products, options);
        if (columns.stream().noneMatch(c -> c.role().quantity() == LogQuantity.TIME_OF_WEEK)) {
            need(place, columns, LogQuantity.TIME, "time", "a time such as 2026-05-14T10:00:00Z");
        }
        need(place, columns, LogQuantity.LAT, "lat", "the latitude in degrees");
        need(place, columns, LogQuantity.LON, "lon", "the longitude in degrees");
        return new ColumnPlan(headers, found.raw(), columns, products, outlets, headerLine, ambiguousDates);
    }

    /** A header for a role, and the index of another equally good header, or -1. */
    private record Candidate(int index, ColumnName name, Role role, int rank, int alternative) {}

    /** Returns the best header for each role: unambiguous names before weak ones, flows before volumes. */
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
            if (options.productKeys().size() > 1 && isIncidental(name.get())) {
                continue;
            }
            Role role = withProduct(place, name.get(), options);
            flows |= role.quantity() == LogQuantity.FLOW && !name.get().weak();
            Role of = role.quantity().metersFlow() ? new Role(LogQuantity.FLOW, role.product(), role.row()) : role;
            if (settled.contains(of.canonical())) {
                continue;
            }
            int rank = rank(name.get());
            Candidate other = best.get(of.canonical());
            if (other == null || rank < other.rank) {
                best.put(of.canonical(), new Candidate(i, name.get(), role, rank, -1));
            } else if (rank == other.rank && other.alternative < 0 && role.quantity() != LogQuantity.ROW) {
                best.put(of.canonical(), new Candidate(other.index, other.name, other.role, rank, i));
            }
        }
        if (flows) {
            // A log with flows may also have totals and counts; they are not needed.
            best.values().removeIf(c -> c.role.quantity().metersFlow() && c.rank > 0);
        }
        return best;
    }

    /** Returns true for a volume or weakly named value without a product: it is ignored, not refused. */
    private static boolean isIncidental(ColumnName name) {
        LogQuantity quantity = name.role().quantity();
        boolean plain = quantity == LogQuantity.FLOW && !name.weak();
        return quantity.metersFlow() && !plain && name.role().product().isEmpty();
    }

    /** Returns the rank of a name, lower is better: flows, volumes, pulses; those with a known start before the others. */
    private static int rank(ColumnName name) {
        int kind =
                switch (name.role().quantity()) {
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

    /** Uses a date column as the time column if there is no other; the time reader refuses it if it holds only dates. */
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

    /** File and line of the header, for refusals. */
    record Place(String file, int line) {
        UnusableInputException found(String found) {
            return UnusableInputException.found(found).inFile(file).atLine(line);
        }
    }

    /** Returns all headers as written, unrecognized ones included. */
    public List<String> headers() {
        return headers;
    }

    /** Returns the fields of the header line itself, before units of a second line and rows of a long format are merged in. */
    List<String> rawHeaders() {
        return rawHeaders;
    }

    /** Returns the headers of two competing date columns, neither in use; empty otherwise. */
    public List<String> ambiguousDates() {
        return ambiguousDates;
    }

    /** Returns the columns in use, sorted by quantity, product and outlet. */
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

    /** Returns the column of a quantity that is not per outlet, or null. */
    @Nullable
    public Column find(LogQuantity quantity) {
        for (Column column : columns) {
            if (column.role().quantity() == quantity && column.role().row() == 0) {
                return column;
            }
        }
        return null;
    }

    /** Returns the time column: the time itself, or the seconds of the GPS week. */
    public Column timeColumn() {
        Column time = find(LogQuantity.TIME);
        Column column = time != null ? time : find(LogQuantity.TIME_OF_WEEK);
        if (column == null) {
            throw new IllegalStateException("a plan has a time");
        }
        return column;
    }

    /** Returns a column with its factor; throws if its unit is missing or does not fit. */
    static Column column(Place place, int index, ColumnName name, Role role, LogOptions options) {
        LogQuantity quantity = role.quantity();
        Dimension dimension = quantity.dimension();
        String header = name.header().strip();
        Role of = quantity.metersFlow() ? new Role(LogQuantity.FLOW, role.product(), role.row()) : role;
        if (quantity.isCount()) {
            return new Column(index, header, of, "pulses", 1 / options.hints().pulsesPerL(), quantity);
        }
        if (dimension == null) {
            String form = quantity == LogQuantity.DATE ? FormatUnits.date(name.unitText()) : "";
            return new Column(index, header, of, form, 1, quantity);
        }
        Unit unit = name.unit();
        if (unit == null && dimension == Dimension.FLOW && name.unitText().isEmpty()) {
            unit = options.hints().flowUnit();
        }
        if (unit != null) {
            return new Column(index, header, of, unit.symbol(), unit.toSi(), quantity);
        }
        if ((quantity == LogQuantity.LAT || quantity == LogQuantity.LON)
                && FormatUnits.isDegreesMinutes(name.unitText())) {
            return new Column(index, header, of, FormatUnits.DEGREES_MINUTES, Math.PI / 180, quantity);
        }
        String implied = quantity.impliedUnit();
        if (name.unitText().isEmpty() && implied != null) {
            double factor = implied.isEmpty()
                    ? Double.NaN
                    : Unit.find(implied, dimension).orElseThrow().toSi();
            return new Column(index, header, of, implied, factor, quantity);
        }
        if (quantity == LogQuantity.TIME) {
            return new Column(index, header, of, FormatUnits.time(name.unitText()), Double.NaN, quantity);
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

    /** Returns the role with the product key as spelled in the rig file. */
    static Role withProduct(Place place, ColumnName name, LogOptions options) {
        Role role = name.role();
        List<String> keys = options.productKeys();
        if (!role.quantity().ofProduct() || keys.isEmpty()) {
            return role;
        }
        if (role.product().isEmpty()) {
            if (keys.size() == 1) {
                return new Role(role.quantity(), keys.get(0), role.row());
            }
            throw place.found("a column without a product")
                    .atColumn(name.header().strip())
                    .expected("a product's key before the name, one of " + String.join(", ", keys))
                    .hint("write " + keys.get(0) + "." + role.canonical() + " or " + keys.get(1) + "."
                            + role.canonical() + ", with the unit");
        }
        for (String key : keys) {
            if (ColumnName.plain(key).equals(ColumnName.plain(role.product()))) {
                return new Role(role.quantity(), key, role.row());
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
                (options.productKeys().size() == 1 ? new Role(role.quantity(), "", role.row()) : role).canonical();
        return place.found("two columns for " + canonical + ": " + first.header() + " and " + second)
                .atColumn(second)
                .expected("one column for a quantity")
                .hint(
                        first.header().equals(second)
                                ? "rename one of the two in a copy of the log"
                                : "choose one under columns in the rig file, such as " + canonical + ": \""
                                        + first.header() + "\"");
    }

    private static void need(Place place, List<Column> columns, LogQuantity quantity, String canonical, String what) {
        if (columns.stream().noneMatch(c -> c.role().quantity() == quantity)) {
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
            if (column.role().quantity() == LogQuantity.FLOW
                    && !products.contains(column.role().product())) {
                products.add(column.role().product());
            }
        }
        return products;
    }
}
