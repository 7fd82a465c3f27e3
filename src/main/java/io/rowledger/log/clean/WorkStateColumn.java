package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.util.Locale;

/**
 * Detects an inverted or dead work state switch: lifted while liquid flows. Used as logged, it would give a record without
 * nitrogen.
 */
final class WorkStateColumn {
    /** Slowest speed considered, m/s; lines are flushed standing with the bar lifted. */
    private static final double MIN_MPS = 0.5;
    /** Share of the volume flowing while lifted above which the log is refused; leaks and late shut-off stay below. */
    private static final double MAX_LIFTED = 0.8;
    /** Fewest records with a flow for a decision. */
    private static final int MIN_RECORDS = 20;
    /** Most records sampled (every n-th). */
    private static final int MAX_SAMPLED_RECORDS = 20_000;

    private WorkStateColumn() {}

    /** Throws if nearly all liquid flows on the move with the bar lifted. */
    static void check(FileLog file) {
        RawLog log = file.log();
        byte[] down = file.states(LogQuantity.DOWN);
        int stride = Math.max(1, log.records / MAX_SAMPLED_RECORDS);
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
                        "swap 1 and 0 if the switch is wired in reverse; if it was dead, rename the column to something like "
                                + "switch, and the work state is taken from flow and speed");
    }

    private static double flowLPerS(FileLog file, int i) {
        double sum = 0;
        for (int k = 0; k < file.log().numbers.length; k++) {
            boolean flow = file.reader().numberColumns().get(k).role().quantity() == LogQuantity.FLOW;
            double value = flow ? file.log().numbers[k][i] : 0;
            sum += value > 0 ? value : 0;
        }
        return sum;
    }
}
