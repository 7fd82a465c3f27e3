package io.rowledger.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Small fields whose areas follow from rectangles, triangles and circles by hand. */
class CoverageByHandTest {
    private static final CoverageOptions OPTIONS = CoverageOptions.defaults(1);
    /** Vertices lie on a grid of 0.1 mm: over 200 m of edges this much area can move. */
    private static final double GRID_M2 = 0.02;

    static Boundary box(double west, double south, double east, double north) {
        return new Boundary("box", "", Jts.FACTORY.toGeometry(new Envelope(west, east, south, north)), false);
    }

    private static Drive bar() {
        return new Drive(6, 1.0);
    }

    @Test
    void one_pass_covers_its_rectangle() {
        Coverage c = bar().lift(0, 0, 0).lower().ahead(100).coverage();
        assertEquals(600, c.coveredAreaM2(), 1e-9);
        assertEquals(0, c.overlapAreaM2(), 1e-9);
        assertEquals(0, c.skipAreaM2(), 1e-9);
        assertTrue(c.overlaps().isEmpty() && c.skips().isEmpty());
        ReceivedStatistics s = c.received().get(0);
        assertEquals(600 * 0.02, s.logVolumeL(), 1e-9);
        assertEquals(12, s.gridVolumeL(), 12e-6);
        assertEquals(0.02, s.meanRateLPerM2(), 1e-9);
        assertEquals(0, s.cvPct(), 0.01);
        assertEquals(100, s.within5Pct(), 1e-9);
        assertEquals(600, s.histogramM2()[20], 1e-3);
    }

    @Test
    void passes_six_metres_wide_and_five_apart_overlap_by_one_metre() {
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(100)
                .lift(5, 100, Math.PI)
                .lower()
                .ahead(100)
                .coverage();
        assertEquals(1100, c.coveredAreaM2(), 1e-6);
        assertEquals(100, c.overlapAreaM2(), 1e-6);
        assertEquals(1, c.overlaps().size());
        CoverageDefect place = c.overlaps().get(0);
        assertEquals(Cause.PASSES_OVERLAP, place.cause());
        assertEquals(List.of(1, 2), place.passes());
        // Row 6 of the northbound pass and row 6 of the southbound one share the meter.
        assertEquals(List.of(6), place.rows());
        assertEquals(2.5, place.eastM(), 0.5);
        assertEquals(100, c.shutOffs().onOverCoveredM2(), 1e-6);
        assertEquals(100 * 0.02, c.shutOffs().overlapL(), 1e-6);
        // A meter of eleven got twice the target.
        assertEquals(100 * 10.0 / 11, c.received().get(0).within20Pct(), 0.01);
        assertEquals(100, c.received().get(0).histogramM2()[40], 0.01);
    }

    @Test
    void a_skip_between_two_passes_open_at_both_headlands_is_found_without_a_boundary() {
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(100)
                .lift(6.5, 100, Math.PI)
                .lower()
                .ahead(100)
                .coverage();
        assertEquals(1200, c.coveredAreaM2(), 1e-6);
        assertEquals(50, c.skipAreaM2(), GRID_M2);
        assertEquals(1, c.skips().size());
        CoverageDefect place = c.skips().get(0);
        assertEquals(Cause.GAP_BETWEEN_PASSES, place.cause());
        assertEquals(List.of(1, 2), place.passes());
        assertEquals(List.of(6), place.rows());
        assertEquals(3.25, place.eastM(), 0.25);
    }

    @Test
    void with_a_boundary_covered_and_skipped_make_up_the_field() {
        Coverage c = bar().lift(3, 10, 0)
                .lower()
                .ahead(80)
                .lift(9, 90, Math.PI)
                .lower()
                .ahead(85)
                .coverage(box(0, 0, 12, 100), OPTIONS);
        assertEquals(1200, c.boundaryAreaM2(), 1e-9);
        assertEquals(6 * 80 + 6 * 85, c.coveredAreaM2(), 1e-6);
        assertEquals(1200 - 990, c.skipAreaM2(), 1e-6);
        assertEquals(0, c.outsideBoundaryM2(), 1e-9);
    }

    @Test
    void ground_outside_the_boundary_is_counted_apart() {
        Coverage c = bar().lift(3, 0, 0).lower().ahead(100).coverage(box(1, 0, 12, 100), OPTIONS);
        assertEquals(100, c.outsideBoundaryM2(), 1e-6);
        assertEquals(600, c.skipAreaM2(), 1e-6);
    }

