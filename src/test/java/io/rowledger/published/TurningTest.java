package io.rowledger.published;

import static io.rowledger.units.Factor.LITRES_PER_SQUARE_METRE_PER_GPA;
import static io.rowledger.units.Factor.METRES_PER_FOOT;
import static io.rowledger.units.Factor.METRES_PER_INCH;
import static io.rowledger.units.Factor.METRES_PER_SECOND_PER_MPH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.RateFormula;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import io.rowledger.track.TestLogs;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Uniform flow in a turn: what each part of the bar puts down, against published examples.
 *
 * <p>Model of all of them: a rigid bar on a circle of radius R, a point y further out moves at v·(R + y)/R, so constant
 * flow leaves rate·R/(R + y) there. Our offsets are positive right; on the clockwise circles below that is inward.
 */
class TurningTest {
    /** Bands so narrow that their mean is the value at their middle, m. */
    private static final double NARROW_M = 0.002;

    /** Steps so small that a chord is shorter than its arc by two parts in a thousand million only, rad. */
    private static final double STEP_RAD = 1e-4;

    @Test
    void the_120_ft_bar_prints_40_and_10_and_5_71() {
        // R. Bergman, Iowa State Univ. Extension, "Turn Compensation", 5 March 2021: a 120 ft boom around an inner
        // circle
        // of 40 ft diameter at 10 mph and 10 gal/ac in the middle; the inner end makes about 25 % of the speed, 2.5
        // mph,
        // and gets nearly 40 gal/ac: seen. Exactly R = 80 ft, 2.5 / 10 / 17.5 mph, 40 / 10 / 5.7143 gal/ac, error
        // +300 / 0 / -42.857 %: derived.
        double[] out = {60 * METRES_PER_FOOT, 0, -60 * METRES_PER_FOOT};
        Rates rates = narrowBandsOnCircle(80 * METRES_PER_FOOT, 10 * METRES_PER_SECOND_PER_MPH, out);
        assertEquals("5.71 / 10.00 / 40.00", print(rates, 0) + " / " + print(rates, 1) + " / " + print(rates, 2));
        assertEquals(-42.857, 100 * rates.rows().get(0).turn().maxUnder(), 5e-4);
        assertEquals(0, rates.rows().get(1).turn().meanAbs(), 1e-9);
        assertEquals(300, 100 * rates.rows().get(2).turn().maxOver(), 1e-4);
        double inner = rates.rows().get(2).sweptAreaM2() / rates.rows().get(1).sweptAreaM2();
        assertEquals(0.25, inner, 1e-9, "the inner end's share of the speed");
        assertEquals(2.5, 10 * inner, 1e-8, "mph");
        assertEquals(
                17.5,
                10 * rates.rows().get(0).sweptAreaM2() / rates.rows().get(1).sweptAreaM2(),
                1e-8,
                "mph");
    }

    @Test
    void the_120_ft_bar_comes_out_of_a_log_of_positions_too() {
        // The same example through the whole chain: fixes at 10 Hz on the circle, smoothed, towed, cut into strips.
        double radius = 80 * METRES_PER_FOOT;
        double speed = 10 * METRES_PER_SECOND_PER_MPH;
        double rate = 10 * LITRES_PER_SQUARE_METRE_PER_GPA;
        List<Band> bands = SteadyMotion.bandsAt(0.01, -60 * METRES_PER_FOOT, 0, 60 * METRES_PER_FOOT);
        Rig rig = SteadyMotion.rig(bands, rate, 0);
        double flow = RateFormula.flowLPerS(rate, speed, 0.01);
        LogTable log = TestLogs.along(
                t -> new double[] {radius * Math.sin(speed * t / radius), radius * Math.cos(speed * t / radius)},
                3000,
                10,
                3,
                flow);
        Track whole = TrackBuilder.build(log, rig, TrackOptions.defaults());
        Strips strips = new Strips(whole.poses(), bands);
        // Evaluated from a hundred steps after the start, where the course is known, to a hundred before the end.
        Poses poses = whole.poses();
        int end = poses.steps() - 100;
        Pass steady = new Pass(1, 100, end, poses.timeS(100), poses.timeS(end), 0, 0);
        Track track = new Track(whole.plane(), poses, List.of(steady), whole.quality());
        Rates rates = RatesBuilder.build(track, strips, DeliveryBuilder.build(log, rig, strips));
        // Latitudes to a nanometre smoothed back to a millimeter: a part in ten thousand where the row is slowest.
        assertEquals(5.7143, gallonsPerAcre(rates, 0), 5.7143 * 1e-4);
        assertEquals(10, gallonsPerAcre(rates, 1), 10 * 1e-4);
        assertEquals(40, gallonsPerAcre(rates, 2), 40 * 1e-4);
    }

