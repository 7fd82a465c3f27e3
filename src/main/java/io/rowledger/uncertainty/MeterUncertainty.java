package io.rowledger.uncertainty;

import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.rate.RowTotals;
import io.rowledger.rig.Product;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Relative uncertainty of the volumes of one product that working meters measured.
 *
 * <p>Limits ±a of a meter's error are a rectangle of standard uncertainty a/√3 (GUM 4.3.7). How far the meters' errors are
 * correlated is an assumption: half of the variance is shared by all (one calibration, one liquid, one temperature), half is
 * each meter's own. With independent errors the uncertainty of a total over many rows would be smaller; with fully correlated
 * ones larger, by a factor of √2 at most.
 *
 * <p>Added to it: scatter from reading to reading, the rounding of the logged flow ({@link RoundingUncertainty}), and starts and
 * stops, which fall somewhere between two records and are the same instant for all rows.
 */
final class MeterUncertainty {
    /** Number of readings sampled to find the last digit of the logged flow. */
    private static final int DIGIT_SAMPLE = 4000;
    /** Readings that differ by less than this share are equal. */
    private static final double SAME = 1e-9;

    /** Half-width of a rectangle over its standard uncertainty (GUM 4.3.7). */
    private static final double TO_HALF_WIDTH = Math.sqrt(3);

    /** Relative half-width of the part that all meters share. */
    final double shared;
    /** Relative standard uncertainty of each row's own part. */
    final double[] own;
    /** Relative standard uncertainty from starts and stops, per row. */
    final double[] ends;

    private final double[] volumeL;
    private final List<int[]> meters;
    private final RoundingUncertainty rounding;

    MeterUncertainty(UncertaintyInputs job, List<RowTotals> rows, int p) {
        double accuracy =
                DefaultUncertainties.meterAccuracy(job.rig().products().get(p));
        // Half of a²/3 is the variance of a rectangle of half width a/√2.
        shared = accuracy / Math.sqrt(2);
        own = new double[rows.size()];
        ends = new double[rows.size()];
        volumeL = new double[rows.size()];
        double intervalS = job.track().quality().medianIntervalS();
        int steps = job.track().poses().steps();
        meters = meters(job.log(), p, own.length);
        rounding = new RoundingUncertainty(
                job,
                rows,
                p,
                digitLPerS(job.log(), p),
                ownAccuracy(job.rig().products().get(p)));
        for (int r = 0; r < own.length; r++) {
            volumeL[r] = rows.get(r).products().get(p).volumeL();
            if (!(volumeL[r] > 0)) {
                continue;
            }
            double onS = onS(job, r, 0, steps);
            double readings = Math.max(1, onS / intervalS);
            own[r] = Math.sqrt(accuracy * accuracy / 6
                    + DefaultUncertainties.REPEATABILITY * DefaultUncertainties.REPEATABILITY / readings);
            // Volume of one interval at the mean flow, a rectangle one interval wide for every start and stop.
            ends[r] = onS > 0 ? intervalS / onS * Math.sqrt(edges(job, r, 0, steps) / 12.0) : 0;
        }
    }

    /** Returns the relative standard uncertainty of what is one meter's own. */
    static double ownAccuracy(Product product) {
        return DefaultUncertainties.meterAccuracy(product) / Math.sqrt(6);
    }

    /** Returns the relative standard uncertainty of row r's volume, without the shared part and rounding. */
    double ofRow(int r) {
        return Math.hypot(own[r], ends[r]);
    }

    /** Returns the relative standard uncertainty of the bar's volume, without the shared part and rounding. */
    double ofBar() {
        double sum = 0;
        double ownL2 = 0;
        double endsL = 0;
        for (int[] ofMeter : meters) {
            double ownL = 0;
            for (int r : ofMeter) {
                if (volumeL[r] > 0) {
                    sum += volumeL[r];
                    ownL += own[r] * volumeL[r];
                    endsL += ends[r] * volumeL[r];
                }
            }
            ownL2 += ownL * ownL;
        }
        return sum > 0 ? Math.hypot(Math.sqrt(ownL2), endsL) / sum : Double.NaN;
    }

