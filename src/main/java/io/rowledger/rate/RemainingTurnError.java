package io.rowledger.rate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The turn error that remained in the metered flows, per row and pass.
 *
 * <p>Over an interval of a few seconds row i puts down Vᵢ on Aᵢ, and the rows that deliver steadily ΣV on ΣA. On straight ground
 * the row's level is ℓᵢ = Σ Vᵢ ÷ Σ (Aᵢ·ΣV/ΣA): a restricted row has 0.7 there whether it turns or not. The error that remains of
 * the turn is εᵢ = (Vᵢ/ℓᵢ ÷ Aᵢ) ÷ (Σ(V/ℓ) ÷ ΣA) − 1. ℓᵢ is taken from the straight ground of the same pass, because a fault comes
 * and goes; from the whole job if the pass has less than {@value #MIN_LEVEL_S} s of it; and is 1 if the job has less.
 */
final class RemainingTurnError {
    /** Shortest time on straight ground that a level needs, s: two to four intervals, so that a meter's scatter averages out. */
    static final double MIN_LEVEL_S = 10;

    /**
     * Ground is straight where the outside rows' speeds deviate less from their mean (1): a gentle bend that lasts a pass would
     * otherwise be taken for the rows' levels.
     */
    static final double STRAIGHT = 0.01;

    /** Below this level a row is plugged: its rate shows nothing of the turn (1). */
    private static final double MIN_LEVEL = 0.05;

    private final int rows;
    private final Levels job;
    private Levels pass;
    private final List<Levels> passLevels = new ArrayList<>();
    private final List<List<Interval>> intervals = new ArrayList<>();
    private Interval open;
    private double openS;

    RemainingTurnError(int rows) {
        this.rows = rows;
        this.job = new Levels(rows);
        this.pass = new Levels(rows);
        this.open = new Interval(rows);
    }

    /** Volume, area and way of the bar per row over a few seconds, where the row delivered steadily. */
    private static final class Interval {
        private final double[] volumeL;
        private final double[] areaM2;
        private final double[] barAdvanceM;

        Interval(int rows) {
            volumeL = new double[rows];
            areaM2 = new double[rows];
            barAdvanceM = new double[rows];
        }
    }

    /** Sums for the rows' levels on straight ground. */
    private static final class Levels {
        private final double[] volumeL;
        private final double[] dueL;
        private final double[] seconds;

        Levels(int rows) {
            volumeL = new double[rows];
            dueL = new double[rows];
            seconds = new double[rows];
        }

        boolean known(int r) {
            return seconds[r] >= MIN_LEVEL_S && dueL[r] > 0;
        }

        double level(int r) {
            return volumeL[r] / dueL[r];
        }
    }

    /** Starts a pass. */
    void beginPass() {
        pass = new Levels(rows);
        passLevels.add(pass);
        intervals.add(new ArrayList<>());
    }

    /**
     * Adds a step.
     *
     * @param steady rows that deliver steadily
     * @param volumeL per row
     * @param areaM2 per row
     * @param barAdvanceM way of the bar
     * @param stepS duration
     * @param straight true if the bar does not turn
     * @param last true for the last step of a pass
     */
    void add(
            boolean[] steady,
            double[] volumeL,
            double[] areaM2,
            double barAdvanceM,
            double stepS,
            boolean straight,
            boolean last) {
        double allL = 0;
        double allM2 = 0;
        for (int r = 0; r < rows; r++) {
            if (steady[r]) {
                allL += volumeL[r];
                allM2 += areaM2[r];
                open.volumeL[r] += volumeL[r];
                open.areaM2[r] += areaM2[r];
                open.barAdvanceM[r] += barAdvanceM;
            }
        }
        for (int r = 0; straight && allL > 0 && r < rows; r++) {
            if (steady[r]) {
                double dueL = areaM2[r] * allL / allM2;
                pass.volumeL[r] += volumeL[r];
                pass.dueL[r] += dueL;
                pass.seconds[r] += stepS;
                job.volumeL[r] += volumeL[r];
                job.dueL[r] += dueL;
                job.seconds[r] += stepS;
            }
        }
        openS += stepS;
        if (openS >= RatesBuilder.SPELL_S || last) {
            if (Arrays.stream(open.areaM2).anyMatch(area -> area > 0)) {
                intervals.get(intervals.size() - 1).add(open);
                open = new Interval(rows);
            }
            openS = 0;
        }
    }

    /** Returns the sums of pass i, from 0, per row; call it after the last step of the job. */
    ErrorSums[] ofPass(int i, double[] bandM) {
        ErrorSums[] sums = new ErrorSums[rows];
        double[] level = new double[rows];
        for (int r = 0; r < rows; r++) {
            sums[r] = new ErrorSums();
            Levels of = passLevels.get(i).known(r) ? passLevels.get(i) : job;
            level[r] = of.known(r) ? of.level(r) : 1;
        }
        for (Interval interval : intervals.get(i)) {
            double allL = 0;
            double allM2 = 0;
            for (int r = 0; r < rows; r++) {
                if (level[r] > MIN_LEVEL) {
                    allL += interval.volumeL[r] / level[r];
                    allM2 += interval.areaM2[r];
                }
            }
            for (int r = 0; allL > 0 && r < rows; r++) {
                double areaM2 = interval.areaM2[r];
                if (areaM2 > 0 && level[r] > MIN_LEVEL) {
                    double error = interval.volumeL[r] / level[r] / areaM2 / (allL / allM2) - 1;
                    boolean extreme = areaM2 / bandM[r] > RatesBuilder.EXTREME_SHARE * interval.barAdvanceM[r];
                    sums[r].add(error, areaM2, extreme);
                }
            }
        }
        return sums;
    }
}
