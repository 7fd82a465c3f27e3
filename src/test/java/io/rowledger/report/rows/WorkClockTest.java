package io.rowledger.report.rows;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.chart.Scale;
import io.rowledger.track.Pass;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The example of {@link WorkClock}: passes from 0 to 100 s and from 160 to 260 s of an hour. */
class WorkClockTest {
    /** 2026-06-01, s since 1970. */
    private static final double DAY_S = 1_780_272_000;

    private static final WorkClock CLOCK = new WorkClock(List.of(
            new Pass(1, 0, 1, DAY_S, DAY_S + 100, 200, 0), new Pass(2, 1, 2, DAY_S + 160, DAY_S + 260, 200, 0)));

    @Test
    void turns_take_no_room() {
        assertEquals(110, CLOCK.at(DAY_S + 170), 1e-9);
        assertEquals(100, CLOCK.at(DAY_S + 130), 1e-9);
        assertEquals(200, CLOCK.at(DAY_S + 500), 1e-9);
        assertEquals(200, CLOCK.workingS(), 1e-9);
        assertArrayEquals(new double[] {100}, CLOCK.turns(), 1e-9);
    }

    /** From 00:01:20 in the first pass to 00:03:00 in the second: marks every 10 s, none in the turn. */
    @Test
    void a_window_over_a_turn_has_marks_only_in_the_passes() {
        Scale scale = CLOCK.window(DAY_S + 80, DAY_S + 180, new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC));
        assertEquals(80, scale.low(), 1e-9);
        assertEquals(120, scale.high(), 1e-9);
        List<String> labels = scale.ticks().stream().map(Scale.Tick::label).toList();
        assertTrue(labels.containsAll(List.of("00:01:20", "00:01:40", "00:02:40", "00:03:00")), "" + labels);
        assertTrue(labels.stream().noneMatch(label -> label.equals("00:02:00")), "" + labels);
    }
}
