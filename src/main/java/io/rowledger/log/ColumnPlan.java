package io.rowledger.log;

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
final class ColumnPlan {
    /**
     * A column in use.
     *
     * @param index its place in the line, from 0
     * @param header as written
     * @param role what it stands for, the product resolved
     * @param unit the unit's symbol, empty where there is none
     * @param toSi factor to the program's own unit
     */
    record Column(int index, String header, Role role, String unit, double toSi) {}

    private final List<String> headers;
    private final List<Column> columns;
    private final List<String> products;
    private final int outlets;
    private final int headerLine;

    private ColumnPlan(List<String> headers, List<Column> columns, List<String> products, int outlets, int headerLine) {
        this.headers = List.copyOf(headers);
        this.columns = List.copyOf(columns);
        this.products = List.copyOf(products);
        this.outlets = outlets;
        this.headerLine = headerLine;
    }

    /** Finds every quantity among the headers. */
    static ColumnPlan of(String file, List<String> headers, int headerLine, LogOptions options) {
        Map<String, Column> byRole = new LinkedHashMap<>();
        Place place = new Place(file, headerLine);
        Map<Integer, Column> chosen = ChosenColumns.of(place, headers, options);
        for (Column column : chosen.values()) {
            byRole.put(column.role().canonical(), column);
        }
        TreeSet<String> chosenRoles = new TreeSet<>(byRole.keySet());
        for (int i = 0; i < headers.size(); i++) {
            Optional<ColumnName> name = chosen.containsKey(i) ? Optional.empty() : ColumnName.of(headers.get(i));
            if (name.isEmpty()) {
                continue;
            }
            Role role = withProduct(place, name.get(), options);
            if (chosenRoles.contains(role.canonical())) {
                continue;
            }
            Column column = column(place, i, name.get(), role);
            Column other = byRole.putIfAbsent(role.canonical(), column);
            if (other != null) {
                throw twice(place, other, column, options);
            }
        }
        List<Column> columns = new ArrayList<>(byRole.values());
        columns.sort(Comparator.comparing((Column c) -> c.role().measured())
                .thenComparing(c -> c.role().product())
                .thenComparingInt(c -> c.role().row()));
        List<String> products = products(columns, options);
        int outlets = OutletCheck.outlets(place, headers, columns, products, options);
        need(place, columns, Measured.TIME, "time", "a time such as 2026-05-14T10:00:00Z");
        need(place, columns, Measured.LAT, "lat", "the latitude in degrees");
        need(place, columns, Measured.LON, "lon", "the longitude in degrees");
        return new ColumnPlan(headers, columns, products, outlets, headerLine);
    }

    /** Where the header line stands. */
    record Place(String file, int line) {
        UnusableInputException found(String found) {
            return UnusableInputException.found(found).inFile(file).atLine(line);
        }
    }

    /** Headers as written, unrecognised ones included. */
    List<String> headers() {
        return headers;
    }

    /** Columns in use, by quantity, product and outlet whatever their order in the file. */
    List<Column> columns() {
        return columns;
    }

    List<String> products() {
        return products;
    }

    int outlets() {
        return outlets;
    }

    int headerLine() {
        return headerLine;
    }

    /** The one column of a quantity that the log has once, or null. */
    @Nullable
    Column find(Measured measured) {
        for (Column column : columns) {
            if (column.role().measured() == measured && column.role().row() == 0) {
                return column;
            }
        }
        return null;
    }

    /** A column with its factor, or the message that its unit is missing or unfit. */
    static Column column(Place place, int index, ColumnName name, Role role) {
        Measured measured = role.measured();
        Dimension dimension = measured.dimension();
        String header = name.header().strip();
        if (dimension == null) {
            return new Column(index, header, role, "", 1);
        }
        Unit unit = name.unit();
        if (unit != null) {
            return new Column(index, header, role, unit.symbol(), unit.toSi());
        }
        String implied = measured.impliedUnit();
        if (name.unitText().isEmpty() && implied != null) {
            double factor = implied.isEmpty()
                    ? Double.NaN
                    : Unit.find(implied, dimension).orElseThrow().toSi();
            return new Column(index, header, role, implied, factor);
        }
        if (measured == Measured.TIME) {
            return new Column(index, header, role, "", Double.NaN);
        }
        String proposal = name.role().canonical() + "[" + dimension.exampleUnit() + "]";
        if (name.unitText().isEmpty()) {
            throw place.found("no unit in the column name")
                    .atColumn(header)
                    .expected("a unit of " + dimension.words().replaceFirst("^an? ", "") + ": "
                            + dimension.unitsToWrite())
                    .mend("write the unit the figures are in into the header, such as " + proposal);
        }
        Optional<Unit> other = Unit.findAny(name.unitText());
        String words = other.isPresent()
                ? "the unit " + name.unitText() + ", which is "
                        + other.get().dimension().words()
                : "the unknown unit " + name.unitText();
        throw place.found(words)
                .atColumn(header)
                .expected(dimension.words() + " in " + dimension.unitsToWrite())
                .mend("write the unit the figures are in, such as " + proposal);
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
                    .mend("write " + keys.get(0) + "." + role.canonical() + " or " + keys.get(1) + "."
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
                .mend("use that key in the header, or add " + role.product() + " under products");
    }

    private static UnusableInputException twice(Place place, Column first, Column second, LogOptions options) {
        Role role = first.role();
        String canonical =
                (options.productKeys().size() == 1 ? new Role(role.measured(), "", role.row()) : role).canonical();
        return place.found("two columns for " + canonical + ": " + first.header() + " and " + second.header())
                .atColumn(second.header())
                .expected("one column for a quantity")
                .mend("say which one counts with a line under columns in the rig file, such as " + canonical + ": \""
                        + first.header() + "\"");
    }

    private static void need(Place place, List<Column> columns, Measured measured, String canonical, String what) {
        if (columns.stream().noneMatch(c -> c.role().measured() == measured)) {
            throw place.found("no column for " + canonical)
                    .expected("a column " + canonical + " with " + what)
                    .mend("name the column " + canonical + ", or add a line under columns in the rig file: " + canonical
                            + ": \"its header in the log\"");
        }
    }

    private static List<String> products(List<Column> columns, LogOptions options) {
        if (!options.productKeys().isEmpty()) {
            return options.productKeys();
        }
        List<String> products = new ArrayList<>();
        for (Column column : columns) {
            if (column.role().measured() == Measured.FLOW
                    && !products.contains(column.role().product())) {
                products.add(column.role().product());
            }
        }
        return products;
    }
}
