package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import java.util.Locale;

/** Sets impossible flows to unknown and counts them; refuses a column with mostly impossible flows. */
final class FlowRange {
    /** Largest flow of one outlet, L/s: ten times that of the largest side-dress outlet (common practice, no source). */
    static final double MAX_L_PER_S = 10;
    /** Zero offset of a meter at rest, L/s (0.08 gal/min); smaller negative flows are zero. */
    static final double ZERO_OFFSET_L_PER_S = 0.005;

    private static final double MOST = 0.5;

    private FlowRange() {}

    static void check(FileLog file) {
        RawLog log = file.log();
        int negative = 0;
        int absurd = 0;
        for (int k = 0; k < log.numbers.length; k++) {
            ColumnPlan.Column column = file.reader().numberColumns().get(k);
            if (column.role().quantity() != LogQuantity.FLOW) {
                continue;
            }
            int tooLarge = 0;
            int firstLine = 0;
            double[] flow = log.numbers[k];
            for (int i = 0; i < log.records; i++) {
                if (flow[i] < 0) {
                    negative++;
                    flow[i] = flow[i] >= -ZERO_OFFSET_L_PER_S ? 0 : Double.NaN;
                } else if (flow[i] > MAX_L_PER_S) {
                    flow[i] = Double.NaN;
                    firstLine = tooLarge++ == 0 ? log.line[i] : firstLine;
                }
            }
            if (tooLarge > MOST * log.records) {
                throw UnusableInputException.found(
                                "flows above " + limit(column) + " in " + tooLarge + " of " + log.records + " records")
                        .inFile(file.name())
                        .atLine(firstLine)
                        .atColumn(column.header())
                        .expected("a flow that one outlet can pass")
                        .hint("check the unit in the header; " + column.unit() + " does not fit the figures");
            }
            absurd += tooLarge;
        }
        if (negative > 0) {
            file.notes().add(Message.of("notes.log.negative", negative, file.shortName()));
        }
        if (absurd > 0) {
            file.notes().add(Message.of("notes.log.absurd", absurd, file.shortName()));
        }
    }

    private static String limit(ColumnPlan.Column column) {
        return String.format(Locale.ROOT, "%.0f %s", MAX_L_PER_S / column.toSi(), column.unit());
    }
}
