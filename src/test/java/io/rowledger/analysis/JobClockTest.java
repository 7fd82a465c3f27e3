package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/** The sun moves 360 degrees in 24 h, 15 degrees an hour. */
class JobClockTest {
    private static String local(String utc, double lonDeg) {
        return Instant.parse(utc)
                .atZone(JobClock.bySun(lonDeg))
                .toLocalDateTime()
                .toString();
    }

    /** 93 degrees west are 6.2 h, 6 h: 01:30 UTC of June 10 is 7:30 in the evening of June 9, and 11:30 of June 10 at 155 east. */
    @Test
    void an_evenings_work_keeps_its_local_date() {
        assertEquals("2026-06-09T19:30", local("2026-06-10T01:30:00Z", -93));
        assertEquals("2026-06-10T11:30", local("2026-06-10T01:30:00Z", 155));
        assertEquals("2026-06-10T01:30", local("2026-06-10T01:30:00Z", 2));
    }

    /** Twelve hours either way at the date line. */
    @Test
    void the_date_line_is_reached_from_both_sides() {
        assertEquals("2026-06-09T13:30", local("2026-06-10T01:30:00Z", -180));
        assertEquals("2026-06-10T13:30", local("2026-06-10T01:30:00Z", 180));
    }

    @Test
    void a_zone_that_was_entered_is_none_of_the_suns() {
        assertTrue(JobClock.isBySun(JobClock.bySun(-93)));
        assertFalse(JobClock.isBySun(ZoneId.of("America/Chicago")));
        assertFalse(JobClock.isBySun(ZoneId.of("-06:00")));
    }
}
