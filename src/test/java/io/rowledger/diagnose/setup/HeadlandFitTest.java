package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Headlands crossed by many passes, each crossing known to a record only. */
class HeadlandFitTest {
    private static final double BAR_M = 9;
    private static final double HALF_M = 1;
    private static final double SPEED_MPS = 2;

    /**
     * Passes side by side, north first, on the line y = slope·x. Each end's middle lies so far ahead of where it is driven, and
     * the error looked for sets it back besides.
     */
    private static List<PassEnd> ends(double backM, double slope, double... aheadM) {
        List<PassEnd> ends = new ArrayList<>();
        for (int i = 0; i < aheadM.length; i++) {
            boolean north = i % 2 == 0;
            double y = slope * BAR_M * i + (north ? 1 : -1) * (aheadM[i] - backM);
            ends.add(new PassEnd(i + 1, north, 100.0 * i, BAR_M * i, y, north ? 0 : Math.PI, SPEED_MPS, HALF_M));
        }
        return ends;
    }

    /** At one speed the mismatch is what is determined: the error, if the bar is lowered and lifted on time. */
    private static DriftFit.Fitted byBounds(List<PassEnd> ends) {
        HeadlandEstimate e = HeadlandFit.together(ends, PassEnds.lines(ends, BAR_M));
        return new DriftFit.Fitted(e.mismatchM(SPEED_MPS), e.mismatchSigmaM(SPEED_MPS), e.n());
    }

    private static double byMiddles(List<PassEnd> ends) {
        DriftFit.Fitted fitted =
                DriftFit.error(PassEnds.contrasts(ends, BAR_M), PassEnds.times(ends), new double[ends.size()], 5, 0);
        assertNotNull(fitted);
        return fitted.value();
    }

    @Test
    void crossings_at_both_ends_of_their_bounds_leave_no_room() {
        // In either direction half the crossings fell 5 cm from the one record and half 5 cm from the other: on a
        // straight
        // headland errors from 0.25 to 0.35 m fit all bounds, and no other. The middles alone know it to 0.95/√16 =
        // 0.24 m.
        double[] aheadM = new double[16];
        for (int i = 0; i < aheadM.length; i++) {
            aheadM[i] = i / 2 % 2 == 0 ? 0.95 : -0.95;
        }
        DriftFit.Fitted fitted = byBounds(ends(0.3, 0.2, aheadM));
        assertEquals(0.3, fitted.value(), 0.05);
        assertEquals(14, fitted.n());
        assertTrue(fitted.sigma() < 0.16, () -> "sigma " + fitted.sigma());
    }

    @Test
    void the_other_way_round_the_error_is_the_other_way_round() {
        double[] aheadM = {0.9, 0.3, -0.8, -0.1, 0.6, 0.2, -0.5, 0.95, -0.3, 0.4};
        double[] behindM = new double[aheadM.length];
        for (int i = 0; i < aheadM.length; i++) {
            behindM[i] = -aheadM[i];
        }
        DriftFit.Fitted one = byBounds(ends(0.4, 0.1, aheadM));
        DriftFit.Fitted other = byBounds(ends(-0.4, -0.1, behindM));
        assertEquals(one.value(), -other.value(), 1e-6);
        assertEquals(one.sigma(), other.sigma(), 1e-6);
    }

    @Test
    void over_many_headlands_bounds_come_nearer_than_middles_and_intervals_hold_what_they_say() {
        SplittableRandom random = new SplittableRandom(6);
        int held = 0;
        double squares = 0;
        double squaresByMiddles = 0;
        int n = 120;
        for (int k = 0; k < n; k++) {
            double[] aheadM = new double[36];
            for (int i = 0; i < aheadM.length; i++) {
                // The crossing strays by 0.1 m; the records around it fall anywhere.
                aheadM[i] = 0.1 * random.nextGaussian() + random.nextDouble(-HALF_M, HALF_M);
            }
            double errorM = random.nextDouble(-2, 2);
            List<PassEnd> ends = ends(errorM, random.nextDouble(-0.3, 0.3), aheadM);
            DriftFit.Fitted fitted = byBounds(ends);
            held += Math.abs(fitted.value() - errorM) <= Estimate.Z90 * fitted.sigma() ? 1 : 0;
            squares += (fitted.value() - errorM) * (fitted.value() - errorM);
            double off = byMiddles(ends) - errorM;
            squaresByMiddles += off * off;
        }
        double rms = Math.sqrt(squares / n);
        double rmsByMiddles = Math.sqrt(squaresByMiddles / n);
        // By arithmetic: the middles' mean errs by √(1/3 + 0.01)/√18 = 0.138 m; bounds 2 m apart, of crossings that
        // stray by
        // 0.1 m, hold 2 · 0.903/(2 · 0.1) a m² each and so tell to 0.078 m, at best.
        assertTrue(rms < 0.8 * rmsByMiddles, rms + " by bounds, " + rmsByMiddles + " by middles");
        assertTrue(held >= 0.84 * n && held <= 0.96 * n, held + " of " + n);
    }

    @Test
    void more_ends_than_fit_into_one_block_are_put_together() {
        SplittableRandom random = new SplittableRandom(7);
        double[] aheadM = random.doubles(200, -HALF_M, HALF_M).toArray();
        DriftFit.Fitted fitted = byBounds(ends(-0.7, 0.05, aheadM));
        assertEquals(-0.7, fitted.value(), 0.08);
        assertTrue(fitted.sigma() < 0.05, () -> "sigma " + fitted.sigma());
    }
}
