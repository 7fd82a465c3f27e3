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
}
