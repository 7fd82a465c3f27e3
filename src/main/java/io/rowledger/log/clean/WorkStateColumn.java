package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.util.Locale;

/**
 * A work state that says lifted while the liquid flows: a switch wired the other way round, or a dead one. Taken as it stands
 * the record would be of no nitrogen at all.
 */
final class WorkStateColumn {
    /** Slower is standing, where a line may be flushed or a meter tried with the bar lifted; m/s. */
    private static final double MIN_MPS = 0.5;
    /** No bar puts down so much of its liquid lifted, leak or shut off late as it may; share of the volume. */
    private static final double MAX_LIFTED = 0.8;
    /** Fewer records with a flow prove nothing. */
    private static final int MIN_RECORDS = 20;
    /** More tell no more: every n-th is looked at. */
    private static final int ENOUGH_RECORDS = 20_000;

    private WorkStateColumn() {}

    /** Refuses a log that has nearly all of its flow, on the move, with the bar lifted. */
    static void check(FileLog file) {
        RawLog log = file.log();
        byte[] down = file.states(LogQuantity.DOWN);
        int stride = Math.max(1, log.records / ENOUGH_RECORDS);
        double liftedL = 0;
        double allL = 0;
        int flowing = 0;
        for (int i = 1; i < Math.min(log.records, down.length); i += stride) {
            double dtS = log.timeS[i] - log.timeS[i - 1];
            double stepM =
                    PositionOutliers.distanceM(log.latDeg[i - 1], log.lonDeg[i - 1], log.latDeg[i], log.lonDeg[i]);
            boolean known = down[i] >= 0 && !log.gapBefore[i] && stepM >= MIN_MPS * dtS;
            double volumeL = known ? flowLPerS(file, i) * dtS : 0;
            if (volumeL > 0) {
                flowing++;
                allL += volumeL;
                liftedL += down[i] == 0 ? volumeL : 0;
            }
        }
        if (flowing < MIN_RECORDS || liftedL <= MAX_LIFTED * allL) {
            return;
        }
        ColumnPlan.Column column = file.plan().find(LogQuantity.DOWN);
        String header = column == null ? "down" : column.header();
        throw UnusableInputException.found(String.format(
                        Locale.ROOT,
                        "a work state that says lifted while %.0f%% of the liquid flowed on the move",
                        100 * liftedL / allL))
                .inFile(file.name())
                .atLine(file.plan().headerLine())
                .atColumn(header)
                .expected("1 where the bar is lowered and 0 where it is lifted")
                .hint(
                        "exchange 1 and 0 if the switch is wired the other way round; if it was dead, rename the column, such as "
                                + "switch, and the work state is taken from flow and speed");
    }

    private static double flowLPerS(FileLog file, int i) {
        double sum = 0;
        for (int k = 0; k < file.log().numbers.length; k++) {
            boolean flow = file.reader().numberColumns().get(k).role().measured() == LogQuantity.FLOW;
            double value = flow ? file.log().numbers[k][i] : 0;
            sum += value > 0 ? value : 0;
        }
        return sum;
    }
}
