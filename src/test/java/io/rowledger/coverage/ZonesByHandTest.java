package io.rowledger.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.field.Prescription;
import io.rowledger.field.Prescription.Zone;
import io.rowledger.geo.Jts;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.zones.ZoneChanges;
import io.rowledger.zones.Zones;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.ZonesBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * A square of 100 m, driven north in ten passes of a ten-meter bar. Every expected figure is worked out by hand in the
 * test's own comments.
 */
class ZonesByHandTest {
    private static final double EXACT = 1e-3;

    private static Geometry box(double east0, double east1, double north0, double north1) {
        return Jts.FACTORY.toGeometry(new Envelope(east0, east1, north0, north1));
    }

    private static Prescription prescription(Zone... zones) {
        return new Prescription("map.geojson", List.of(zones), false, 0);
    }

    /** Ten passes; the rate goes from 0.02 to 0.03 L/m² at so many meters north. */
    private static Drive tenPasses(double changeM) {
        Drive d = new Drive(10, 1);
        for (int pass = 0; pass < 10; pass++) {
            d.lift(5 + 10 * pass, 0, 0)
                    .lower()
                    .rate(0.02)
                    .ahead(changeM)
                    .rate(0.03)
                    .ahead(100 - changeM);
            d.lift(5 + 10 * pass, 120, 0);
        }
        return d;
    }

    private static Zones zones(Drive d, Prescription prescription, boolean asked) {
        LogColumns c = new LogColumns();
        c.targetLPerM2 = new double[][] {asked ? new double[1] : new double[0]};
        Poses poses = d.poses();
        Track track = d.track(poses);
        Strips strips = d.strips(poses);
        Delivery delivery = d.delivery();
        Coverage coverage = Coverages.of(track, strips, delivery, null, CoverageOptions.defaults(1));
        return new ZonesBuilder(prescription, strips, 1)
                .zones(new LogTable(c, List.of()), track.passes(), delivery, coverage);
    }

    private static Prescription southAndNorth() {
        return prescription(
                new Zone(1, "South", box(0, 100, 0, 50), new double[] {0.02}),
                new Zone(2, "North", box(0, 100, 50, 100), new double[] {0.03}));
    }

    @Test
    void two_zones_of_a_square_and_a_rate_that_changes_four_metres_late() {
        Zones zones = zones(tenPasses(54), southAndNorth(), true);
        ZoneProduct south = zones.zones().get(0).products().get(0);
        ZoneProduct north = zones.zones().get(1).products().get(0);
        // 100 m x 50 m = 5000 m2 each; x 0.02 = 100 L, x 0.03 = 150 L.
        assertEquals(5000, zones.zones().get(0).coveredM2(), EXACT);
        assertEquals(5000, zones.zones().get(1).areaM2(), EXACT);
        assertEquals(100, south.plannedCoveredL(), EXACT);
        assertEquals(150, north.plannedCoveredL(), EXACT);
        assertEquals(150, north.plannedZoneL(), EXACT);
        // The log asked 0.02 everywhere.
        assertEquals(100, north.loggedTargetL(), EXACT);
        // North: 4 m x 100 m x 0.02 + 46 m x 100 m x 0.03 = 8 + 138 L, over 5000 m2 = 0.0292.
        assertEquals(100, south.receivedL(), EXACT);
        assertEquals(146, north.receivedL(), EXACT);
        assertEquals(0.0292, north.meanRateLPerM2(), 1e-6);
        // 46 m of 50 m are on plan; 0.02 is a third under 0.03.
        assertEquals(100, south.within5Pct(), EXACT);
        assertEquals(92, north.within5Pct(), EXACT);
        assertEquals(92, north.within20Pct(), EXACT);
        assertEquals(0, zones.outsideCoveredM2(), EXACT);
        assertEquals(0, zones.outsideReceivedL()[0], EXACT);
    }

    @Test
    void four_metres_late_at_two_metres_a_second_are_two_seconds() {
        ZoneChanges changes =
                zones(tenPasses(54), southAndNorth(), true).changes().get(0);
        ZoneChanges.Timing all = changes.all();
        assertEquals(10, all.crossings());
        assertEquals(10, all.evaluated());
        assertEquals(4, all.lateM(), 0.01);
        assertEquals(4, all.minLateM(), 0.01);
        assertEquals(4, all.maxLateM(), 0.01);
        assertEquals(2, all.lateS(), 0.01);
        assertEquals(4, all.settledM(), 0.01);
        assertEquals(1, changes.pairs().size());
        assertEquals(1, changes.pairs().get(0).from());
        assertEquals(2, changes.pairs().get(0).to());
        assertNull(changes.why());
    }

