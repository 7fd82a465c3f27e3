package io.rowledger.log.header;

import io.rowledger.log.header.ColumnPlan.Column;
import java.util.List;

/**
 * Chooses, for each product, the kind of column that gives its flow when a log has several: flows of rows, then rates per
 * area of rows, then flow, total meter, rate or volume of the whole bar. The other kinds are not needed.
 */
final class FlowSources {
    private FlowSources() {}

    /** Order of preference; lower is better, {@link Integer#MAX_VALUE} for quantities that give no flow. */
    static int preference(LogQuantity quantity) {
        return switch (quantity) {
            case FLOW, VOLUME, VOLUME_SINCE_LAST, VOLUME_TOTAL, COUNT, COUNT_SINCE_LAST, COUNT_TOTAL -> 0;
            case ROW_RATE -> 1;
            case ROW_NITROGEN_RATE -> 2;
            case BAR_FLOW -> 3;
            case FLOW_TOTAL -> 4;
            case BAR_RATE -> 5;
            case BAR_NITROGEN_RATE -> 6;
            case BAR_VOLUME, BAR_VOLUME_SINCE_LAST, BAR_VOLUME_TOTAL -> 7;
            default -> Integer.MAX_VALUE;
        };
    }

    /** Returns the best preference for a product: among columns chosen in the rig file if there are any. */
    static int best(String product, List<Column> chosen, List<Role> found) {
        int best = Integer.MAX_VALUE;
        for (Column column : chosen) {
            if (column.role().product().equals(product) && column.written() != LogQuantity.FLOW_TOTAL) {
                best = Math.min(best, preference(column.written()));
            }
        }
        if (best < Integer.MAX_VALUE) {
            return best;
        }
        for (Role role : found) {
            if (role.product().equals(product)) {
                best = Math.min(best, preference(role.quantity()));
            }
        }
        return best;
    }
}
