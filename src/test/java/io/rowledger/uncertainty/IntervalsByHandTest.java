package io.rowledger.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Band;
import io.rowledger.rig.BarLengths;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * One pass of a twelve-row bar, 400 m straight at 2 m/s, a record a second, RTK: intervals worked by hand from the formulas
 * of JCGM 100:2008 (GUM): rectangular limits u = a/√3 (4.3.7), sums in quadrature (5.1.2), what is shared added up (5.2.2).
 */
class IntervalsByHandTest {
    private static final int ROWS = 12;
    private static final int SECONDS = 200;
    private static final double BAND_M = 0.762;
    /** 90 % of a normal distribution: NIST/SEMATECH e-Handbook of Statistical Methods, table of the normal distribution. */
    private static final double K90 = 1.645;

    private final UncertaintyInputs job;
    private final Rates rates;
    private final Coverage coverage;

    IntervalsByHandTest() {
        PoseColumns columns = SteadyMotion.north(2, SECONDS, 1);
        List<Band> bands = new ArrayList<>();
        for (int r = 0; r < ROWS; r++) {
            double left = (r - ROWS / 2) * BAND_M;
            bands.add(new Band(r + 1, left + BAND_M / 2, left, left + BAND_M, 1, null));
        }
        Product uan = new Product("uan", "UAN 32-0-0", 1.325, 0.32, 0, 0, 0, 0.04, 0);
        Rig rig = Rig.of("test", BarLengths.mounted(0, 0, 0), bands, List.of(uan), Job.NONE);
        double[] flows = new double[ROWS];
        java.util.Arrays.fill(flows, 0.04 * 2 * BAND_M);
        LogTable log = SteadyMotion.log(columns, SteadyMotion.steadyFlows(SECONDS, flows));
        int[] byFix = new int[10];
        byFix[4] = SECONDS;
        Track track = new Track(
                new LocalPlane(42, -93),
                new Poses(columns),
                List.of(new Pass(1, 0, SECONDS, 0, SECONDS, 400, 0)),
                new TrackQuality(1, 0, 0, false, new double[10], byFix));
        Strips strips = new Strips(track.poses(), bands);
        Delivery delivery = DeliveryBuilder.build(log, rig, strips);
        job = new UncertaintyInputs(log, rig, track, strips, delivery, List.of(), List.of(0.0));
        rates = RatesBuilder.build(track, strips, delivery);
        coverage = Coverages.of(track, strips, delivery, null, CoverageOptions.defaults(1));
    }

    @Test
    void twelve_meters_of_two_percent_make_a_total_good_to_less_than_one() {
        MeterUncertainty meter = new MeterUncertainty(job, rates.rows(), 0);
        // Shared: half of (2 %)²/3, that is 6.66667e-5. Own: as much, and 1 % scatter over 200 readings, 5e-7: together
        // 6.71667e-5 a row, a twelfth of it for twelve. A start and a stop within a second of 200: 2/12/200² =
        // 4.16667e-6,
        // the same for all rows.
        assertEquals(6.66667e-5, meter.shared * meter.shared / 3, 1e-10);
        assertEquals(Math.sqrt(6.71667e-5 + 4.16667e-6), meter.ofRow(3), 1e-8);
        assertEquals(Math.sqrt(6.71667e-5 / 12 + 4.16667e-6), meter.ofBar(), 1e-8);
        // Without scatter and starts: 2 %/√3·√(½ + ½/12) = 0.8498 %, as the room's page says; with them 0.8742 %.
        assertEquals(0.008742, Math.hypot(meter.ofBar(), meter.shared / Math.sqrt(3)), 1e-6);
    }

    @Test
    void ground_and_rows_are_as_wide_as_their_knives_stand() {
        Intervals intervals = IntervalsBuilder.of(job, rates, coverage, 1);
        // Width: 0.0254·√(2/3) of 9.144 m = 0.226805 %. Way: 2 m a record, a start and a stop, 4/6 m²; drift of an inch
        // pass to pass is 0.0254/(1.95996·√(2·0.683262)) = 0.011086 m, and over 200 s 2·0.011086²·(1 − e^(−2/3)) =
        // 0.0001196 m²; √0.666786/400 = 0.204143 %. Together 0.305147 %, of 3657.6 m².
        assertEquals(3657.6, intervals.sweptAreaM2().value(), 1e-6);
        assertEquals(K90 * 0.00305147 * 3657.6, half(intervals.sweptAreaM2()), 0.01);
        // A row: 0.0254/√6 of 0.762 m = 1.360828 %, with the way 1.376055 %, of 304.8 m².
        assertEquals(K90 * 0.01376055 * 304.8, half(intervals.rows().get(4).sweptAreaM2()), 0.01);
    }

    /** The two ways of this room, propagation and drawing again, meet where both are right: one straight pass. */
    @Test
    void drawing_again_and_propagation_agree_on_one_straight_pass() {
        Intervals intervals = IntervalsBuilder.of(job, rates, coverage, 1);
        double drawn = half(intervals.coveredAreaM2());
        double propagated = half(intervals.sweptAreaM2());
        // Sixty draws give a standard deviation to 9 %, and the mean of sixty moves both ends.
        assertTrue(Math.abs(drawn / propagated - 1) < 0.4, drawn + " against " + propagated);
        assertEquals(0, intervals.overlapAreaM2().low(), 1e-9);
        assertEquals(0, intervals.overlapAreaM2().high(), 1);
    }

    @Test
    void nitrogen_doubts_meters_and_density_and_its_rate_the_ground_too() {
        Intervals.OfProduct uan =
                IntervalsBuilder.of(job, rates, coverage, 1).products().get(0);
        double volume = relative(uan.volumeL());
        double nitrogen = relative(uan.nitrogenKg());
        // 400 m × 9.144 m × 0.04 L/m² × 1.325 kg/L × 0.32.
        assertEquals(62.0328, uan.nitrogenKg().value(), 0.001);
        assertEquals(62.0328 / 3657.6, uan.nitrogenKgPerM2().value(), 1e-6);
        assertTrue(nitrogen > volume && nitrogen < volume + 0.01, volume + ", " + nitrogen);
        assertTrue(relative(uan.nitrogenKgPerM2()) > nitrogen);
        assertTrue(relative(uan.meanRateLPerM2()) > volume);
    }

    @Test
    void any_number_of_threads_draws_the_same() {
        assertEquals(IntervalsBuilder.of(job, rates, coverage, 1), IntervalsBuilder.of(job, rates, coverage, 8));
    }

    @Test
    void the_last_digit_of_the_log_is_found() {
        assertEquals(0.25, MeterUncertainty.digitLPerS(new double[] {1.5, 0, 1.75, 1.5, 2.25, 1.75}), 1e-12);
        assertEquals(0, MeterUncertainty.digitLPerS(new double[] {1.5, 1.5, 0, 1.5}), 0);
    }

    private static double half(Interval i) {
        return (i.high() - i.low()) / 2;
    }

    private static double relative(Interval i) {
        return half(i) / i.value();
    }
}
