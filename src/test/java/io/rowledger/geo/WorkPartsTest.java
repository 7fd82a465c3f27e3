package io.rowledger.geo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

class WorkPartsTest {
    private final WorkParts parts = new WorkParts();

    /** A square of 100 m whose lower left corner lies here. */
    private static Envelope square(double eastM, double northM) {
        return new Envelope(eastM, eastM + 100, northM, northM + 100);
    }

    @Test
    void work_no_farther_than_400_m_away_belongs_to_one_part() {
        assertTrue(parts.add(square(0, 0)));
        assertFalse(parts.add(square(500, 0)));
        assertFalse(parts.add(square(50, 50)));
        assertEquals(1, parts.all().size());
        assertEquals(0, parts.apartM());
    }

    /** Corner to corner 300 m east and 400 m north: 500 m. */
    @Test
    void work_farther_away_is_a_part_of_its_own_until_work_between_joins_the_two() {
        parts.add(square(0, 0));
        assertTrue(parts.add(square(400, 500)));
        assertEquals(500, parts.apartM());
        assertEquals(square(400, 500), parts.nearest(square(450, 700)));
        assertFalse(parts.add(square(200, 250)));
        assertEquals(1, parts.all().size());
        assertEquals(new Envelope(0, 500, 0, 600), parts.all().get(0));
    }

    @Test
    void a_piece_that_is_handed_in_is_not_changed() {
        Envelope piece = square(0, 0);
        parts.add(piece);
        parts.add(square(200, 0));
        assertEquals(square(0, 0), piece);
    }
}
