package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.FindingKind;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The clean sample as running totals of rows in coarse steps, a record a second: the steps are no faults. */
class CoarseTotalsCheckTest {
    private static final int ROWS = 12;
    /** The sample has five records a second. */
    private static final int EVERY = 5;

    /** The first half of the field is enough. */
    private static final int RECORDS = 12_000;

    private static final double STEP_GAL = 0.1;

    @TempDir
    Path folder;

    /** Writes the totals; row 7 counts {@code share} of its liquid from half of the records on. */
    private Path totals(double share) throws IOException {
        List<String[]> records = new ArrayList<>();
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(Path.of("sample-logs/clean/log.csv.gz"))),
                StandardCharsets.UTF_8))) {
            lines.lines().limit(RECORDS).forEach(line -> records.add(line.split(",", -1)));
        }
        List<String> header = List.of(records.remove(0));
        int first = header.indexOf("flow_01[gal/min]");
        StringBuilder text = new StringBuilder("time,lat,lon,down,fix");
        for (int row = 1; row <= ROWS; row++) {
            text.append(",Row ").append(row).append(" Total (gal)");
        }
        text.append('\n');
        double[] gal = new double[ROWS];
        Instant before = Instant.parse(records.get(0)[0]);
        for (int i = 0; i < records.size(); i++) {
            String[] record = records.get(i);
            Instant now = Instant.parse(record[0]);
            double minutes = (now.toEpochMilli() - before.toEpochMilli()) / 60_000.0;
            before = now;
            for (int r = 0; r < ROWS; r++) {
                double counted = r == 6 && 2 * i > records.size() ? share : 1;
                gal[r] += counted * minutes * (record[first + r].isEmpty() ? 0 : Double.parseDouble(record[first + r]));
            }
            if (i % EVERY == 0) {
                text.append(record[0]);
                for (String name : List.of("lat", "lon", "down", "fix")) {
                    text.append(',').append(record[header.indexOf(name)]);
                }
                for (double each : gal) {
                    text.append(String.format(Locale.ROOT, ",%.1f", Math.floor(each / STEP_GAL) * STEP_GAL));
                }
                text.append('\n');
            }
        }
        return Files.writeString(folder.resolve("totals-" + share + ".csv"), text);
    }

    private static List<FindingKind> kinds(Path log) {
        return RowCheck.of(List.of(log), 0, RowCheck.DEFAULT_SPACING_M, 2).diagnosis().findings().stream()
                .map(finding -> finding.kind())
                .toList();
    }

    @Test
    void steps_are_no_faults_and_a_restricted_row_still_shows() throws IOException {
        assertEquals(List.of(), kinds(totals(1)));
        assertTrue(kinds(totals(0.6)).contains(FindingKind.RESTRICTED));
    }
}
