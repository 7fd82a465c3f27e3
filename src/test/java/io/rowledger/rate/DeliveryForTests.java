package io.rowledger.rate;

import io.rowledger.log.Metering;
import java.util.BitSet;

/** Lets tests of other rooms say what left each outlet. */
public final class DeliveryForTests {
    private DeliveryForTests() {}

    /** Flow by product, row and record; target by product and record (or one for all); delivering steps by row. */
    public static Delivery of(double[][][] flowLPerS, double[][] targetLPerM2, BitSet[] delivering, int[] record) {
        return new Delivery(
                flowLPerS,
                new MeterShares[flowLPerS.length],
                Metering.PER_ROW,
                new Targets(targetLPerM2),
                delivering,
                record);
    }
}
