package io.rowledger.log.taskdata;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.TestNotes;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A terminal's clock held against the receiver's. */
class LogClockTest {
    private static final String HEADER = "<TIM A=\"\" D=\"4\"><PTN H=\"\" I=\"\"/></TIM>";

    /** A log whose records are stamped with a local time and a UTC, the latter "" where the receiver has none. */
    private static LogClock clock(List<String> local, List<String> utc) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int i = 0; i < local.size(); i++) {
            time(out, LocalDateTime.parse(local.get(i)).toInstant(ZoneOffset.UTC));
            if (utc.get(i).isEmpty()) {
                out.writeBytes(new byte[] {-1, -1, -1, -1, -1, -1});
            } else {
                time(out, Instant.parse(utc.get(i)));
            }
            out.write(0);
        }
        byte[] header = HEADER.getBytes(StandardCharsets.UTF_8);
        TimeLog log = TimeLog.read(
                LogHeader.of(TaskXml.read("TLG00001.XML", new ByteArrayInputStream(header), "TIM")),
                new boolean[0],
                "TLG00001.BIN",
                new ByteArrayInputStream(out.toByteArray()));
        return new LogClock(log, "TLG00001.BIN", null);
    }

    private static void time(ByteArrayOutputStream out, Instant at) {
        // 1980-01-01 is day 3652 of the Unix epoch: ten years of 365 days and the leap days of 1972 and 1976.
        long day = Math.floorDiv(at.toEpochMilli(), 86_400_000L) - 3652;
        long ms = Math.floorMod(at.toEpochMilli(), 86_400_000L);
        for (int k = 0; k < 32; k += 8) {
            out.write((int) (ms >> k) & 0xFF);
        }
        out.write((int) day & 0xFF);
        out.write((int) (day >> 8) & 0xFF);
    }

    @Test
    void a_record_before_the_first_fix_gets_its_time_too() throws IOException {
        LogClock clock = clock(
                List.of("2026-06-11T23:59:59.500", "2026-06-12T00:00:00.500", "2026-06-12T00:00:01.500"),
                List.of("", "2026-06-12T05:00:00.500Z", "2026-06-12T05:00:01.500Z"));
        assertEquals(List.of(), TestNotes.texts(clock.notes()));
        assertEquals("2026-06-12T04:59:59.500Z", clock.text(0));
        assertEquals("2026-06-12T05:00:01.500Z", clock.text(2));
    }

    @Test
    void a_clock_that_is_off_is_set_right_and_said() throws IOException {
        LogClock clock = clock(
                List.of("2026-06-11T13:04:00", "2026-06-11T13:04:01"),
                List.of("2026-06-11T18:02:00Z", "2026-06-11T18:02:01Z"));
        assertEquals("2026-06-11T18:02:00Z", clock.text(0));
        assertEquals(
                "The clock of the terminal that wrote TLG00001.BIN was 2 min 0 s off. The receiver's time was used.",
                String.join(" ", TestNotes.texts(clock.notes())));
    }

    @Test
    void clocks_that_are_days_apart_are_doubted() throws IOException {
        LogClock clock = clock(
                List.of("2026-06-11T13:02:00", "2026-06-11T13:02:01"),
                List.of("2006-10-26T18:02:00Z", "2006-10-26T18:02:01Z"));
        // 1024 weeks: a receiver whose count of weeks started over.
        assertEquals(
                "The clock of the terminal that wrote TLG00001.BIN and the receiver's are 7,168 days apart. The receiver's "
                        + "was used. Check the date.",
                String.join(" ", TestNotes.texts(clock.notes())));
    }

    @Test
    void a_clock_set_on_the_way_leaves_each_record_its_own_time() throws IOException {
        LogClock clock = clock(
                List.of("2026-06-11T13:02:00", "2026-06-11T14:02:01", "2026-06-11T14:02:02"),
                List.of("2026-06-11T18:02:00Z", "2026-06-11T18:02:01Z", ""));
        assertEquals("2026-06-11T18:02:00Z", clock.text(0));
        assertEquals("2026-06-11T18:02:01Z", clock.text(1));
        assertEquals("", clock.text(2));
        assertEquals(
                "The clock of the terminal was set while it wrote TLG00001.BIN. Each record has the receiver's time.",
                String.join(" ", TestNotes.texts(clock.notes())));
    }

    @Test
    void without_a_receivers_time_the_zone_stays_open() throws IOException {
        LogClock clock = clock(List.of("2026-06-11T13:02:00"), List.of(""));
        assertEquals("2026-06-11T13:02:00", clock.text(0));
    }

    @Test
    void a_receiver_that_hangs_is_no_clock_that_was_set() throws IOException {
        List<String> local = new java.util.ArrayList<>();
        List<String> utc = new java.util.ArrayList<>();
        for (int i = 0; i < 50; i++) {
            local.add(String.format(java.util.Locale.ROOT, "2026-06-11T13:02:%02d", i));
            utc.add(String.format(java.util.Locale.ROOT, "2026-06-11T18:02:%02dZ", Math.min(i, 29)));
        }
        LogClock clock = clock(local, utc);
        assertEquals("2026-06-11T18:02:45Z", clock.text(45));
        // 20 records repeat 29 s; the first two could be a late reading.
        assertTrue(
                TestNotes.texts(clock.notes()).get(0).contains("stands still in 18 of 50 records"),
                TestNotes.texts(clock.notes()).toString());
        assertEquals(1, TestNotes.texts(clock.notes()).size());
    }

    @Test
    void a_receiver_that_counts_days_from_one_is_told() throws IOException {
        LogClock clock = clock(
                List.of("2026-06-11T18:02:26", "2026-06-11T18:02:27"),
                List.of("2026-06-10T18:02:00Z", "2026-06-10T18:02:01Z"));
        assertEquals("2026-06-11T18:02:00Z", clock.text(0));
        assertTrue(
                TestNotes.texts(clock.notes()).get(0).contains("one day off the terminal's"),
                TestNotes.texts(clock.notes()).toString());
    }
}
