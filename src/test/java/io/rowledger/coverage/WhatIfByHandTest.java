package io.rowledger.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.Grouping.Kind;
import io.rowledger.coverage.sections.OffReasons;
import io.rowledger.coverage.sections.PriorCoverage;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.field.Boundary;
import io.rowledger.rate.TurnShift;
import io.rowledger.rate.TurnShifts;
import io.rowledger.rig.Band;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What would have been, from rectangles, triangles and circles by hand: six rows of 1 m at 0.02 L/m². */
class WhatIfByHandTest {
    private static final double RATE = 0.02;
    /** Vertices lie on a grid of 0.1 mm. */
    private static final double GRID_M2 = 0.02;

    private static Drive bar() {
        return new Drive(6, 1.0);
    }

    private static ShutOffCase of(Drive drive, Kind kind, @Nullable Boundary boundary) {
        var poses = drive.poses();
        Coverage c = Coverages.of(
                drive.track(poses),
                drive.strips(poses),
                drive.delivery(),
                boundary,
                Grouping.candidates(drive.bands()),
                OffReasons.unknown(),
                CoverageOptions.defaults(2));
        return c.shutOffCases().stream()
                .filter(one -> one.grouping().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    /** North along the axis, then across it at an angle (clockwise from north) in steps of 10 cm. */
    private static Drive across(double headingRad) {
        Drive drive = bar().lift(0, 0, 0).lower().ahead(100);
        double e = -20 * Math.sin(headingRad);
        double n = 50 - 20 * Math.cos(headingRad);
        drive.lift(e, n, headingRad).lower();
        for (int i = 1; i <= 400; i++) {
            drive.pose(e + 0.1 * i * Math.sin(headingRad), n + 0.1 * i * Math.cos(headingRad), headingRad);
        }
        return drive;
    }

    @Test
    void a_square_crossing_is_saved_whole_however_rows_are_grouped() {
        for (Kind kind : List.of(Kind.ROWS, Kind.HALVES)) {
            ShutOffCase c = of(across(Math.PI / 2), kind, null);
            assertEquals(36, c.overlapLessM2(), GRID_M2);
            assertEquals(0, c.overlapM2(), GRID_M2);
            assertEquals(36 * RATE, c.savedL()[0], 1e-3);
            assertEquals(0, c.uncoveredM2(), GRID_M2);
            assertEquals(36, c.offM2(), GRID_M2);
        }
        ShutOffCase none = of(across(Math.PI / 2), Kind.NONE, null);
        assertEquals(36, none.overlapM2(), GRID_M2);
        assertEquals(0, none.savedL()[0], 1e-9);
    }

    /**
     * At 45 degrees the 6 m strip lies 6/sin 45° = 8.485 m along the way of every row: 50.91 m² done twice. A group of g rows is
     * wholly over it for 8.485 − g m, for its ends lie g·cot 45° apart, and for 2 × 5 cm more because 5 cm of a row don't count.
     * What is left done twice are two triangles a group.
     */
    @Test
    void a_slanting_crossing_leaves_triangles_as_wide_as_the_group() {
        double along = 6 / Math.sin(Math.PI / 4);
        for (int g : new int[] {1, 3}) {
            ShutOffCase c = of(across(Math.PI / 4), g == 1 ? Kind.ROWS : Kind.HALVES, null);
            double offM2 = 6 * (along - g + 2 * PriorCoverage.SLIVER_M);
            // Both ends of each row may lie half a step of 10 cm off.
            assertEquals(offM2, c.offM2(), 6 * 0.1);
            assertEquals(offM2 * RATE, c.savedL()[0], 6 * 0.1 * RATE);
            assertEquals(6 * along - c.offM2() + c.uncoveredM2(), c.overlapM2(), GRID_M2);
            assertTrue(
                    c.uncoveredM2() < 6 * 2 * PriorCoverage.SLIVER_M * PriorCoverage.SLIVER_M + GRID_M2,
                    "uncovered " + c.uncoveredM2());
        }
        assertEquals(6 * along, of(across(Math.PI / 4), Kind.NONE, null).overlapM2(), GRID_M2);
    }

    /**
     * A field of 30 × 60 m: a headland lap of 6 m along its north edge, then five passes of 6 m beside each other, all driven to
     * the north edge. Each runs 6 m of its way over the headland: 5 × 6 m × 6 m = 180 m² done twice. At 0.02 L/m² of the first
     * liquid that is 3.6 L, at a quarter of it of the second 0.9 L. Shutting off by rows or by halves saves it all, for passes
     * and headland meet squarely.
     */
    private static Drive smallField() {
        Drive drive = bar().second(0.25).lift(-15, 57, Math.PI / 2).lower().ahead(30);
        for (int i = 0; i < 5; i++) {
            drive.lift(-12 + 6 * i, 0, 0).lower().ahead(60);
        }
        return drive;
    }

    @Test
    void the_headland_of_a_small_field_with_two_liquids_is_saved_once_for_each() {
        for (Boundary boundary : new Boundary[] {null, CoverageByHandTest.box(-15, 0, 15, 60)}) {
            for (Kind kind : List.of(Kind.ROWS, Kind.HALVES)) {
                ShutOffCase c = of(smallField(), kind, boundary);
                assertEquals(180, c.overlapLessM2(), 5 * GRID_M2);
                assertEquals(2, c.savedL().length);
                assertEquals(3.6, c.savedL()[0], 0.01);
                assertEquals(0.9, c.savedL()[1], 0.0025);
                assertEquals(0, c.outsideLessM2(), 5 * GRID_M2);
            }
        }
    }

    /** One outlet of 3 m that crosses its own strip squarely: 9 m², 0.18 L, by rows; halves and quarters there are none. */
    @Test
    void a_bar_of_one_outlet_has_only_that_one_to_shut_off() {
        Drive drive = new Drive(1, 3.0)
                .lift(0, 0, 0)
                .lower()
                .ahead(40)
                .lift(-20, 20, Math.PI / 2)
                .lower()
                .ahead(40);
        assertEquals(
                List.of(Kind.ROWS, Kind.NONE),
                Grouping.candidates(drive.bands()).stream().map(Grouping::kind).toList());
        ShutOffCase c = of(drive, Kind.ROWS, null);
        assertEquals(9, c.overlapLessM2(), GRID_M2);
        assertEquals(9 * RATE, c.savedL()[0], 1e-3);
        TurnShift turn =
                TurnShifts.of(drive.strips(drive.poses()), drive.delivery()).get(0);
        assertFalse(turn.known(), "one outlet has no other to move liquid to");
    }

    @Test
    void ground_outside_the_boundary_counts_only_where_one_is_given() {
        Drive drive = bar().lift(0, 0, 0).lower().ahead(110);
        ShutOffCase with = of(drive, Kind.ROWS, CoverageByHandTest.box(-50, 0, 50, 100));
        assertEquals(60, with.outsideLessM2(), GRID_M2);
        assertEquals(60 * RATE, with.savedL()[0], 1e-6);
        assertEquals(0, with.overlapLessM2(), GRID_M2);
        assertEquals(0, with.uncoveredM2(), GRID_M2);
        ShutOffCase without = of(drive, Kind.ROWS, null);
        assertEquals(0, without.outsideLessM2(), 0);
        assertEquals(0, without.savedL()[0], 0);
    }

    /** Four meters beside each other: rows 1 and 2 of the second pass run over rows 5 and 6 of the first. */
    private static Drive beside(int... off) {
        return bar().lift(0, 0, 0)
                .lower()
                .ahead(100)
                .lift(4, 0, 0)
                .lower()
                .rows(false, off)
                .ahead(100);
    }

    @Test
    void rows_that_were_rightly_off_come_on_again_where_their_group_can_not_go_off() {
        Drive drive = beside(1, 2);
        ShutOffCase rows = of(drive, Kind.ROWS, null);
        assertEquals(0, rows.savedL()[0], 1e-9);
        assertEquals(0, rows.overlapM2(), GRID_M2);
        for (Kind kind : List.of(Kind.HALVES, Kind.NONE)) {
            ShutOffCase c = of(drive, kind, null);
            assertEquals(-200 * RATE, c.savedL()[0], 1e-6);
            assertEquals(200, c.overlapM2(), GRID_M2);
            assertEquals(-200, c.overlapLessM2(), GRID_M2);
            assertEquals(200, c.onM2(), GRID_M2);
        }
    }

    @Test
    void a_row_off_over_bare_ground_stays_off() {
        Drive drive = beside(1, 2, 5);
        assertEquals(-200 * RATE, of(drive, Kind.NONE, null).savedL()[0], 1e-6);
    }

    @Test
    void a_seam_thinner_than_a_row_saves_nothing() {
        Drive drive = bar().lift(0, 0, 0)
                .lower()
                .ahead(100)
                .lift(5.5, 100, Math.PI)
                .lower()
                .ahead(100);
        ShutOffCase c = of(drive, Kind.ROWS, null);
        assertEquals(50, c.overlapM2(), GRID_M2);
        assertEquals(0, c.savedL()[0], 0);
    }

    @Test
    void a_row_that_goes_backward_inside_the_pivot_keeps_its_liquid() {
        Drive drive = bar().lift(0, 0, 0).lower().arc(2 * Math.PI / 2, Math.PI / 2);
        ShutOffCase c = of(drive, Kind.ROWS, null);
        assertEquals(0, c.savedL()[0], 0);
        assertTrue(c.overlapM2() > 0, "row 6 ran backward on 0.5 m about the pivot");
    }

    @Test
    void groups_are_the_rig_files_where_it_names_any() {
        List<Band> plain = new ArrayList<>();
        List<Band> named = new ArrayList<>();
        for (int r = 1; r <= 10; r++) {
            plain.add(new Band(r, r, r - 0.5, r + 0.5, 1, null));
            named.add(new Band(r, r, r - 0.5, r + 0.5, 1, r <= 4 ? "left" : r <= 9 ? "right" : null));
        }
        List<Grouping> even = Grouping.candidates(plain);
        assertEquals(
                List.of(Kind.ROWS, Kind.QUARTERS, Kind.HALVES, Kind.NONE),
                even.stream().map(Grouping::kind).toList());
        assertEquals(
                List.of(List.of(1, 2), List.of(3, 4, 5), List.of(6, 7), List.of(8, 9, 10)),
                even.get(1).rows());
        List<Grouping> given = Grouping.candidates(named);
        assertEquals(
                List.of(Kind.ROWS, Kind.RIG_FILE, Kind.NONE),
                given.stream().map(Grouping::kind).toList());
        assertEquals(
                List.of(List.of(1, 2, 3, 4), List.of(5, 6, 7, 8, 9), List.of(10)),
                given.get(1).rows());
    }

    /**
     * A circle of 20 m to the right, equal flow to six rows of 1 m: the row at y m right of the centre goes (20 − y)/20 of the bar's
     * way, so of a bar's volume V it should get V/6·(20 − y)/20 and got V/6: V·y/120 too much.
     */
    @Test
    void on_a_steady_circle_compensation_changes_the_rows_and_not_the_sum() {
        Drive drive = bar().lift(0, 0, 0).lower().arc(2 * Math.PI * 20 * 0.9, 2 * Math.PI * 0.9);
        TurnShift found =
                TurnShifts.of(drive.strips(drive.poses()), drive.delivery()).get(0);
        double chordM = 2 * Math.PI * 20 * 0.9;
        double volumeL = 6 * RATE * chordM;
        assertTrue(found.known());
        assertEquals(0, found.takenOut(), 1e-9);
        for (int r = 0; r < 6; r++) {
            double y = r - 2.5;
            assertEquals(-volumeL * y / 120, found.rowChangeL()[r], 1e-3 * volumeL / 120, "row " + (r + 1));
        }
        assertEquals(0, Arrays.stream(found.rowChangeL()).sum(), 1e-9);
        assertEquals(volumeL * 4.5 / 120, found.movedL(), 1e-3 * volumeL);
        // Off by 20/(20 − y) − 1: beyond 5 % are |y| = 1.5 and 2.5, beyond 10 % the rows at 2.5 and −2.5 (14.3 %, −11.1
        // %).
        double circleM2 = chordM * 1;
        assertEquals(4 * circleM2, found.beyond5M2(), 1e-3 * 6 * circleM2);
        assertEquals(2 * circleM2, found.beyond10M2(), 1e-3 * 6 * circleM2);
    }

    @Test
    void without_turns_nothing_is_said_of_compensation() {
        Drive drive = bar().lift(0, 0, 0).lower().ahead(100);
        assertFalse(TurnShifts.of(drive.strips(drive.poses()), drive.delivery())
                .get(0)
                .known());
    }
}
