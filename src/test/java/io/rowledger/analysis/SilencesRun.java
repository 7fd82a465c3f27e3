package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.sim.StretchyLogs;
import io.rowledger.site.SitePage;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Processor time of a log of 16 hours that is silent between short stretches of work, as of a spreader that serves many places: 4,240
 * records of one outlet of 20 ft, divided by 0 to 400 silences. The cost of a record must not grow with the silences. Measured on
 * two logs: one and the same drive over a field, in which each silence leaves a hole in the covered ground that is found, measured
 * and listed; and stretches laid side by side, each a strip of its own, whose edges have to be held against its neighbors'. {@code mvn -Psilences test} writes the table into {@code src/site/markdown/speed.md}.
 */
class SilencesRun {
    private static final int RECORDS = 4240;
    private static final double DAY_S = 16 * 3600;
    private static final double SPEED_MPS = 2;
    private static final int[] SILENCES = {0, 1, 3, 10, 30, 60, 100, 150, 200, 300, 400};
    /** Rounds over all logs; the median counts. */
    private static final int ROUNDS = 3;
    /** Runs of a log in one round: a clock of processor time ticks every 10 ms. */
    private static final int RUNS = 2;
    /** Degrees of latitude and longitude in a meter at 41.5 degrees north, enough for a drive to be drawn. */
    private static final double LAT_PER_M = 1 / 111_080.0;

    private static final double LON_PER_M = 1 / 83_500.0;

    private static final String RIG = MountedRig.text(1, "20 ft", "20 gal/ac");

    @TempDir
    Path folder;

    private Path write(int silences) throws IOException {
        int stretches = silences + 1;
        double pauseS = silences == 0 ? 0 : (DAY_S - RECORDS) / silences;
        long start = Instant.parse("2026-06-11T06:00:00Z").getEpochSecond();
        StringBuilder text = new StringBuilder("epoch_s,lat,lon,fix,flow_01[gal/min]\n");
        double timeS = start;
        for (int i = 0; i < RECORDS; i++) {
            int stretch = (int) ((long) i * stretches / RECORDS);
            int first = (int) (((long) stretch * RECORDS + stretches - 1) / stretches);
            boolean begins = i > 0 && (int) ((i - 1L) * stretches / RECORDS) != stretch;
            timeS += i == 0 ? 0 : 1 + (begins ? pauseS : 0);
            double alongM = SPEED_MPS * (i - first);
            double north = (stretch % 2 == 0 ? alongM : 200 - alongM) % 1500;
            text.append(String.format(
                    Locale.ROOT,
                    "%.1f,%.8f,%.8f,4,%.3f%n",
                    timeS,
                    41.5 + north * LAT_PER_M,
                    -93.5 + stretch * 6.1 * LON_PER_M,
                    1.1 + 0.01 * (i % 7)));
        }
        return Files.writeString(folder.resolve("silent-" + silences + ".csv"), text.toString());
    }

    private static long processorNs() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    /** A log and its rig file, by the number of its silences. */
    private JobFiles sameDrive(int silences) {
        Path to = folder.resolve("drive-" + silences);
        StretchyLogs.write(to, RECORDS, silences, 1);
        return new JobFiles(List.of(to.resolve("log.csv")), to.resolve("rig.yaml"), null);
    }

    private JobFiles sideBySide(int silences) throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.yaml"), RIG);
        return new JobFiles(List.of(write(silences)), rig, null);
    }

    /** Returns the processor time of a record, us. */
    private static double perRecordUs(JobFiles files, int silences) {
        long from = processorNs();
        for (int run = 0; run < RUNS; run++) {
            Analysis analysis = Pipeline.analyze(files, 1, Progress.SILENT);
            assertEquals(RECORDS, analysis.log().records());
            assertEquals(silences, analysis.track().quality().gaps());
        }
        return (processorNs() - from) / 1e3 / RUNS / RECORDS;
    }

    /** Rounds go over all logs in turn, so that what else the machine does falls on all alike. */
    private static double[] mediansUs(List<JobFiles> logs) {
        double[][] us = new double[logs.size()][ROUNDS];
        for (int round = -1; round < ROUNDS; round++) {
            for (int i = 0; i < logs.size(); i++) {
                double oneUs = perRecordUs(logs.get(i), SILENCES[i]);
                if (round >= 0) {
                    us[i][round] = oneUs;
                }
            }
        }
        return Arrays.stream(us)
                .mapToDouble(rounds -> {
                    Arrays.sort(rounds);
                    return rounds[ROUNDS / 2];
                })
                .toArray();
    }

    @Test
    void the_cost_of_a_record_does_not_grow_with_the_silences() throws IOException {
        List<JobFiles> drives = new ArrayList<>();
        List<JobFiles> stretches = new ArrayList<>();
        for (int silences : SILENCES) {
            drives.add(sameDrive(silences));
            stretches.add(sideBySide(silences));
        }
        double[] driveUs = mediansUs(drives);
        double[] stretchUs = mediansUs(stretches);
        StringBuilder table = new StringBuilder("""
                | silences | the same drive, us a record | stretches side by side, us a record |
                | ---: | ---: | ---: |
                """);
        for (int i = 0; i < SILENCES.length; i++) {
            table.append(String.format(Locale.ROOT, "| %d | %.0f | %.0f |%n", SILENCES[i], driveUs[i], stretchUs[i]));
        }
        System.out.print(table);
        SitePage.write("speed", "silences", table.toString());
        // Not bounds on speed but on growth: the log of the complaint took a hundred times as long as a plain one.
        assertTrue(Arrays.stream(driveUs).max().orElseThrow() < 4 * driveUs[0], table::toString);
        assertTrue(Arrays.stream(stretchUs).max().orElseThrow() < 4 * stretchUs[0], table::toString);
    }
}
