package io.rowledger.rate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.rig.Rig;
import io.rowledger.track.PoseColumns;
import org.junit.jupiter.api.Test;

/** The example of the room's package page, number by number. */
class RateWorkedExampleTest {
    private static final double PER_HECTARE = 10_000;

    @Test
    void three_rows_in_a_turn_come_out_as_worked_by_hand() {
        PoseColumns circle = SteadyMotion.circle(10, 0.005, 20, 0.5);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(2, 2, 2), 40 / PER_HECTARE, 0);
        Rates rates = SteadyMotion.rates(circle, rig, SteadyMotion.steadyFlows(20, 0.0008, 0.0008, 0.0008));
        double[] area = {2.39999, 1.99999, 1.59999};
        double[] rate = {33.3335, 40.0002, 50.0002};
        double[] error = {-16.6667, 0, 25};
        double[] deviation = {-16.666, 0.0004, 25.001};
        for (int r = 0; r < 3; r++) {
            RowTotals row = rates.rows().get(r);
            RowTotals.ProductTotals product = row.products().get(0);
            assertEquals(area[r], row.sweptAreaM2(), 5e-6);
            assertEquals(0.008, product.volumeL(), 1e-12);
            assertEquals(rate[r], product.volumeL() / row.sweptAreaM2() * PER_HECTARE, 5e-5);
            assertEquals(error[r], 100 * signed(row.turn()), 5e-5);
            assertEquals(error[r], 100 * signed(row.turnRemaining()), 5e-5);
            assertEquals(deviation[r], product.deviationPct(), 5e-4);
        }
        Rates.PassTotals bar = rates.passes().get(0);
        assertEquals(0.024, bar.volumeL()[0], 1e-12);
        assertEquals(5.99998, bar.sweptAreaM2(), 6e-6);
        double mean = bar.volumeL()[0] / bar.sweptAreaM2();
        assertEquals(40.0002, mean * PER_HECTARE, 5e-5);
        assertEquals(0.42409, rig.products().get(0).nitrogenKgPerL(), 5e-6);
        assertEquals(16.9637, rig.products().get(0).nitrogenKgPerM2(mean) * PER_HECTARE, 5e-5);
    }

    private static double signed(RowTotals.TurnError error) {
        return error.maxOver() + error.maxUnder();
    }
}
