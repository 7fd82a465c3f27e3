package io.rowledger.log.header;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Checks the flow columns against the rig: one per outlet and product, numbered from 1. */
final class OutletCheck {
    /** A flow column of row 0. */
    private static final Pattern FROM_ZERO = Pattern.compile("(?:[a-z0-9]+\\.)?(?:row0+flow.*|flow0+(?:\\D.*)?)");

    private OutletCheck() {}

    /** Returns the number of outlets: the rig's, or without a rig the highest number among the flow columns. */
    static int outlets(
            ColumnPlan.Place place,
            List<String> headers,
            List<ColumnPlan.Column> columns,
            List<String> products,
            LogOptions options) {
        int highest = 0;
        for (ColumnPlan.Column column : columns) {
            if (column.role().quantity() == LogQuantity.FLOW) {
                highest = Math.max(highest, column.role().row());
            }
        }
        for (String header : headers) {
            if (FROM_ZERO.matcher(ColumnName.plain(header)).matches()) {
                throw place.found("a row numbered 0")
                        .atColumn(header)
                        .expected("rows numbered from 1 at the left")
                        .hint("add one to the row number in each header");
            }
        }
        if (highest == 0) {
            String key =
                    options.productKeys().size() > 1 ? options.productKeys().get(0) + "." : "";
            throw place.found("no column for the flow of a row")
                    .expected("a column for each row, " + key + "flow_01[gal/min] at the left and so on to the right")
                    .hint("name the flow columns " + key + "flow_01[gal/min], " + key
                            + "flow_02[gal/min] ..., with the unit they are in");
        }
        if (options.rowsExpected() > 0) {
            for (String product : products) {
                check(place, columns, product, options.rowsExpected(), products.size() > 1);
            }
            rowsBeyondRig(place, columns, options.rowsExpected());
            return options.rowsExpected();
        }
        return highest;
    }

    private static void check(
            ColumnPlan.Place place, List<ColumnPlan.Column> columns, String product, int rows, boolean several) {
        TreeSet<Integer> found = new TreeSet<>();
        for (ColumnPlan.Column column : columns) {
            if (column.role().quantity() == LogQuantity.FLOW
                    && column.role().product().equals(product)) {
                found.add(column.role().row());
            }
        }
        String of = several ? " of " + product : "";
        String prefix = several ? product + "." : "";
        if (!found.isEmpty() && found.last() > rows) {
            throw place.found("flow columns" + of + " up to number " + found.last() + " where the rig file has " + rows
                            + " rows")
                    .atColumn(prefix + name(found.last()))
                    .expected("one flow column for each row of the rig")
                    .hint("correct the rows in the rig file, or take the columns that belong to no row out of the log");
        }
        List<String> missing = new ArrayList<>();
        for (int row = 1; row <= rows; row++) {
            if (!found.contains(row)) {
                missing.add(prefix + name(row));
            }
        }
        if (!missing.isEmpty()) {
            throw place.found(found.size() + " flow columns" + of + " where the rig file has " + rows + " rows; "
                            + (missing.size() > 4
                                    ? missing.get(0) + " and " + (missing.size() - 1) + " more are"
                                    : String.join(", ", missing) + (missing.size() == 1 ? " is" : " are"))
                            + " missing")
                    .expected("one flow column for each row of the rig, numbered from 1 at the left")
                    .hint("correct the rows in the rig file, or name the columns in the log " + prefix
                            + "flow_01[unit] to " + prefix + name(rows) + "[unit]");
        }
    }

    private static void rowsBeyondRig(ColumnPlan.Place place, List<ColumnPlan.Column> columns, int rows) {
        for (ColumnPlan.Column column : columns) {
            if (column.role().row() > rows) {
                throw place.found(column.role().canonical() + " where the rig file has " + rows + " rows")
                        .atColumn(column.header())
                        .expected("row numbers from 1 to " + rows)
                        .hint("correct the rows in the rig file, or the number in the header");
            }
        }
    }

    private static String name(int row) {
        return String.format(Locale.ROOT, "flow_%02d", row);
    }
}