    @Test
    void a_row_that_does_not_deliver_leaves_its_band_bare() {
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(30)
                .rows(false, 3)
                .ahead(40)
                .rows(true, 3)
                .ahead(30)
                .coverage();
        assertEquals(560, c.coveredAreaM2(), 1e-6);
        assertEquals(40, c.skipAreaM2(), 1e-6);
        CoverageDefect place = c.skips().get(0);
        assertEquals(Cause.ROW_NOT_DELIVERING, place.cause());
        assertEquals(List.of(1), place.passes());
        assertEquals(List.of(3), place.rows());
        assertEquals(40, c.shutOffs().offOverUncoveredM2(), 1e-6);
        assertEquals(0.8, c.shutOffs().skippedL(), 1e-6);
        assertEquals(0, c.shutOffs().offOverCoveredM2(), 1e-9);
    }

    @Test
    void rows_shut_off_over_ground_already_done_are_right() {
        Coverage c = bar().lift(50, -20, -Math.PI / 2)
                .lower()
                .ahead(100)
                .lift(0, -60, 0)
                .lower()
                .ahead(37)
                .rows(false, 1, 2, 3, 4)
                .ahead(6)
                .coverage();
        // Crosses the headland pass (north of −23, south of −17) with rows 1 to 4 off and 5, 6 on.
        assertEquals(4 * 6, c.shutOffs().offOverCoveredM2(), 1e-6);
        assertEquals(4 * 6 * 0.02, c.shutOffs().savedL(), 1e-6);
        assertEquals(2 * 6, c.shutOffs().onOverCoveredM2(), 1e-6);
        assertEquals(0, c.shutOffs().offOverUncoveredM2(), 1e-6);
        assertEquals(12, c.overlapAreaM2(), 1e-6);
        assertEquals(Cause.HEADLAND_OVERLAP, c.overlaps().get(0).cause());
        // In pass 2 rows 1 to 4 did not owe 6 m² each at 0.02 L/m²; 5 and 6 owed all they swept.
        for (int row = 1; row <= 6; row++) {
            assertEquals(row <= 4 ? 6 * 0.02 : 0, c.shutOffCredit().ofRowL(0, row), 1e-6, "row " + row);
        }
        assertEquals(0, c.shutOffCredit().ofPassL(0, 1), 1e-9);
        assertEquals(4 * 6 * 0.02, c.shutOffCredit().ofPassL(0, 2), 1e-6);
    }

    @Test
    void ground_done_only_later_was_owed_when_it_was_left_off() {
        Coverage c = bar().lift(0, -60, 0)
                .lower()
                .ahead(37)
                .rows(false, 1, 2, 3, 4)
                .ahead(6)
                .rows(true, 1, 2, 3, 4)
                .lift(50, -20, -Math.PI / 2)
                .lower()
                .ahead(100)
                .coverage();
        assertEquals(4 * 6, c.shutOffs().offOverCoveredM2(), 1e-6);
        assertEquals(0, c.shutOffCredit().ofJobL(0), 1e-9);
    }

    @Test
    void a_pass_that_runs_into_the_headland_pass_doubles_it_at_its_end() {
        Coverage c = bar().lift(-50, 100, Math.PI / 2)
                .lower()
                .ahead(100)
                .lift(0, 0, 0)
                .lower()
                .ahead(99)
                .coverage();
        assertEquals(12, c.overlapAreaM2(), 1e-6);
        CoverageDefect place = c.overlaps().get(0);
        assertEquals(Cause.HEADLAND_OVERLAP, place.cause());
        assertEquals(List.of(1, 2), place.passes());
    }

    @Test
    void a_pass_lowered_late_leaves_a_gap_to_the_headland_pass() {
        Coverage c = bar().lift(-3, -3, Math.PI / 2)
                .lower()
                .ahead(12)
                .lift(0, 8, 0)
                .lower()
                .ahead(92)
                .lift(6, 100, Math.PI)
                .lower()
                .ahead(100)
                .coverage(box(-3, -6, 9, 100), OPTIONS);
        assertEquals(48, c.skipAreaM2(), 1e-6);
        CoverageDefect place = c.skips().get(0);
        assertEquals(Cause.LATE_START, place.cause());
        assertEquals(List.of(1, 2, 3), place.passes());
    }

