package io.rowledger.uncertainty;

import io.rowledger.rate.RowTotals;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * The relative doubt of one product's metered volumes.
 *
 * <p>Limits ±a of a meter's error are a rectangle of standard uncertainty a/√3 (GUM 4.3.7). Whether meters err together is
 * an assumption: half of the variance is taken as shared by all (one calibration, one liquid, one temperature), half as
 * each meter's own. Were the errors independent, a total of many rows would be surer than is said here; were all shared, a
 * total would be less sure, by a factor of √2 at most.
 *
 * <p>Besides: scatter from reading to reading, the last digit of the logged flow (taken as one error all day: half a digit
 * either way), and starts and stops, which fall somewhere between two records and are the same instant for all rows.
 */
final class MeterUncertainty {
    /** Readings looked at to find the logged flow's last digit. */
    private static final int DIGIT_SAMPLE = 4000;
    /** Readings closer than this share of each other are the same decimal. */
    private static final double SAME = 1e-9;

    /** Half width of the part all meters share. */
    final double shared;
    /** Standard uncertainty of each row's own part. */
    final double[] own;
    /** Standard uncertainty of starts and stops, each row. */
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
        for (int r = 0; r < own.length; r++) {
            volumeL[r] = rows.get(r).products().get(p).volumeL();
            if (!(volumeL[r] > 0)) {
                continue;
            }
            double onS = onS(job, r, 0, steps);
            double readings = Math.max(1, onS / intervalS);
            double digit = digitLPerS(job.log().flowColumn(p, r)) * onS / volumeL[r];
            own[r] = Math.sqrt(accuracy * accuracy / 6
                    + DefaultUncertainties.REPEATABILITY * DefaultUncertainties.REPEATABILITY / readings
                    + digit * digit / 12);
            // Volume of one interval at the mean flow, a rectangle one interval wide for every start and stop.
            ends[r] = onS > 0 ? intervalS / onS * Math.sqrt(edges(job, r, 0, steps) / 12.0) : 0;
        }
    }

    /** Standard uncertainty of row r's own part and its ends together. */
    double ofRow(int r) {
        return Math.hypot(own[r], ends[r]);
    }

    /** Standard uncertainty of the whole bar's volume, without the shared part. */
    double ofBar() {
        double sum = 0;
        double ownL2 = 0;
        double endsL = 0;
        for (int r = 0; r < own.length; r++) {
            sum += volumeL[r];
            ownL2 += Math.pow(own[r] * volumeL[r], 2);
            endsL += ends[r] * volumeL[r];
        }
        return sum > 0 ? Math.hypot(Math.sqrt(ownL2), endsL) / sum : Double.NaN;
    }

    /** Standard uncertainty of the bar's volume in one pass, without the shared part. */
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

    /** Starts and stops of row r. */
    private static int edges(UncertaintyInputs job, int r, int fromStep, int toStep) {
        BitSet on = job.delivery().deliveringSteps(r);
        int edges = 0;
        for (int k = on.nextSetBit(fromStep); k >= 0 && k < toStep; k = on.nextSetBit(on.nextClearBit(k))) {
            edges += 2;
        }
        return edges;
    }

    /** The smallest difference between two readings that differ: the logged flow's last digit, or less. */
    static double digitLPerS(double[] column) {
        double[] seen = Arrays.stream(column)
                .filter(f -> f > 0)
                .limit(DIGIT_SAMPLE)
                .sorted()
                .toArray();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < seen.length; i++) {
            double step = seen[i] - seen[i - 1];
            if (step > SAME * seen[i]) {
                least = Math.min(least, step);
            }
        }
        // One value all day shows no step: nothing can be said, and a meter stuck on it is another finding's matter.
        return Double.isFinite(least) ? least : 0;
    }
}
