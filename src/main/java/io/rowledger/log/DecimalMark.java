package io.rowledger.log;

import java.util.List;
import org.apache.commons.csv.CSVRecord;

/** Whether a log writes decimals with a point or a comma, told from its first records. */
final class DecimalMark {
    private DecimalMark() {}

    static char of(ColumnPlan plan, List<CSVRecord> first) {
        int commas = 0;
        int points = 0;
        for (CSVRecord fields : first) {
            for (ColumnPlan.Column column : plan.columns()) {
                if (column.role().measured() == Measured.TIME || column.index() >= fields.size()) {
                    continue;
                }
                String text = fields.get(column.index());
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