    @Test
    void all_rows_silent_at_the_start_or_end_of_a_pass_are_a_late_start_and_an_early_stop() {
        int[] all = {1, 2, 3, 4, 5, 6};
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .rows(false, all)
                .ahead(7)
                .rows(true, all)
                .ahead(80)
                .rows(false, all)
                .ahead(13)
                .coverage(box(-3, 0, 3, 100), OPTIONS);
        assertEquals(6 * 20, c.skipAreaM2(), 1e-6);
        assertEquals(
                List.of(Cause.EARLY_STOP, Cause.LATE_START),
                c.skips().stream().map(CoverageDefect::cause).toList());
        assertEquals(6 * 13, c.skips().get(0).areaM2(), 1e-6);
        assertEquals(List.of(1, 2, 3, 4, 5, 6), c.skips().get(0).rows());
        assertEquals(6 * 20, c.shutOffs().offOverUncoveredM2(), 1e-6);
        assertEquals(6 * 20 * 0.02, c.shutOffs().skippedL(), 1e-6);
    }

    @Test
    void a_short_silence_of_the_whole_bar_beside_a_silent_row_does_not_name_all_rows() {
        // Row 3 is bare for 41 m, the other five for the last of them: 46 m², of which each of the five has 2 %.
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(30)
                .rows(false, 3)
                .ahead(40)
                .rows(false, 1, 2, 4, 5, 6)
                .ahead(1)
                .rows(true, 1, 2, 3, 4, 5, 6)
                .ahead(30)
                .coverage(box(-3, 0, 3, 101), OPTIONS);
        assertEquals(46, c.skipAreaM2(), 1e-6);
        assertEquals(Cause.ROW_NOT_DELIVERING, c.skips().get(0).cause());
        assertEquals(List.of(3), c.skips().get(0).rows());
    }

    @Test
    void a_pass_lifted_early_leaves_a_gap_to_the_headland_pass() {
        Coverage c = bar().lift(-3, 103, Math.PI / 2)
                .lower()
                .ahead(12)
                .lift(0, 0, 0)
                .lower()
                .ahead(91)
                .lift(6, 100, Math.PI)
                .lower()
                .ahead(100)
                .coverage(box(-3, 0, 9, 106), OPTIONS);
        assertEquals(54, c.skipAreaM2(), 1e-6);
        assertEquals(Cause.EARLY_STOP, c.skips().get(0).cause());
    }

    @Test
    void ground_under_two_bands_of_a_custom_bar_overlaps() {
        // Bands 0 to 1 and 0.8 to 2 m share 0.2 m.
        Drive d = new Drive(List.of(new double[] {0, 1}, new double[] {0.8, 2}));
        Coverage c = d.lift(0, 0, 0).lower().ahead(50).coverage();
        assertEquals(100, c.coveredAreaM2(), 1e-6);
        assertEquals(10, c.overlapAreaM2(), 1e-6);
        assertEquals(2.2 * 50 * 0.02, c.received().get(0).gridVolumeL(), 1e-5);
    }

    @Test
    void the_margin_outside_the_last_pass_is_the_edge_of_the_field_and_the_rest_outside_the_log() {
        Coverage c = bar().lift(3, 0, 0).lower().ahead(100).coverage(box(-2, 0, 6, 100), OPTIONS);
        assertEquals(Cause.EDGE_OF_FIELD, c.skips().get(0).cause());
        Coverage far = bar().lift(3, 0, 0).lower().ahead(100).coverage(box(100, 0, 200, 100), OPTIONS);
        assertEquals(Cause.OUTSIDE_THE_LOG, far.skips().get(0).cause());
        assertEquals(10_000, far.skipAreaM2(), 1e-6);
    }

    @Test
    void a_loop_crosses_its_own_strip_and_the_crossing_counts_once() {
        // North 60 m, a three-quarter left circle of 15 m radius that comes back heading east, and on across the way
        // up.
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(60)
                .arc(15 * 1.5 * Math.PI, -1.5 * Math.PI)
                .ahead(40)
                .coverage();
        double wayM = 100 + 15 * 1.5 * Math.PI;
        // Each edge is a polygon within 5 mm of its circle; chords make the ring a little smaller.
        double sweptM2 = 6 * wayM;
        // The way up and the way across are 6 m wide and meet at a right angle.
        assertEquals(36, c.overlapAreaM2(), 0.5);
        assertEquals(sweptM2 - 36, c.coveredAreaM2(), 1.5);
        assertEquals(1, c.overlaps().size());
        assertEquals(Cause.PASS_CROSSED_ITSELF, c.overlaps().get(0).cause());
        // The loop encloses the ground between the inner circle and the straight ways: 3/4 of a circle of 12 m and a
        // square of 12 m in its open quarter.
        assertEquals(0.75 * Math.PI * 144 + 144, c.skipAreaM2(), 1.0);
    }

