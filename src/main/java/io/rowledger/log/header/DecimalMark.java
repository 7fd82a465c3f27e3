package io.rowledger.log.header;

import io.rowledger.log.source.Line;
import java.util.List;

/** Whether a log writes decimals with a point or a comma, told from its first records. */
public final class DecimalMark {
    private DecimalMark() {}

    public static char of(ColumnPlan plan, List<Line> first) {
        int commas = 0;
        int points = 0;
        for (Line line : first) {
            String[] fields = line.fields();
            for (ColumnPlan.Column column : plan.columns()) {
                if (column.role().measured() == LogQuantity.TIME
                        || column.role().measured() == LogQuantity.DATE
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