    @Test
    void one_turn_explains_the_extremes_of_the_three_field_study() {
        // Fabula, Sharda, Mishler, Precision Agric. 2022, doi 10.1007/s11119-022-09903-5: 36.6 m boom, errors from
        // -48.2 %
        // to +1058.0 % (seen). +1058 % at the inner end needs R = 20.03 m, -48.2 % at the outer end 19.67 m: derived.
        double half = 36.6 / 2;
        Rates tight = narrowBandsOnCircle(20.03, 3, half, 0, -half);
        // R has two decimals: 0.005 m more or less is 0.3 % of the error so near the pivot.
        // That end moves at 8.6 % of the bar's speed, under the fifth from which on the largest over is taken: it is in
        // the
        // mean, which on a steady circle is the error itself.
        assertEquals(1058.0, 100 * tight.rows().get(2).turn().meanAbs(), 1058 * 0.003);
        assertEquals(0, tight.rows().get(2).turn().maxOver(), 0);
        Rates wide = narrowBandsOnCircle(19.67, 3, half, 0, -half);
        assertEquals(-48.2, 100 * wide.rows().get(0).turn().maxUnder(), 0.05);
    }

    @ParameterizedTest
    @CsvSource({
        // bar ft, R m at which the inner end passes +10 %, the outer end -10 %: derived, half the width is R/11 and
        // R/9.
        "20,  33.528,  27.432",
        "30,  50.292,  41.148",
        "40,  67.056,  54.864",
        "60,  100.584, 82.296",
        "120, 201.168, 164.592"
    })
    void the_ends_pass_ten_percent_at_these_radii(double feet, double innerM, double outerM) {
        double half = feet * METRES_PER_FOOT / 2;
        RowTotals inner = narrowBandsOnCircle(innerM, 2, half, 0, -half).rows().get(2);
        assertEquals(0.10, inner.turn().maxOver(), 1e-7);
        RowTotals outer = narrowBandsOnCircle(outerM, 2, half, 0, -half).rows().get(0);
        assertEquals(-0.10, outer.turn().maxUnder(), 1e-7);
        // On either side of the radius the area beyond 10 % is none or all.
        RowTotals tighter =
                narrowBandsOnCircle(innerM * 0.999, 2, half, 0, -half).rows().get(2);
        assertEquals(tighter.sweptAreaM2(), tighter.turn().beyond10M2(), 1e-12);
        RowTotals wider =
                narrowBandsOnCircle(innerM * 1.001, 2, half, 0, -half).rows().get(2);
        assertEquals(0, wider.turn().beyond10M2(), 0);
        assertEquals(wider.sweptAreaM2(), wider.turn().beyond5M2(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {9.2, 10, 12, 20, 50, 200, 5000})
    void a_turn_moves_liquid_sideways_and_leaves_the_bars_mean_alone(double radius) {
        // Derived: with constant flow the area-weighted mean rate is flow/(v·W) for every R > W/2. 24 rows of 30 in
        // make
        // W = 18.288 m, so R may go down to 9.144 m.
        int rows = 24;
        double spacing = 30 * METRES_PER_INCH;
        double[] widths = new double[rows];
        Arrays.fill(widths, spacing);
        double speed = 2.5;
        double target = 40 * LITRES_PER_SQUARE_METRE_PER_GPA;
        double flow = RateFormula.flowLPerS(target, speed, spacing);
        double[] flows = new double[rows];
        Arrays.fill(flows, flow);
        int steps = 400;
        double seconds = STEP_RAD * radius / speed;
        PoseColumns circle = SteadyMotion.circle(radius, STEP_RAD, steps, seconds);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(widths), target, 0);
        Rates rates = SteadyMotion.rates(circle, rig, SteadyMotion.steadyFlows(steps, flows));
        double volume = 0;
        double area = 0;
        double duration = circle.timeS[steps] - circle.timeS[0];
        for (RowTotals row : rates.rows()) {
            assertEquals(flow * duration, row.products().get(0).volumeL(), 1e-9 * flow * duration);
            volume += row.products().get(0).volumeL();
            area += row.sweptAreaM2();
        }
        assertEquals(target, volume / area, target * 1e-8);
        double rowOut = rates.rows().get(0).products().get(0).volumeL()
                / rates.rows().get(0).sweptAreaM2();
        double middleOfOuterRow = 11.5 * spacing;
        assertEquals(target * radius / (radius + middleOfOuterRow), rowOut, target * 1e-8);
    }

    @Test
    void inside_the_pivot_no_rate_is_given() {
        // Derived: below R = W/2 the inner end goes backward; there is no rate to report, only a flag to raise.
        double half = 9.144;
        Rates rates = narrowBandsOnCircle(8, 2, half, 0, -half);
        RowTotals backward = rates.rows().get(2);
        assertEquals(0, backward.sweptAreaM2(), 0);
        assertEquals(0, backward.appliedAreaM2(), 0);
        assertTrue(Double.isNaN(backward.turn().meanAbs()), "a rate at the pivot has no meaning");
    }

    @Test
    void a_section_is_judged_by_its_area_against_the_centre_section() {
        // Luck, Pitla, Zandonadi, Sama, Shearer, Precision Agric. 12(4):534-545, 2011 and the same authors' meeting
        // paper
        // of 2009: error of a section = area of the centre section / area of the section - 1 (method seen, formula
        // derived). Nine sections of 3 m on a circle of 25 m: the inmost sweeps (25 - 12)/25 of the centre's area.
        double[] widths = new double[9];
        Arrays.fill(widths, 3);
        PoseColumns circle = SteadyMotion.circle(25, 1e-3, 50, 0.01);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(widths), 0.004, 0);
        double[] flows = new double[9];
        Arrays.fill(flows, 0.03);
        Rates rates = SteadyMotion.rates(circle, rig, SteadyMotion.steadyFlows(50, flows));
        double centre = rates.rows().get(4).sweptAreaM2();
        for (RowTotals row : rates.rows()) {
            double published = centre / row.sweptAreaM2() - 1;
            double ours = published >= 0 ? row.turn().maxOver() : row.turn().maxUnder();
            assertEquals(published, ours, 1e-9, "row " + row.row());
        }
        assertEquals(25.0 / 13 - 1, rates.rows().get(8).turn().maxOver(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        // rows, pass mean too high when the outer knives run full: derived, (n + 1)/n - 1; the practice is from memory.
        "4,  25",
        "6,  16.7",
        "8,  12.5",
        "12, 8.33",
        "16, 6.25",
        "24, 4.17"
    })
    void outer_knives_that_run_full_overdose_the_guess_middle(int rows, double percent) {
        // A knife in each of n + 1 middles, the outer two on guess middles that the next pass shares: half, full or no
        // flow there makes n, n + 1 or n - 1 knives' worth (derived). Per outer band 100, 200 and 0 %.
        assertEquals(0, passDeviation(rows, 0.5), 1e-7);
        assertEquals(percent, passDeviation(rows, 1), percent < 10 || percent == 12.5 ? 0.005 : 0.05);
        assertEquals(-percent, passDeviation(rows, 0), percent < 10 || percent == 12.5 ? 0.005 : 0.05);
        assertEquals(0, outerDeviation(rows, 0.5), 1e-7);
        assertEquals(100, outerDeviation(rows, 1), 1e-7);
        assertEquals(-100, outerDeviation(rows, 0), 1e-7);
    }

    @ParameterizedTest
    @CsvSource({
        // mph, delay s, distance ft: distance is speed × delay, derived; delays of this size are published: 0.5 s
        // (P. Bennur, MS thesis, Oklahoma State Univ., 2009: seen), 4.2 and 14.4 s (Sharda, Fulton and others, Comput.
        // Electron. Agric. 2011: seen in an abstract).
        "6,  0.5,  4.40",
        "6,  4.2,  36.96",
        "10, 14.4, 211.2"
    })
    void a_lag_moves_the_start_by_speed_times_delay(double mph, double delayS, double feet) {
        double speed = mph * METRES_PER_SECOND_PER_MPH;
        int steps = 400;
        double stepS = 0.1;
        PoseColumns north = SteadyMotion.north(speed, steps, stepS);
        double[][] flow = new double[1][steps];
        Arrays.fill(flow[0], 200, steps, 0.05);
        List<Band> bands = SteadyMotion.bandsOfWidth(0.762);
        double shown = startOfDelivery(north, SteadyMotion.rig(bands, 0.004, 0), flow);
        double left = startOfDelivery(north, SteadyMotion.rig(bands, 0.004, delayS), flow);
        assertEquals(feet, (shown - left) / METRES_PER_FOOT, 0.005);
    }

    private static double startOfDelivery(PoseColumns motion, Rig rig, double[][] flow) {
        Strips strips = new Strips(SteadyMotion.track(motion).poses(), rig.bands());
        Delivery delivery = DeliveryBuilder.build(SteadyMotion.log(motion, flow), rig, strips);
        int first = delivery.deliveringSteps(0).nextSetBit(0);
        return strips.poses().dropNorthM(first);
    }

    private static double passDeviation(int rows, double outerFlow) {
        Rates.PassTotals pass = knives(rows, outerFlow).passes().get(0);
        return 100 * (pass.volumeL()[0] / pass.targetVolumeL()[0] - 1);
    }

    private static double outerDeviation(int rows, double outerFlow) {
        return knives(rows, outerFlow).rows().get(0).products().get(0).deviationPct();
    }

    /** A straight pass of n + 1 knives over n rows, the outer two with half a band and this share of a knife's flow. */
    private static Rates knives(int rows, double outerFlow) {
        double spacing = 30 * METRES_PER_INCH;
        double[] widths = new double[rows + 1];
        Arrays.fill(widths, spacing);
        widths[0] = spacing / 2;
        widths[rows] = spacing / 2;
        double speed = 2.5;
        double target = 50 * LITRES_PER_SQUARE_METRE_PER_GPA;
        double[] flows = new double[rows + 1];
        Arrays.fill(flows, RateFormula.flowLPerS(target, speed, spacing));
        flows[0] *= outerFlow;
        flows[rows] *= outerFlow;
        int steps = 256;
        return SteadyMotion.rates(
                SteadyMotion.north(speed, steps, 0.25),
                SteadyMotion.rig(SteadyMotion.bandsOfWidth(widths), target, 0),
                SteadyMotion.steadyFlows(steps, flows));
    }

    /** Narrow bands at these distances outward on a circle, each with the flow for 10 gal/ac at the centre's speed. */
    private static Rates narrowBandsOnCircle(double radiusM, double speedMps, double... outwardM) {
        double[] right = Arrays.stream(outwardM).map(y -> -y).toArray();
        double rate = 10 * LITRES_PER_SQUARE_METRE_PER_GPA;
        double[] flows = new double[right.length];
        Arrays.fill(flows, RateFormula.flowLPerS(rate, speedMps, NARROW_M));
        int steps = 100;
        PoseColumns circle = SteadyMotion.circle(radiusM, STEP_RAD, steps, STEP_RAD * radiusM / speedMps);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsAt(NARROW_M, right), rate, 0);
        return SteadyMotion.rates(circle, rig, SteadyMotion.steadyFlows(steps, flows));
    }

    private static double gallonsPerAcre(Rates rates, int row) {
        RowTotals totals = rates.rows().get(row);
        return totals.products().get(0).volumeL() / totals.appliedAreaM2() / LITRES_PER_SQUARE_METRE_PER_GPA;
    }

    private static String print(Rates rates, int row) {
        return String.format(Locale.ROOT, "%.2f", gallonsPerAcre(rates, row));
    }
}
