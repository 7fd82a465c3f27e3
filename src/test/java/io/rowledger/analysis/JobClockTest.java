package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sun moves 360 degrees in 24 h, 15 degrees an hour. */
class JobClockTest {
    @TempDir
    Path folder;

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

    /** The same log at another place: with the zone of its place it passes, with one half the globe away it is asked about. */
    @Test
    void a_zone_far_from_the_place_is_asked_about() throws IOException {
        for (double lonDeg : new double[] {-93.1, 93.1}) {
            StringBuilder log = new StringBuilder("time,lat,lon,down,flow[gal/min]\n");
            for (int i = 0; i < 60; i++) {
                log.append(String.format(
                        Locale.ROOT, "2026-06-11T13:00:%02dZ,%.7f,%.4f,1,12\n", i, 41.7 + i * 2.2e-5, lonDeg));
            }
            Path file = Files.writeString(folder.resolve("log.csv"), log);
            Path rig = Files.writeString(
                    folder.resolve("rig.yaml"),
                    MountedRig.text(12, "30 in", "42 gal/ac") + "job: {zone: America/Chicago}\n");
            JobFiles files = new JobFiles(List.of(file), rig, null);
            if (lonDeg < 0) {
                assertEquals(
                        60, Pipeline.analyze(files, 1, Progress.SILENT).log().records());
            } else {
                String message = assertThrows(
                                UnusableInputException.class, () -> Pipeline.analyze(files, 1, Progress.SILENT))
                        .getMessage();
                assertTrue(message.contains("longitude 93.100, far from America/Chicago"), message);
            }
        }
    }

    @Test
    void a_zone_that_was_entered_is_none_of_the_suns() {
        assertTrue(JobClock.isBySun(JobClock.bySun(-93)));
        assertFalse(JobClock.isBySun(ZoneId.of("America/Chicago")));
        assertFalse(JobClock.isBySun(ZoneId.of("-06:00")));
    }
}
