package io.rowledger.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.diagnose.detect.SupplyLimitedDetector;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Track;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The package's worked example. */
class WhatIfSpeedByHandTest {
    private static final int ROWS = 10;
    private static final int SECONDS = 400;

    @Test
    void at_two_meters_a_second_the_ground_would_have_got_five_liters_more_in_a_hundred_seconds_more() {
        // 1,000 m of a 10 m bar at 2.5 m/s: 10,000 m², 100 L at 0.01 L/m², of which 95 L were applied in 400 s; 500 s
        // at 2 m/s.
        PoseColumns north = SteadyMotion.north(2.5, SECONDS, 1);
        double[] widths = new double[ROWS];
        Arrays.fill(widths, 1);
        List<Band> bands = SteadyMotion.bandsOfWidth(widths);
        Rig rig = SteadyMotion.rig(bands, 0.01, 0);
        double[] flows = new double[ROWS];
        Arrays.fill(flows, 0.95 * 0.01 * 2.5);
        Track track = SteadyMotion.track(north);
        Strips strips = new Strips(track.poses(), bands);
        Delivery delivery =
                DeliveryBuilder.build(SteadyMotion.log(north, SteadyMotion.steadyFlows(SECONDS, flows)), rig, strips);
        Message none = Message.of("findings.none");
        Finding limited = new Finding(
                FindingKind.SUPPLY_LIMITED, List.of(), 0, SECONDS, 0.97, 0, 0, 0, 42, -93, none, none, none, List.of());
        double[] empty = new double[0];
        Diagnosis diagnosis = new Diagnosis(
                List.of(limited),
                List.of(new OnsetWindow(0, 0, 0, empty, empty, empty, empty, empty)),
                List.of(List.of(new Figure(SupplyLimitedDetector.HOLDING_SPEED, 2, "m/s"))),
                List.of(),
                List.of(),
                List.of());
        WhatIf.Slower slower = WhatIf.of(
                        strips,
                        delivery,
                        Coverages.of(track, strips, delivery, null, CoverageOptions.defaults(1)),
                        diagnosis)
                .speeds()
                .get(0);
        assertEquals(2.5, slower.drivenMps(), 1e-9);
        assertEquals(10_000, slower.areaM2(), 1e-6);
        assertEquals(5, slower.gainedL(), 1e-9);
        assertEquals(100, slower.extraS(), 1e-9);
    }
}
