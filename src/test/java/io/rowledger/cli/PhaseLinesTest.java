package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class PhaseLinesTest {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final AtomicLong nanos = new AtomicLong(5_000_000_000L);
    private final PhaseLines lines = new PhaseLines(new PrintStream(bytes, true, StandardCharsets.UTF_8), nanos::get);

    private List<String> printed() {
        return bytes.toString(StandardCharsets.UTF_8).lines().toList();
    }

    @Test
    void a_report_tells_phase_share_and_rate() {
        lines.begins("reading the log", "1 file");
        nanos.addAndGet(2_000_000_000L);
        lines.begins("rebuilding the track", "144000 records");
        nanos.addAndGet(500_000_000L);
        lines.begins("writing", "out");
        lines.begins("computing coverage", "");
        assertEquals(
                List.of(
                        "   0.0 s   0 %  reading the log: 1 file",
                        "   2.0 s  18 %  rebuilding the track: 144000 records, 72,000 records/s",
                        "   2.5 s  75 %  writing: out",
                        "   2.5 s  75 %  computing coverage"),
                printed());
    }

    @Test
    void a_season_tells_its_share_by_fields() {
        lines.begins("1/8", "north");
        lines.begins("8/8", "hill");
        assertEquals(List.of("   0.0 s  12 %  1/8: north", "   0.0 s 100 %  8/8: hill"), printed());
    }
}
