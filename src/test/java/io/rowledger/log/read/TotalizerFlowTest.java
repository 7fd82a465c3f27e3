package io.rowledger.log.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogNotes;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Volumes and pulses as flows, each figure worked by hand. */
class TotalizerFlowTest {
    @TempDir
    Path folder;

    private LogReading read(String header, LogHints.Counts counts, String... lines) throws IOException {
        StringBuilder text = new StringBuilder("time,lat,lon," + header + "\n");
        for (String line : lines) {
            int comma = line.indexOf(',');
            text.append("2026-05-14T10:00:")
                    .append(line, 0, comma)
                    .append("Z,41.7,-88.1")
                    .append(line.substring(comma));
            text.append('\n');
        }
        Path log = Files.writeString(folder.resolve("log.csv"), text);
        LogHints hints = new LogHints(null, null, null, 0, counts, 10, null, Set.of());
        return LogReader.read(List.of(log), new LogOptions(Map.of(), List.of("uan"), 1, hints));
    }

    private static void flows(LogReading reading, double... lPerS) {
        assertEquals(lPerS.length, reading.table().records());
        for (int i = 0; i < lPerS.length; i++) {
            assertEquals(lPerS[i], reading.table().flowLPerS(0, 0, i), 1e-9, "record " + i);
        }
    }

    /** Intervals of 1, 1 and 2 s with 0.2, 0.4 and 0.2 L: (0.2+0.4)/2 s, (0.4+0.2)/3 s, the ends as their interval. */
    @Test
    void a_record_has_the_mean_of_the_intervals_on_either_side_weighted_by_their_length() throws IOException {
        flows(read("volume_since_last_01[L]", null, "00,9", "01,0.2", "02,0.4", "04,0.2"), 0.2, 0.3, 0.2, 0.1);
        flows(read("volume_total_01[L]", null, "00,5", "01,5.2", "02,5.6", "04,5.8"), 0.2, 0.3, 0.2, 0.1);
    }

    /**
     * The record with the repeated stamp is left out, its 0.1 L go to the interval after it: 0.1, 0.3 and 0.2 L. By the
     * trapezoid rule the flows give back all 0.6 L: 0.05 + 0.2 + 0.25 + 0.1.
     */
    @Test
    void the_volume_of_a_repeated_time_stamp_is_not_lost() throws IOException {
        flows(
                read("volume_since_last_01[L]", null, "00,0", "01,0.1", "01,0.1", "02,0.2", "03,0.2"),
                0.1,
                0.2,
                0.25,
                0.2);
    }

    /**
     * 1 L/s from 2.6 s on: of the interval from 2 to 3 s 0.4 s were on, which gives the record at 2 s 0.2 L/s and that at 3 s 0.7. The
     * ground before 2.5 s is not covered: what stands at 2 s goes to 3 s, and no volume is lost. The same at the stop at 6.3 s.
     */
    @Test
    void a_start_within_an_interval_covers_no_ground_before_it() throws IOException {
        flows(
                read(
                        "volume_total_01[L]",
                        null,
                        "00,0",
                        "01,0",
                        "02,0",
                        "03,0.4",
                        "04,1.4",
                        "05,2.4",
                        "06,3.4",
                        "07,3.7",
                        "08,3.7",
                        "09,3.7"),
                0,
                0,
                0,
                0.9,
                1,
                1,
                0.8,
                0,
                0,
                0);
    }

    /** 4 L between the first two, then the meter starts over: the second record has the interval before only. */
    @Test
    void where_a_total_falls_the_other_interval_counts_and_it_is_said() throws IOException {
        LogReading reading = read("volume_total_01[L]", null, "00,100", "01,104", "02,1", "03,3");
        flows(reading, 4, 4, 2, 2);
        assertTrue(LogNotes.of(reading).stream()
                .anyMatch(note -> note.contains("A total fell once in volume_total_01[L]")));
    }

    /** 10 pulses make a liter. */
    @Test
    void pulses_become_volumes_by_the_figure_in_the_rig_file() throws IOException {
        flows(read("count_01", LogHints.Counts.SINCE_LAST, "00,0", "01,5", "02,5"), 0.5, 0.5, 0.5);
        flows(read("count_01", LogHints.Counts.TOTAL, "00,0", "01,5", "02,10"), 0.5, 0.5, 0.5);
    }

    /** A pause of 60 s with nothing in it does not thin out the flow of the records beside it. */
    @Test
    void a_pause_of_the_logger_is_no_part_of_the_records_beside_it() throws IOException {
        flows(read("volume_since_last_01[L]", null, "00,1", "01,1", "02,1", "50,1", "51,1"), 1, 1, 1, 1, 1);
    }

    @Test
    void an_unknown_volume_leaves_the_intervals_it_touches_unknown() throws IOException {
        flows(read("volume_since_last_01[L]", null, "00,1", "01,1", "02,", "03,1", "04,1"), 1, 1, Double.NaN, 1, 1);
    }
}
