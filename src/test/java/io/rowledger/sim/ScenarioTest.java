package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole runs against conservation, arithmetic and GeographicLib. */
@Tag("slow")
class ScenarioTest {
    static Stream<Arguments> ready() {
        return Scenarios.all().entrySet().stream()
                .map(entry -> Arguments.of(entry.getKey(), entry.getValue().apply(1)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("ready")
    void areas_and_volumes_add_up(String name, Scenario scenario) {
        SimResult result = scenario.run();
        Truth truth = result.truth();
        Truth.Ground ground = truth.ground();
        assertEquals(result.plan().path().spans().size(), truth.passes().size());

        double applied =
                truth.rows().stream().mapToDouble(Truth.Row::appliedAreaM2).sum();
        double swept = truth.rows().stream().mapToDouble(Truth.Row::sweptAreaM2).sum();
        double passes =
                truth.passes().stream().mapToDouble(Truth.Pass::sweptAreaM2).sum();
        // Inclusion and exclusion: what the rows put down by the shoelace formula, the raster finds once or twice.
        // Little ground is visited three times.
        assertEquals(applied, ground.coveredM2() + ground.overlapM2(), 0.0008 * applied);
        assertEquals(swept, passes, 1e-6);
        assertEquals(swept, truth.sweptAreaM2(), 1e-6);
        assertEquals(ground.boundaryM2(), ground.coveredInsideM2() + ground.skipM2(), 1e-4 * ground.boundaryM2());
        assertTrue(ground.skipM2() > 0 && ground.skipM2() < 0.02 * ground.boundaryM2());

        double volume = truth.rows().stream().mapToDouble(r -> r.volumeL()[0]).sum();
        assertEquals(volume, truth.volumeL()[0], 1e-9 * volume);
        assertEquals(
                volume, truth.passes().stream().mapToDouble(p -> p.volumeL()[0]).sum(), 1e-6);
        // Meters without a fault agree with what left the outlets; noise averages out over thousands of readings.
        assertEquals(volume, truth.meteredL()[0], 1e-3 * volume);
        // A controller that follows its target applies it on the ground it treats.
        assertEquals(scenario.products().get(0).targetLPerM2() * applied, volume, 0.01 * volume);
    }

    @Test
    void at_a_sloped_end_rows_shut_off_outside_of_the_field_one_by_one() {
        double[][] corners = {{0, 0}, {150, 0}, {180.48, 60.96}, {30.48, 60.96}};
        Scenario whole = new Scenario(3, SimRig.carried(8), PassPlan.field(corners, 0));
        Scenario byRow = new Scenario(3, SimRig.carried(8), PassPlan.field(corners, 0))
                .metering(MeteringModel.perRow().withShutOff(true))
                .withFineShutOff()
                .withShutOffOutside();
        Truth.Ground all = whole.metering(MeteringModel.perRow().withShutOff(false))
                .run()
                .truth()
                .ground();
        Truth.Ground in = byRow.run().truth().ground();
        // Ten passes of 6.096 m, at whose ends the slope makes 3.048 m: each end puts 6.096 · 3.048 / 2 m2 outside.
        assertEquals(20 * 6.096 * 3.048 / 2, all.coveredM2() - all.coveredInsideM2(), 60);
        // A row stays on while any of its 0.762 m is inside: 0.762 · 0.381 / 2 m2 a row and end, and what valves take.
        assertEquals(20 * 8 * 0.762 * 0.381 / 2, in.coveredM2() - in.coveredInsideM2(), 40);
        assertEquals(0, in.skipM2() / in.boundaryM2(), 0.02);
    }

    @Test
    void a_row_with_no_lag_and_no_shut_off_gives_exactly_its_target() {
        Truth truth = Scenarios.contourDrawn(7)
                .metering(MeteringModel.ideal())
                .withoutGround()
                .run()
                .truth();
        for (Truth.Row row : truth.rows()) {
            // Conservation: target x own speed x time is target x area.
            assertEquals(row.targetL()[0], row.volumeL()[0], 1e-6 * row.targetL()[0]);
            assertEquals(row.volumeL()[0], row.meteredL()[0], 1e-12 * row.volumeL()[0]);
            assertEquals(row.sweptAreaM2(), row.appliedAreaM2(), 1e-9);
            assertEquals(0, row.turnRemaining().meanAbs(), 1e-9);
        }
    }

    @Test
    void uniform_flow_in_a_turn_leaves_the_bars_mean_rate_alone() {
        Scenario scenario = new Scenario(1, SimRig.carried(12), CurvePlan.circle(30, 2, 2))
                .metering(MeteringModel.ideal().withTurnCompensation(false))
                .tractor(TractorModel.guided().withWander(0).withSpeedSwing(0))
                .withoutGround();
        Truth truth = scenario.run().truth();
        double volume = truth.volumeL()[0];
        assertEquals(scenario.products().get(0).targetLPerM2(), volume / truth.sweptAreaM2(), 1e-9);
        // Clockwise: row 1 on the left runs outside. For a point y right of the bar's middle, v / v_row - 1 = y / (R -
        // y).
        double y1 = -11 * SimRig.THIRTY_INCH_M / 2;
        Truth.Row outer = truth.rows().get(0);
        assertEquals(-y1 / (30 - y1), outer.turn().meanAbs(), 2e-3);
        assertEquals(outer.turn().meanAbs(), outer.turnRemaining().meanAbs(), 1e-9);
        assertTrue(outer.turn().maxUnder() < 0);
        assertEquals(0, outer.turn().maxOver(), 5e-3);
    }

    @Test
    void a_straight_pass_sweeps_its_length_times_its_width() {
        SimRig rig = SimRig.drawn(12);
        Truth truth = new Scenario(1, rig, PassPlan.rectangle(300, 1, 0, rig.widthM()))
                .tractor(TractorModel.guided().withWander(0).withLift(0, 0, 0))
                .run()
                .truth();
        // Arithmetic; a step is 5 cm at most, at either end.
        assertEquals(300, truth.passes().get(0).lengthM(), 0.1);
        for (Truth.Row row : truth.rows()) {
            assertEquals(300 * SimRig.THIRTY_INCH_M, row.sweptAreaM2(), 0.1);
        }
    }

    @Test
    void the_log_holds_the_distance_the_volume_and_the_place() {
        SimResult result = Scenarios.straightDrawn(3)
                .gnss(GnssModel.perfect(10))
                .format(LogFormat.metricUnits())
                .withoutGround()
                .run();
        List<double[]> rows = table(result.logText());
        List<String> header =
                Arrays.asList(result.logText().lines().findFirst().orElseThrow().split(","));
        int time = header.indexOf("epoch_s");
        int lat = header.indexOf("lat");
        int lon = header.indexOf("lon");
        int speed = header.indexOf("speed[km/h]");
        int down = header.indexOf("down");
        int flow = header.indexOf("flow_01[L/min]");
        double litres = 0;
        double worst = 0;
        for (int i = 1; i < rows.size(); i++) {
            double[] a = rows.get(i - 1);
            double[] b = rows.get(i);
            assertEquals(0.1, b[time] - a[time], 1e-6);
            double distance = Geodesic.WGS84.Inverse(a[lat], a[lon], b[lat], b[lon]).s12;
            // Trapezoid of the logged speeds; they are rounded to 0.01 km/h, positions to 0.1 mm.
            worst = Math.max(worst, Math.abs(distance - (a[speed] + b[speed]) / 7.2 * 0.1));
            for (int r = 0; r < 12; r++) {
                litres += b[down] * b[flow + r] / 60 * 0.1;
            }
        }
        assertTrue(worst < 1.5e-3, "distance differs from logged speed by " + worst + " m in 0.1 s");
        assertEquals(result.truth().meteredL()[0], litres, 2e-3 * litres);
    }

    @Test
    void the_boundary_has_its_area_on_the_ellipsoid_and_runs_counter_clockwise() throws IOException {
        SimResult result = Scenarios.headlandLapsDrawn(1).withoutGround().run();
        PolygonArea polygon = new PolygonArea(Geodesic.WGS84, false);
        JsonNode ring = new ObjectMapper().readTree(result.boundaryText()).at("/features/0/geometry/coordinates/0");
        assertEquals(ring.get(0), ring.get(ring.size() - 1));
        for (int i = 1; i < ring.size(); i++) {
            polygon.AddPoint(ring.get(i).get(1).asDouble(), ring.get(i).get(0).asDouble());
        }
        // GeographicLib: counter-clockwise areas are positive. Shoelace of the corners, from Scenarios: 52 650 m2.
        assertEquals(52_650, polygon.Compute(false, true).area, 1.0);
    }

    @Test
    void the_same_seed_gives_the_same_bytes_and_another_does_not() {
        String first = Scenarios.contourCarried(9).withoutGround().run().logText();
        assertEquals(first, Scenarios.contourCarried(9).withoutGround().run().logText());
        assertNotEquals(
                first, Scenarios.contourCarried(10).withoutGround().run().logText());
    }

    @Test
    void shuffled_columns_hold_the_same_numbers() {
        String plain = Scenarios.contourDrawn(2).withoutGround().run().logText();
        String shuffled = Scenarios.contourDrawn(2)
                .format(LogFormat.customaryUnits().shuffled(5))
                .withoutGround()
                .run()
                .logText();
        assertNotEquals(plain.lines().findFirst(), shuffled.lines().findFirst());
        String[] a = plain.lines().skip(500).findFirst().orElseThrow().split(",");
        String[] b = shuffled.lines().skip(500).findFirst().orElseThrow().split(",");
        Arrays.sort(a);
        Arrays.sort(b);
        assertArrayEquals(a, b);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 4, 5, 10, 20})
    void records_come_at_the_beat_of_the_receiver(double rateHz) {
        SimRig rig = SimRig.carried(8);
        SimResult result = new Scenario(1, rig, PassPlan.rectangle(120, 2, 0, rig.widthM()))
                .gnss(GnssModel.rtk(rateHz))
                .format(LogFormat.metricUnits())
                .withoutGround()
                .run();
        List<double[]> rows = table(result.logText());
        for (int i = 1; i < rows.size(); i++) {
            assertEquals(1 / rateHz, rows.get(i)[0] - rows.get(i - 1)[0], 1e-6);
        }
        assertEquals(result.truth().durationS(), rows.get(rows.size() - 1)[0] - rows.get(0)[0], 1e-6);
    }

    @Test
    void backing_up_happens_lifted_and_costs_no_pass() {
        SimRig rig = SimRig.drawn(12);
        List<SimRecord> records = new ArrayList<>();
        Scenario scenario = new Scenario(
                        1, rig, PassPlan.rectangle(150, 4, 0, rig.widthM()).backingUpAfter(0, 2))
                .gnss(GnssModel.perfect(10));
        Truth truth = new Simulation(scenario.withoutGround()).run(records::add);
        assertEquals(4, truth.passes().size());
        int spells = 0;
        boolean before = false;
        for (SimRecord record : records) {
            boolean back = record.backward;
            spells += back && !before ? 1 : 0;
            before = back;
            assertTrue(!back || !record.down);
        }
        assertEquals(2, spells);
    }

    @Test
    void several_products_and_custom_bands_reach_the_files() {
        double in = 0.0254;
        SimRig rig = SimRig.carried(3)
                .withBands(new double[] {-60 * in, -15 * in, 15 * in}, new double[] {-15 * in, 15 * in, 60 * in});
        SimResult result = new Scenario(1, rig, PassPlan.rectangle(100, 2, 0, rig.widthM()))
                .products(SimProduct.uan32(30), SimProduct.ats(5).withFlowLag(0.4))
                .targets(TargetMap.steps(0.3, 40, 1, 0.5))
                .withoutGround()
                .run();
        String header = result.logText().lines().findFirst().orElseThrow();
        assertTrue(header.contains("uan.target[gal/ac],uan.flow_01[gal/min],uan.flow_02[gal/min]"), header);
        assertTrue(header.contains("ats.flow_03[gal/min]"), header);
        assertTrue(result.rigText().contains("- {at: -37.5 in, band: [-60 in, -15 in]}"), result.rigText());
        assertTrue(result.rigText().contains("flow_lag: 0.4 s"), result.rigText());
        // Half the way at half the target, both products in proportion of 30 to 5.
        Truth truth = result.truth();
        double full = truth.sweptAreaM2() * SimProduct.uan32(30).targetLPerM2();
        assertTrue(truth.volumeL()[0] > 0.65 * full && truth.volumeL()[0] < 0.85 * full);
        assertEquals(6, truth.volumeL()[0] / truth.volumeL()[1], 1e-6);
    }

    @Test
    void every_optional_column_can_be_logged_and_meters_scatter_as_told() {
        SimRig rig = SimRig.drawn(12);
        SimResult result = new Scenario(1, rig, PassPlan.rectangle(400, 2, 0, rig.widthM()))
                .metering(MeteringModel.ideal().withNoise(2))
                .gnss(GnssModel.perfect(10))
                .format(LogFormat.metricUnits().with(LogFormat.Column.values()))
                .withoutGround()
                .run();
        List<String> header =
                Arrays.asList(result.logText().lines().findFirst().orElseThrow().split(","));
        for (String name : List.of("yaw_rate[deg/s]", "on_12", "pressure[kPa]", "pressure_12[kPa]", "hdop", "fix")) {
            assertTrue(header.contains(name), name);
        }
        int flow = header.indexOf("flow_01[L/min]");
        int total = header.indexOf("flow_total[L/min]");
        double squares = 0;
        int n = 0;
        for (double[] row : table(result.logText())) {
            if (row[header.indexOf("down")] == 1 && row[flow] > 0) {
                // On a straight pass every row's share is a twelfth of the true total; the total meter is exact.
                for (int r = 1; r < 11; r++) {
                    double error = row[flow + r] / (row[total] / 12) - 1;
                    squares += error * error;
                    n++;
                }
            }
        }
        assertEquals(0.02, Math.sqrt(squares / n), 0.001);
    }

    private static List<double[]> table(String text) {
        List<double[]> rows = new ArrayList<>();
        text.lines()
                .skip(1)
                .forEach(line -> rows.add(Arrays.stream(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray()));
        return rows;
    }
}
