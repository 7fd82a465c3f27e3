package io.rowledger.log.header;

import io.rowledger.log.source.Line;
import java.util.List;

/** Detects the decimal mark, point or comma, from the first records. */
public final class DecimalMark {
    private DecimalMark() {}

    public static char of(ColumnPlan plan, List<Line> first) {
        int commas = 0;
        int points = 0;
        for (Line line : first) {
            String[] fields = line.fields();
            for (ColumnPlan.Column column : plan.columns()) {
                if (column.role().quantity() == LogQuantity.TIME
                        || column.role().quantity() == LogQuantity.DATE
                        || column.index() >= fields.length) {
                    continue;
                }
                String text = fields[column.index()];
                boolean comma = text.indexOf(',') >= 0;
                boolean point = text.indexOf('.') >= 0;
                if (comma && !point) {
                    commas++;
                } else if (point && !comma) {
                    points++;
                }
            }
        }
        return commas > points ? ',' : '.';
    }
}