    /** Returns the relative standard uncertainty of the bar's volume in one pass, without the shared part and rounding. */
    double ofPass(UncertaintyInputs job, Pass pass, List<RowTotals> passRows, int p) {
        double intervalS = job.track().quality().medianIntervalS();
        double sum = 0;
        double ownL2 = 0;
        double endsL = 0;
        for (int[] ofMeter : meters) {
            double ownL = 0;
            for (int r : ofMeter) {
                double rowL = passRows.get(r).products().get(p).volumeL();
                double onS = onS(job, r, pass.firstStep(), pass.endStep());
                if (rowL > 0 && onS > 0) {
                    double scatter =
                            DefaultUncertainties.REPEATABILITY * DefaultUncertainties.REPEATABILITY * intervalS / onS;
                    sum += rowL;
                    ownL += Math.sqrt(own[r] * own[r] + scatter) * rowL;
                    endsL += intervalS / onS * Math.sqrt(edges(job, r, pass.firstStep(), pass.endStep()) / 12.0) * rowL;
                }
            }
            ownL2 += ownL * ownL;
        }
        return sum > 0 ? Math.hypot(Math.sqrt(ownL2), endsL) / sum : Double.NaN;
    }

    /** Returns the relative half-width of the rectangle by which rounding may move row r's volume. */
    double roundingOfRow(int r) {
        return TO_HALF_WIDTH * rounding.ofRow(r);
    }

    /** Returns the same for the bar's volume over the job; 0 if nothing was metered. */
    double roundingOfBar() {
        double sum = Arrays.stream(volumeL).filter(v -> v > 0).sum();
        return sum > 0 ? TO_HALF_WIDTH * rounding.ofBarL() / sum : 0;
    }

    /** Returns the same for the bar's volume in pass i, from 0. */
    double roundingOfPass(int i, double passL) {
        return passL > 0 ? TO_HALF_WIDTH * rounding.ofBarL(i, i + 1) / passL : 0;
    }

    /** Returns the rows of each meter of a product, from 0. */
    static List<int[]> meters(LogTable log, int p, int rows) {
        List<int[]> meters = new ArrayList<>(List.of(log.meterRows(p)));
        for (int r = 0; r < rows && log.metering(p) == Metering.PER_ROW; r++) {
            meters.add(new int[] {r});
        }
        return meters;
    }

    /** Returns how long row r delivered in the steps [from, to), s. */
    static double onS(UncertaintyInputs job, int r, int fromStep, int toStep) {
        Poses poses = job.track().poses();
        BitSet on = job.delivery().deliveringSteps(r);
        double seconds = 0;
        for (int k = on.nextSetBit(fromStep); k >= 0 && k < toStep; k = on.nextSetBit(k + 1)) {
            seconds += poses.durationS(k);
        }
        return seconds;
    }

    /** Returns the number of starts and stops of row r. */
    private static int edges(UncertaintyInputs job, int r, int fromStep, int toStep) {
        BitSet on = job.delivery().deliveringSteps(r);
        int edges = 0;
        for (int k = on.nextSetBit(fromStep); k >= 0 && k < toStep; k = on.nextSetBit(on.nextClearBit(k))) {
            edges += 2;
        }
        return edges;
    }

    /**
     * Returns the last digit of the logged flows of a product, L/s; 0 if no meter of any product shows two different ones. All
     * meters have the console's resolution: one that is stuck, or a product whose flow never leaves one step, shows too few
     * readings to tell it.
     */
    static double digitLPerS(LogTable log, int p) {
        double own = digitOfLPerS(log, p);
        for (int other = 0; other < log.products().size() && own == 0; other++) {
            own = digitOfLPerS(log, other);
        }
        return own;
    }

    private static double digitOfLPerS(LogTable log, int p) {
        double min = Double.POSITIVE_INFINITY;
        int meters = log.meterRows(p).length;
        for (int m = 0; m < (meters > 0 ? meters : log.outlets()); m++) {
            double digit = digitLPerS(meters > 0 ? log.meterColumn(p, m) : log.flowColumn(p, m));
            min = digit > 0 ? Math.min(min, digit) : min;
        }
        return Double.isFinite(min) ? min : 0;
    }

    /** Returns the smallest difference between two readings: the last digit of the logged flow, or less; 0 if all are equal. */
    static double digitLPerS(double[] column) {
        double[] seen = Arrays.stream(column)
                .filter(f -> f > 0)
                .limit(DIGIT_SAMPLE)
                .sorted()
                .toArray();
        double min = Double.POSITIVE_INFINITY;
        for (int i = 1; i < seen.length; i++) {
            double step = seen[i] - seen[i - 1];
            if (step > SAME * seen[i]) {
                min = Math.min(min, step);
            }
        }
        return Double.isFinite(min) ? min : 0;
    }
}
