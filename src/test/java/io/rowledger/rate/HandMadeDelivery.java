package io.rowledger.rate;

import io.rowledger.log.Metering;
import java.util.BitSet;

/** Deliveries made by hand, for tests of what comes after. */
public final class HandMadeDelivery {
    private HandMadeDelivery() {}

    /** All outlets deliver in all steps; no flows, since reports take volumes from the rates. */
    public static Delivery everywhere(int products, int outlets, int steps) {
        BitSet[] delivering = new BitSet[outlets];
        for (int r = 0; r < outlets; r++) {
            delivering[r] = new BitSet(steps);
            delivering[r].set(0, steps);
        }
        return new Delivery(
                new double[products][outlets][Math.max(1, steps)],
                new MeterShares[products],
                Metering.PER_ROW,
                new Targets(new double[products][1]),
                delivering,
                new int[Math.max(1, steps)]);
    }

    /** One product of which outlet r gives the same flow in every step, on one target. */
    public static Delivery steady(double[] flowLPerS, double targetLPerM2, int steps) {
        int outlets = flowLPerS.length;
        double[][][] flows = new double[1][outlets][1];
        BitSet[] delivering = new BitSet[outlets];
        for (int r = 0; r < outlets; r++) {
            flows[0][r][0] = flowLPerS[r];
            delivering[r] = new BitSet(steps);
            delivering[r].set(0, steps);
        }
        return new Delivery(
                flows,
                new MeterShares[1],
                Metering.PER_ROW,
                new Targets(new double[][] {{targetLPerM2}}),
                delivering,
                new int[Math.max(1, steps)]);
    }
}
