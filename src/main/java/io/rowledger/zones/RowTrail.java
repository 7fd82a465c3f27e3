package io.rowledger.zones;

import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;

/**
 * Distance and applied rate of one row through a pass: distance by step, rate by record. A record's position is the
 * middle of its steps.
 */
final class RowTrail {
    private static final int INITIAL_CAPACITY = 64;

    /** Distance of the row from the pass's start to pose firstStep + i, m. */
    private final double[] distanceM;

    private final Poses poses;
    private final int firstStep;

    /** Number of records. */
    int n;
    /** Middle of record i, s since the epoch. */
    double[] timeS = new double[INITIAL_CAPACITY];
    /** Distance of the row to the middle of record i, m. */
    double[] atM = new double[INITIAL_CAPACITY];
    /** Applied rate, L/m²; NaN if the row did not move forward. */
    double[] rateLPerM2 = new double[INITIAL_CAPACITY];
    /** True if the row was delivering. */
    boolean[] delivering = new boolean[INITIAL_CAPACITY];

    RowTrail(Strips strips, Delivery delivery, int p, int r, int firstStep, int endStep) {
        this.poses = strips.poses();
        this.firstStep = firstStep;
        double y = (strips.leftM(r) + strips.rightM(r)) / 2;
        distanceM = new double[endStep - firstStep + 1];
        for (int k = firstStep; k < endStep; k++) {
            distanceM[k - firstStep + 1] = distanceM[k - firstStep]
                    + Math.hypot(
                            poses.eastM(k + 1, y) - poses.eastM(k, y), poses.northM(k + 1, y) - poses.northM(k, y));
        }
        for (int k = firstStep; k < endStep; ) {
            int end = k;
            double areaM2 = 0;
            while (end < endStep && poses.record(end) == poses.record(k)) {
                areaM2 += strips.signedAreaM2(end, r);
                end++;
            }
            double seconds = poses.timeS(end) - poses.timeS(k);
            double rate = areaM2 > 0 ? delivery.flowLPerS(p, r, k) * seconds / areaM2 : Double.NaN;
            add(
                    (poses.timeS(k) + poses.timeS(end)) / 2,
                    (distanceM[k - firstStep] + distanceM[end - firstStep]) / 2,
                    rate,
                    delivery.delivering(r, k));
            k = end;
        }
    }

    private void add(double time, double distance, double rate, boolean isDelivering) {
        if (n == timeS.length) {
            timeS = Arrays.copyOf(timeS, 2 * n);
            atM = Arrays.copyOf(atM, 2 * n);
            rateLPerM2 = Arrays.copyOf(rateLPerM2, 2 * n);
            delivering = Arrays.copyOf(delivering, 2 * n);
        }
        timeS[n] = time;
        atM[n] = distance;
        rateLPerM2[n] = rate;
        delivering[n++] = isDelivering;
    }

    /**
     * Returns the distance of the row at a fraction of the way from the middle of step k − 1 to the middle of step k,
     * m.
     */
    double distanceM(int k, double share) {
        int i = k - firstStep;
        double before = (distanceM[i - 1] + distanceM[i]) / 2;
        return before + share * ((distanceM[i] + distanceM[i + 1]) / 2 - before);
    }

    /** Returns the time there, s since the epoch. */
    double timeS(int k, double share) {
        double before = (poses.timeS(k - 1) + poses.timeS(k)) / 2;
        return before + share * ((poses.timeS(k) + poses.timeS(k + 1)) / 2 - before);
    }

    /** Returns the first record not before a time. */
    int from(double time) {
        int i = Arrays.binarySearch(timeS, 0, n, time);
        return i >= 0 ? i : -i - 1;
    }

    /** Returns the distance at a time between records, m. */
    double distanceAtM(double time) {
        int i = Math.max(1, Math.min(n - 1, from(time)));
        double u = (time - timeS[i - 1]) / (timeS[i] - timeS[i - 1]);
        return atM[i - 1] + u * (atM[i] - atM[i - 1]);
    }
}
