package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The {@code columns:} lines of the rig file: quantity to header. */
final class ChosenColumns {
    private ChosenColumns() {}

    /** Returns the chosen columns by their index in the line, from 0. */
    static Map<Integer, ColumnPlan.Column> of(ColumnPlan.Place place, List<String> headers, LogOptions options) {
        Map<Integer, ColumnPlan.Column> chosen = new LinkedHashMap<>();
        for (Map.Entry<String, String> line : options.columns().entrySet()) {
            ColumnName quantity = ColumnName.of(line.getKey()).orElseThrow(() -> unknownQuantity(place, line.getKey()));
            int index = index(place, headers, line.getValue(), line.getKey());
            Role role = ProductKeys.withProduct(place, quantity, options);
            String header = headers.get(index);
            ColumnName withUnit = quantity.unitText().isEmpty()
                    ? new ColumnName(header, role, unitText(header), unit(header, role), false)
                    : new ColumnName(header, role, quantity.unitText(), quantity.unit(), false);
            ColumnPlan.Column before = chosen.put(index, ColumnUnits.column(place, index, withUnit, role, options));
            if (before != null) {
                throw place.found("the header " + header.strip() + " twice under columns in the rig file, for "
                                + before.role().canonical() + " and " + role.canonical())
                        .expected("one quantity for a header")
                        .hint("take one of the two lines out of the rig file");
            }
        }
        return chosen;
    }

    private static String unitText(String header) {
        int open = Math.max(header.lastIndexOf('['), header.lastIndexOf('('));
        String stripped = header.strip();
        boolean closed = stripped.endsWith("]") || stripped.endsWith(")");
        return open >= 0 && closed
                ? stripped.substring(open + 1, stripped.length() - 1).strip()
                : "";
    }

    private static @Nullable Unit unit(String header, Role role) {
        Dimension dimension = role.quantity().dimension();
        return dimension == null ? null : Unit.find(unitText(header), dimension).orElse(null);
    }

    private static int index(ColumnPlan.Place place, List<String> headers, String wanted, String quantity) {
        List<Integer> like = new ArrayList<>();
        for (int i = 0; i < headers.size(); i++) {
            if (headers.get(i).strip().equals(wanted.strip())) {
                return i;
            }
            if (ColumnName.plain(headers.get(i)).equals(ColumnName.plain(wanted))) {
                like.add(i);
            }
        }
        if (like.size() == 1) {
            return like.get(0);
        }
        throw place.found("no header \"" + wanted + "\", which the rig file names under columns for " + quantity)
                .expected("one of the headers of the log: " + String.join(", ", headers))
                .hint("copy the header from the log into the rig file exactly");
    }

    private static UnusableInputException unknownQuantity(ColumnPlan.Place place, String key) {
        List<String> names = new ArrayList<>();
        for (LogQuantity quantity : LogQuantity.values()) {
            names.add(quantity.per() == LogQuantity.Per.OUTLET ? quantity.canonical() + "_01" : quantity.canonical());
        }
        return place.found("the quantity \"" + key + "\" under columns in the rig file, which is unknown")
                .expected(
                        "one of " + String.join(", ", names.stream().distinct().toList()))
                .hint("write it as quantity: header of the log");
    }
}