    @Test
    void rows_inside_the_pivot_of_a_tight_turn_are_overlap_with_themselves() {
        // North 20 m, then a quarter turn clockwise about a point 1 m right of the centre: rows 5 and 6 (1 to 3 m right
        // of centre) go backward over a quarter disc of 2 m radius.
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(20)
                .arc(1 * Math.PI / 2, Math.PI / 2)
                .ahead(20)
                .coverage();
        // Forward over a quarter disc of 4 m radius. The way east then covers the square of 2 m below the pivot again,
        // which holds the quarter disc that rows 5 and 6 went back over.
        double forward = Math.PI / 4 * 16;
        assertEquals(240 - 4 + forward, c.coveredAreaM2(), 0.02);
        assertEquals(4, c.overlapAreaM2(), 0.001);
        // Going back once and the way east: a quarter disc of 2 m radius and the square, visit by visit.
        assertEquals(Math.PI / 4 * 4 + 4, c.shutOffs().onOverCoveredM2(), 0.02);
        assertTrue(c.overlaps().stream().anyMatch(p -> p.cause() == Cause.INSIDE_THE_PIVOT));
    }

    @Test
    void a_hole_in_the_boundary_is_no_field() {
        Geometry field = Jts.FACTORY.toGeometry(new Envelope(0, 12, 0, 100));
        Geometry pond = Jts.FACTORY.toGeometry(new Envelope(2, 4, 40, 50));
        Boundary boundary = new Boundary("pond", "", field.difference(pond), false);
        Coverage c = bar().lift(3, 0, 0)
                .lower()
                .ahead(40)
                .rows(false, 3, 4)
                .ahead(10)
                .rows(true, 3, 4)
                .ahead(50)
                .coverage(boundary, OPTIONS);
        assertEquals(1180, c.boundaryAreaM2(), 1e-9);
        // Rows 3 and 4 (2 to 4 m east) were off over the pond: neither covered nor skipped.
        assertEquals(580, c.coveredAreaM2(), 1e-6);
        assertEquals(600, c.skipAreaM2(), 1e-6);
        assertEquals(0, c.shutOffs().offOverUncoveredM2(), 1e-6);
    }

    @Test
    void thin_seams_are_in_the_totals_and_not_among_the_places() {
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(100)
                .lift(6.04, 100, Math.PI)
                .lower()
                .ahead(100)
                .lift(12, 0, 0)
                .lower()
                .ahead(100)
                .coverage(box(-3, 0, 15, 100), OPTIONS);
        assertEquals(4, c.skipAreaM2(), 1e-6);
        assertEquals(4, c.overlapAreaM2(), 1e-6);
        assertTrue(c.skips().isEmpty() && c.overlaps().isEmpty());
        assertEquals(4, c.slivers().skipM2(), 1e-6);
        assertEquals(1, c.slivers().skipCount());
        assertEquals(4, c.slivers().overlapM2(), 1e-6);
    }

    @Test
    void a_seam_does_not_tie_two_skips_into_one() {
        // Two bare ends, 6 m × 5 m each, joined by a seam of 5 cm along the whole pass.
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(100)
                .lift(6.05, 95, Math.PI)
                .lower()
                .ahead(90)
                .coverage(box(-3, 0, 9.05, 100), OPTIONS);
        assertEquals(2 * 5 * 6.05 + 90 * 0.05, c.skipAreaM2(), 1e-6);
        assertEquals(2, c.skips().size());
        assertEquals(5 * 6.05, c.skips().get(0).areaM2(), 0.05);
        assertEquals(90 * 0.05, c.slivers().skipM2(), 0.05);
    }

    @Test
    void places_are_numbered_from_the_largest() {
        Coverage c = bar().lift(0, 0, 0)
                .lower()
                .ahead(20)
                .rows(false, 2)
                .ahead(10)
                .rows(true, 2)
                .ahead(20)
                .rows(false, 5)
                .ahead(30)
                .rows(true, 5)
                .ahead(20)
                .coverage();
        assertEquals(
                List.of(1, 2), c.skips().stream().map(CoverageDefect::number).toList());
        assertEquals(List.of(5), c.skips().get(0).rows());
        assertEquals(List.of(2), c.skips().get(1).rows());
        for (CoverageDefect p : c.skips()) {
            assertTrue(p.polygon().contains(Jts.FACTORY.createPoint(new Coordinate(p.eastM(), p.northM()))));
        }
    }

    @Test
    void a_job_without_any_working_step_has_an_empty_coverage() {
        Coverage c = bar().lift(0, 0, 0).lift(1, 1, 0).coverage();
        assertEquals(0, c.coveredAreaM2());
        assertEquals(0, c.skipAreaM2());
        assertTrue(c.strips().isEmpty());
        assertEquals(0, c.received().get(0).gridVolumeL());
    }
}
