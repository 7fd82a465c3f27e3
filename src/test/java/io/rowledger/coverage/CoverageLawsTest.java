package io.rowledger.coverage;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of any field: whatever the threads, wherever it lies and whichever way it is turned. */
@Tag("slow")
class CoverageLawsTest {
    private static Drive field() {
        return GuidedField.of(110, 6, 0.762, 0.4, 0.002, 21);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 8})
    void any_number_of_threads_gives_the_same_bytes(int threads) {
        for (Boundary boundary : new Boundary[] {null, CoverageByHandTest.box(-1, 2, 112, 109)}) {
            Coverage one = field().coverage(boundary, CoverageOptions.defaults(1));
            Coverage many = field().coverage(boundary, CoverageOptions.defaults(threads));
            assertEquals(one.covered().toText(), many.covered().toText());
            assertEquals(one.strips().toString(), many.strips().toString());
            assertEquals(one.overlaps().toString(), many.overlaps().toString());
            assertEquals(one.skips().toString(), many.skips().toString());
            assertEquals(one.slivers(), many.slivers());
            assertEquals(one.shutOffs(), many.shutOffs());
            assertEquals(one.skipAreaM2(), many.skipAreaM2());
            assertEquals(one.overlapAreaM2(), many.overlapAreaM2());
            assertArrayEquals(one.grid().coveredM2(), many.grid().coveredM2());
            assertArrayEquals(one.grid().volumeL()[0], many.grid().volumeL()[0]);
            assertArrayEquals(one.grid().targetL()[0], many.grid().targetL()[0]);
            assertEquals(one.received().get(0).cvPct(), many.received().get(0).cvPct());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void turning_and_shifting_the_field_leaves_the_areas(long seed) {
        Random random = new Random(seed);
        Coverage here = field().coverage();
        Coverage there = field().frame(
                        2 * Math.PI * random.nextDouble(),
                        1000 * (random.nextDouble() - 0.5),
                        1000 * (random.nextDouble() - 0.5))
                .coverage();
        // 6 km of strip edges on a grid of 0.1 mm.
        assertEquals(here.coveredAreaM2(), there.coveredAreaM2(), 0.2);
        assertEquals(here.overlapAreaM2(), there.overlapAreaM2(), 0.2);
        assertEquals(here.skipAreaM2(), there.skipAreaM2(), 0.2);
        assertEquals(here.skips().size(), there.skips().size());
        assertEquals(
                here.received().get(0).logVolumeL(), there.received().get(0).logVolumeL(), 1e-6);
        // Where cells cut the edges of strips changes, and with it the spread a little.
        assertEquals(
                here.received().get(0).within10Pct(), there.received().get(0).within10Pct(), 1.0);
    }

    @Test
    void totals_hold_together() {
        Coverage c = field().coverage(CoverageByHandTest.box(-1, -1, 111, 111), CoverageOptions.defaults(2));
        double placesM2 = c.skips().stream().mapToDouble(CoverageDefect::areaM2).sum();
        assertEquals(c.skipAreaM2(), placesM2 + c.slivers().skipM2(), 1e-6 * c.skipAreaM2());
        double overlapM2 =
                c.overlaps().stream().mapToDouble(CoverageDefect::areaM2).sum();
        assertEquals(c.overlapAreaM2(), overlapM2 + c.slivers().overlapM2(), 1e-6 * c.overlapAreaM2());
        double deliveredM2 = c.strips().stream()
                .filter(StripPolygon::delivering)
                .mapToDouble(s -> s.polygon().getArea())
                .sum();
        // What is done again is what all visits sum to beyond the ground they cover.
        assertEquals(deliveredM2 - c.coveredAreaM2(), c.shutOffs().onOverCoveredM2(), 0.1);
        assertEquals(
                c.boundaryAreaM2(),
                c.skipAreaM2() + c.coveredAreaM2() - c.outsideBoundaryM2(),
                1e-4 * c.boundaryAreaM2());
        assertTrue(Math.abs(c.received().get(0).conservationError()) < 1e-5);
        assertTrue(c.covered().isValid());
        for (CoverageDefect p : c.skips()) {
            assertTrue(Jts.meanWidthM(p.polygon()) > 0.05, "a seam among the places: " + p.areaM2());
        }
    }
}
