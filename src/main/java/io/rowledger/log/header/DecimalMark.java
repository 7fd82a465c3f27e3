package io.rowledger.log.header;

import io.rowledger.log.source.Line;
import java.util.List;

/** Detects the decimal mark, point or comma, from the first records. */
public final class DecimalMark {
    private DecimalMark() {}

    /** Returns the mark of the positions, which are never thousands; where they have none, that of most other numbers. */
    public static char of(ColumnPlan plan, List<Line> first) {
        int positions = 0;
        int others = 0;
        for (Line line : first) {
            String[] fields = line.fields();
            for (ColumnPlan.Column column : plan.columns()) {
                LogQuantity quantity = column.role().quantity();
                if (quantity == LogQuantity.TIME || quantity == LogQuantity.DATE || column.index() >= fields.length) {
                    continue;
                }
                String text = fields[column.index()];
                boolean comma = text.indexOf(',') >= 0;
                boolean point = text.indexOf('.') >= 0;
                int commas = comma == point ? 0 : comma ? 1 : -1;
                if (quantity == LogQuantity.LAT || quantity == LogQuantity.LON) {
                    positions += commas;
                } else {
                    others += commas;
                }
            }
        }
        return positions > 0 || (positions == 0 && others > 0) ? ',' : '.';
    }
}
