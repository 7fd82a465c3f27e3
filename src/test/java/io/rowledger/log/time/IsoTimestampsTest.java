package io.rowledger.log.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class IsoTimestampsTest {
    private static double read(String text) {
        return new IsoTimestamps().read(text);
    }

    @Test
    void the_forms_of_iso_8601_name_one_instant() {
        // RFC 3339 section 5.8: 1985-04-12T23:20:50.52Z; 482196050 s by GNU date -u +%s.
        double expected = 482_196_050.52;
        for (String text : List.of(
                "1985-04-12T23:20:50.52Z",
                "1985-04-12 23:20:50.52Z",
                "1985-04-12t23:20:50,52z",
                "19850412T232050.52Z",
                "1985-04-12T23:20:50.520+00:00",
                "1985-04-12T15:20:50.52-08:00",
                "1985-04-13T00:20:50.52+01",
                "1985-04-13T05:05:50.52+0545",
                "1985-04-12 23:20:50.52 UTC",
                "1985-04-12T23:20:50.52")) {
            assertEquals(expected, read(text), 1e-6, text);
        }
        // The same section: 1996-12-19T16:39:57-08:00 is 1996-12-20T00:39:57Z.
        assertEquals(read("1996-12-20T00:39:57Z"), read("1996-12-19T16:39:57-08:00"));
    }

    @Test
    void random_instants_are_read_as_the_jdk_reads_them() {
        Random random = new Random(8601);
        IsoTimestamps timestamps = new IsoTimestamps();
        DateTimeFormatter form = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSSXXX", Locale.ROOT);
        for (int i = 0; i < 100_000; i++) {
            long millis = (long) (random.nextDouble() * 4e12);
            OffsetDateTime time =
                    Instant.ofEpochMilli(millis).atOffset(ZoneOffset.ofTotalSeconds((random.nextInt(97) - 48) * 900));
            String text = form.format(time);
            assertEquals(millis / 1000.0, timestamps.read(text), 1e-6, text);
        }
    }

    @Test
    void what_is_no_time_is_not_guessed() {
        for (String text : List.of(
                "",
                "10:00:00",
                "05/14/2026 10:00:00",
                "2026-05-14",
                "2026-02-30T10:00:00Z",
                "2026-13-01T10:00:00Z",
                "2026-05-14T24:00:00Z",
                "2026-05-14T10:60:00Z",
                "2026-05-14T10:00:00.Z",
                "2026-05-14T10:00:00 PM",
                "2026-05-14T10:00:00+2",
                "14-05-2026T10:00:00Z")) {
            assertTrue(Double.isNaN(read(text)), text);
        }
    }

    @Test
    void times_without_a_zone_are_counted() {
        IsoTimestamps timestamps = new IsoTimestamps();
        timestamps.read("2026-05-14T10:00:00");
        timestamps.read("2026-05-14T10:00:01Z");
        assertEquals(1, timestamps.zonelessTimes());
    }
}
