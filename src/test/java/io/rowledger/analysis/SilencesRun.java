package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.site.SitePage;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Processor time of a log of 16 hours that is silent between short stretches of work, as of a spreader that serves many places: 4,240
 * records of one outlet of 20 ft, divided by 0 to 400 silences. The cost of a record must not grow with the silences. {@code mvn
 * -Psilences test} writes the table into {@code src/site/markdown/speed.md}.
 */
class SilencesRun {
    private static final int RECORDS = 4240;
    private static final double DAY_S = 16 * 3600;
    private static final double SPEED_MPS = 2;
    private static final int[] SILENCES = {0, 1, 3, 10, 30, 60, 100, 150, 200, 300, 400};
    /** Runs of each log; the median counts. */
    private static final int RUNS = 5;
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

    @Test
    void the_cost_of_a_record_does_not_grow_with_the_silences() throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.yaml"), RIG);
        StringBuilder table =
                new StringBuilder("| silences | ms of processor time | us a record |\n| ---: | ---: | ---: |\n");
        double plainMs = Double.NaN;
        double mostMs = 0;
        for (int warm = 0; warm < 8; warm++) {
            Pipeline.analyze(new JobFiles(List.of(write(150)), rig, null), 1, Progress.SILENT);
        }
        for (int silences : SILENCES) {
            JobFiles files = new JobFiles(List.of(write(silences)), rig, null);
            double[] ms = new double[RUNS];
            for (int run = 0; run < RUNS; run++) {
                long from = processorNs();
                Analysis analysis = Pipeline.analyze(files, 1, Progress.SILENT);
                ms[run] = (processorNs() - from) / 1e6;
                assertEquals(RECORDS, analysis.log().records());
                assertEquals(silences, analysis.track().quality().gaps());
            }
            Arrays.sort(ms);
            double medianMs = ms[RUNS / 2];
            plainMs = silences == 0 ? medianMs : plainMs;
            mostMs = Math.max(mostMs, medianMs);
            table.append(String.format(
                    Locale.ROOT, "| %d | %.0f | %.0f |%n", silences, medianMs, 1000 * medianMs / RECORDS));
        }
        System.out.print(table);
        SitePage.write("speed", "silences", table.toString());
        // Not a bound on speed but on growth: the log of the complaint took a hundred times as long as a plain one.
        assertTrue(mostMs < 4 * plainMs, table::toString);
    }
}
