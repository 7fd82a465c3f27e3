package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.log.Metering;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.MeterLanes;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimRig;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Twelve rows on six meters; row 5 gives nothing in the second half of the job. Only meter 3, of rows 5 and 6, shows it. */
class SharedMeterFindingsTest {
    private static final int ROWS = 12;

    @TempDir
    static Path folder;

    private static Analysis job;

    @BeforeAll
    static void drive() throws IOException {
        SimRig bar = SimRig.carried(ROWS);
        new Scenario(11, bar, PassPlan.rectangle(260, 6, 0, bar.widthM()))
                .products(SimProduct.uan32(42))
                .format(LogFormat.customaryUnits())
                .run()
                .writeTo(folder);
        List<String> lines = Files.readAllLines(folder.resolve("log.csv"));
        List<String> headers = List.of(lines.get(0).split(","));
        List<String> shared = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            String[] record = lines.get(i).split(",", -1);
            List<String> fields = new ArrayList<>();
            for (int c = 0; c < record.length; c++) {
                if (!headers.get(c).matches("(flow|meter)_.*|flow_total.*")) {
                    fields.add(record[c]);
                }
            }
            for (int m = 1; m <= ROWS / 2; m++) {
                fields.add(
                        i == 0
                                ? String.format(Locale.ROOT, "meter_%02d[gal/min]", m)
                                : Double.toString(
                                        (m == 3 && 2 * i > lines.size() ? 0 : flow(headers, record, 2 * m - 1))
                                                + flow(headers, record, 2 * m)));
            }
            shared.add(String.join(",", fields));
        }
        Path log = Files.write(folder.resolve("meters.csv"), shared);
        Path rig = folder.resolve("meters.yaml");
        Files.writeString(
                rig,
                Files.readString(folder.resolve("rig.yaml"))
                        .replaceFirst(
                                "(?m)^(rows:\\s*)$",
                                "$1\n  meters: [[1, 2], [3, 4], [5, 6], [7, 8], [9, 10], [11, 12]]"));
        job = Pipeline.analyze(new JobFiles(List.of(log), rig, null), 2, Progress.SILENT);
    }

    private static double flow(List<String> headers, String[] record, int row) {
        String start = String.format(Locale.ROOT, "flow_%02d", row);
        for (int c = 0; c < record.length; c++) {
            if (headers.get(c).startsWith(start)) {
                return Double.parseDouble(record[c]);
            }
        }
        throw new IllegalStateException(start + " in " + headers);
    }

    private static Messages english() {
        return Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
    }

    @Test
    void one_row_of_a_meter_plugged_is_the_meter_low_and_no_row_is_named_alone() {
        assertEquals(Metering.SHARED, job.log().metering());
        List<Finding> rows = job.diagnosis().findings().stream()
                .filter(finding -> !finding.rows().isEmpty())
                .toList();
        assertEquals(1, rows.size(), rows.toString());
        Finding low = rows.get(0);
        assertEquals(FindingKind.RESTRICTED, low.kind());
        assertEquals(List.of(5, 6), low.rows());
        assertEquals(List.of(3), low.meters());
        assertEquals(
                "Meter 3 (rows 5, 6) runs low: one of rows 5, 6 looks plugged or restricted, or several do",
                english().text(FindingTitles.of(low)));
        String evidence = english().text(low.evidence());
        assertTrue(evidence.startsWith("Meter 3 (rows 5, 6) fell"), evidence);
        assertFalse(evidence.contains("hose"), evidence);
        assertTrue(
                english().text(low.check()).startsWith("The log can't tell rows 5, 6 apart, so check each of them."));
    }

    /** Row 5 should have given its share of what the meter shows in the first half: what is missing is half the meter's. */
    @Test
    void what_is_missing_is_counted_once() {
        Finding low = job.diagnosis().findings().stream()
                .filter(finding -> !finding.meters().isEmpty())
                .findFirst()
                .orElseThrow();
        double meterL = job.rates().rows().get(4).products().get(0).volumeL()
                + job.rates().rows().get(5).products().get(0).volumeL();
        double otherL = job.rates().rows().get(6).products().get(0).volumeL()
                + job.rates().rows().get(7).products().get(0).volumeL();
        assertEquals(meterL - otherL, low.volumeL(), 0.1 * otherL);
    }

    @Test
    void pictures_have_one_line_a_meter() {
        MeterLanes lanes = MeterLanes.of(job.log(), 0, ROWS);
        assertEquals(List.of("1, 2", "3, 4", "5, 6", "7, 8", "9, 10", "11, 12"), lanes.labels());
        assertTrue(lanes.shared());
        assertFalse(MeterLanes.ofRows(ROWS).shared());
    }
}