    @Test
    void a_rate_that_changes_before_the_line_is_early() {
        ZoneChanges changes =
                zones(tenPasses(47), southAndNorth(), true).changes().get(0);
        assertEquals(-3, changes.all().lateM(), 0.01);
        assertEquals(-1.5, changes.all().lateS(), 0.01);
    }

    @Test
    void between_zones_that_were_drawn_apart_the_middle_of_the_gap_is_the_line() {
        Prescription apart = prescription(
                new Zone(1, "South", box(0, 100, 0, 49.6), new double[] {0.02}),
                new Zone(2, "North", box(0, 100, 50.4, 100), new double[] {0.03}));
        ZoneChanges changes = zones(tenPasses(54), apart, true).changes().get(0);
        assertEquals(10, changes.all().evaluated());
        assertEquals(4, changes.all().lateM(), 0.01);
    }

    @Test
    void too_few_crossings_say_so() {
        Drive d = new Drive(10, 1)
                .lift(5, 0, 0)
                .lower()
                .rate(0.02)
                .ahead(54)
                .rate(0.03)
                .ahead(46);
        ZoneChanges changes = zones(d, southAndNorth(), true).changes().get(0);
        assertFalse(changes.all().known());
        assertEquals(1, changes.all().evaluated());
        assertTrue(Double.isNaN(changes.all().lateM()));
        assertEquals(Message.of("notes.zone_changes.too_few", 1), changes.why());
    }

    @Test
    void zones_of_nearly_one_rate_say_that_no_change_can_be_seen() {
        Prescription alike = prescription(
                new Zone(1, "South", box(0, 100, 0, 50), new double[] {0.020}),
                new Zone(2, "North", box(0, 100, 50, 100), new double[] {0.021}));
        ZoneChanges changes = zones(tenPasses(54), alike, true).changes().get(0);
        assertEquals(0, changes.all().crossings());
        assertEquals(Message.of("notes.zone_changes.rates_alike", Message.percent(10)), changes.why());
    }

    @Test
    void passes_that_stay_in_their_zone_cross_nothing() {
        Prescription along = prescription(
                new Zone(1, "West", box(0, 50, 0, 100), new double[] {0.02}),
                new Zone(2, "East", box(50, 100, 0, 100), new double[] {0.03}));
        ZoneChanges changes = zones(tenPasses(54), along, true).changes().get(0);
        assertEquals(0, changes.all().crossings());
        assertEquals(Message.of("notes.zone_changes.no_crossing", Message.percent(10)), changes.why());
    }

    @Test
    void a_line_along_the_rows_shares_a_row_out_by_area() {
        // The line runs down the middle of a row, at 50.3 m: no cell's edge either.
        Prescription along = prescription(
                new Zone(1, "West", box(0, 50.3, 0, 100), new double[] {0.02}),
                new Zone(2, "East", box(50.3, 90, 0, 100), new double[] {0.02}));
        Drive d = new Drive(10, 1);
        for (int pass = 0; pass < 10; pass++) {
            d.lift(5 + 10 * pass, 0, 0).lower().ahead(100).lift(5 + 10 * pass, 120, 0);
        }
        Zones zones = zones(d, along, false);
        assertEquals(5030, zones.zones().get(0).coveredM2(), EXACT);
        assertEquals(100.6, zones.zones().get(0).products().get(0).receivedL(), EXACT);
        assertEquals(3970, zones.zones().get(1).coveredM2(), EXACT);
        assertTrue(Double.isNaN(zones.zones().get(1).products().get(0).loggedTargetL()), "the log asked nothing");
        // The last ten meters lie in no zone: 1000 m2 x 0.02.
        assertEquals(1000, zones.outsideCoveredM2(), 0.01);
        assertEquals(20, zones.outsideReceivedL()[0], EXACT);
    }

    @Test
    void a_zone_of_nothing_plans_nothing_and_judges_no_share() {
        Prescription off = prescription(new Zone(1, "Off", box(0, 100, 0, 50), new double[] {0}));
        ZoneProduct none =
                zones(tenPasses(54), off, true).zones().get(0).products().get(0);
        assertEquals(0, none.plannedCoveredL());
        assertEquals(100, none.receivedL(), EXACT);
        assertTrue(Double.isNaN(none.within10Pct()));
    }

    @Test
    void a_zone_that_was_never_driven_keeps_its_area_and_has_no_rate() {
        Prescription far = prescription(
                new Zone(1, "Here", box(0, 100, 0, 100), new double[] {0.02}),
                new Zone(2, "There", box(300, 320, 0, 100), new double[] {0.02}));
        Zones.ZoneSums there = zones(tenPasses(54), far, true).zones().get(1);
        assertEquals(2000, there.areaM2(), EXACT);
        assertEquals(0, there.coveredM2());
        assertEquals(40, there.products().get(0).plannedZoneL(), EXACT);
        assertTrue(Double.isNaN(there.products().get(0).meanRateLPerM2()));
    }
}
