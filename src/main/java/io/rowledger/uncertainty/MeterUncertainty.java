package io.rowledger.uncertainty;

import io.rowledger.log.LogTable;
import io.rowledger.rate.RowTotals;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
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
 * <p>Added to it: scatter from reading to reading, the last digit of the logged flow (one error all day: half a digit either
 * way), and starts and stops, which fall somewhere between two records and are the same instant for all rows.
 */
final class MeterUncertainty {
    /** Number of readings sampled to find the last digit of the logged flow. */
    private static final int DIGIT_SAMPLE = 4000;
    /** Readings that differ by less than this share are equal. */
    private static final double SAME = 1e-9;

    /** Relative half-width of the part that all meters share. */
    final double shared;
    /** Relative standard uncertainty of each row's own part. */
    final double[] own;
    /** Relative standard uncertainty from starts and stops, per row. */
    final double[] ends;

    private final double[] volumeL;

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
        double digitLPerS = digitLPerS(job.log(), p, own.length);
        for (int r = 0; r < own.length; r++) {
            volumeL[r] = rows.get(r).products().get(p).volumeL();
            if (!(volumeL[r] > 0)) {
                continue;
            }
            double onS = onS(job, r, 0, steps);
            double readings = Math.max(1, onS / intervalS);
            double digit = digitLPerS * onS / volumeL[r];
            own[r] = Math.sqrt(accuracy * accuracy / 6
                    + DefaultUncertainties.REPEATABILITY * DefaultUncertainties.REPEATABILITY / readings
                    + digit * digit / 12);
            // Volume of one interval at the mean flow, a rectangle one interval wide for every start and stop.
            ends[r] = onS > 0 ? intervalS / onS * Math.sqrt(edges(job, r, 0, steps) / 12.0) : 0;
        }
    }

    /** Returns the relative standard uncertainty of row r's volume, without the shared part. */
    double ofRow(int r) {
        return Math.hypot(own[r], ends[r]);
    }

    /** Returns the relative standard uncertainty of the bar's volume, without the shared part. */
    double ofBar() {
        double sum = 0;
        double ownL2 = 0;
        double endsL = 0;
        for (int r = 0; r < own.length; r++) {
            if (!(volumeL[r] > 0)) {
                continue;
            }
            sum += volumeL[r];
            ownL2 += Math.pow(own[r] * volumeL[r], 2);
            endsL += ends[r] * volumeL[r];
        }
        return sum > 0 ? Math.hypot(Math.sqrt(ownL2), endsL) / sum : Double.NaN;
    }

    /** Returns the relative standard uncertainty of the bar's volume in one pass, without the shared part. */
    double ofPass(UncertaintyInputs job, Pass pass, List<RowTotals> passRows, int p) {
        double intervalS = job.track().quality().medianIntervalS();
        double sum = 0;
        double ownL2 = 0;
        double endsL = 0;
        for (int r = 0; r < own.length; r++) {
            double rowL = passRows.get(r).products().get(p).volumeL();
            double onS = onS(job, r, pass.firstStep(), pass.endStep());
            if (!(rowL > 0) || !(onS > 0)) {
                continue;
            }
            double scatter = DefaultUncertainties.REPEATABILITY * DefaultUncertainties.REPEATABILITY * intervalS / onS;
            sum += rowL;
            ownL2 += (own[r] * own[r] + scatter) * rowL * rowL;
            endsL += intervalS / onS * Math.sqrt(edges(job, r, pass.firstStep(), pass.endStep()) / 12.0) * rowL;
        }
        return sum > 0 ? Math.hypot(Math.sqrt(ownL2), endsL) / sum : Double.NaN;
    }

    private static double onS(UncertaintyInputs job, int r, int fromStep, int toStep) {
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
     * Returns the last digit of the logged flows of a product, L/s; 0 if no row shows two different ones. All rows have the
     * console's resolution, and a row whose meter is stuck shows too few readings to tell it.
     */
    private static double digitLPerS(LogTable log, int p, int rows) {
        double min = Double.POSITIVE_INFINITY;
        for (int r = 0; r < rows; r++) {
            double digit = digitLPerS(log.flowColumn(p, r));
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
