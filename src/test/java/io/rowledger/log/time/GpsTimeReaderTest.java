package io.rowledger.log.time;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class GpsTimeReaderTest {
    private static int leapS(String utc, int leap) {
        return GpsTimeReader.leapS((double) Instant.parse(utc).getEpochSecond() + leap);
    }

    /**
     * GPS time less UTC: TAI less UTC as IERS Bulletin C has it (32 s from 1999-01-01, 36 s from 2015-07-01, 37 s from
     * 2017-01-01), less the 19 s it was when GPS time began. From memory.
     */
    @Test
    void leap_seconds_are_those_of_the_bulletins() {
        assertEquals(0, leapS("1980-01-06T00:00:00Z", 0));
        assertEquals(32 - 19, leapS("1999-01-01T00:00:00Z", 13));
        assertEquals(36 - 19, leapS("2016-12-31T23:59:59Z", 17));
        assertEquals(37 - 19, leapS("2017-01-01T00:00:00Z", 18));
        assertEquals(37 - 19, leapS("2026-05-14T10:00:00Z", 18));
    }
}
