package io.rowledger.report.common;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.document.pdf.Paper;
import io.rowledger.geo.LocalPlane;
import io.rowledger.report.answer.NextActions.Action;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.report.record.NitrogenRecordReport;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A log written by hand: eight rows of 0.762 m, ten passes of 150 m side by side, a record a second, target 300 L/ha. On target the
 * bar puts 0.03 L/m² on 9,144 m², 274.3 L, 34.29 L a row.
 */
class BlankFlowJobTest {
    private static final double BAR_M = 8 * 0.762;
    private static final int PASSES = 10;
    private static final int LENGTH_M = 150;
    private static final int RUN_M = 16;
    private static final ReportOptions OPTIONS =
            new ReportOptions(UnitSystem.METRIC, Paper.A4, ZoneOffset.UTC, null, "test");

    private static final String RIG = """
            rig:
              antenna: {ahead_of_axle: 0 m}
              axle_to_hitch: 0 m
              hitch: mounted
              hitch_to_drop: 0 m
            rows: {count: 8, spacing: 0.762 m, outer_share: 1}
            products:
              uan: {density: 1.32528 kg/L, analysis: 32-0-0, target: 300 L/ha}
            """;

    @TempDir
    Path folder;

    /** What the console wrote of a row. */
    private interface Console {
        /** Returns the reading of a row that is on target, L/min. */
        String reading(int row, int pass, double onTargetLPerMin);
    }

    private Analysis job(Console console) throws IOException {
        StringBuilder b = new StringBuilder("epoch_s,lat,lon,down,fix");
        for (int row = 1; row <= 8; row++) {
            b.append(",flow_0").append(row).append("[L/min]");
        }
        b.append('\n');
        LocalPlane plane = new LocalPlane(41.5, -93.5);
        double[] degrees = new double[2];
        int timeS = 1_780_000_000;
        for (int pass = 0; pass < PASSES; pass++) {
            // Slower in every other pair of passes, so that no meter reads one value all day.
            double speedMps = pass / 2 % 2 == 0 ? 2 : 1.6;
            for (double m = -RUN_M; m < LENGTH_M + RUN_M; m += speedMps) {
                plane.inverse(pass * BAR_M, pass % 2 == 0 ? m : LENGTH_M - m, degrees);
                boolean down = m > -speedMps / 2 && m < LENGTH_M - speedMps / 2;
                b.append(
                        String.format(Locale.ROOT, "%d,%.9f,%.9f,%d,4", timeS++, degrees[0], degrees[1], down ? 1 : 0));
                for (int row = 1; row <= 8; row++) {
                    b.append(',').append(console.reading(row, pass, down ? 0.03 * 0.762 * speedMps * 60 : 0));
                }
                b.append('\n');
            }
            timeS += 30;
        }
        Path log = Files.writeString(folder.resolve("log.csv"), b);
        Path rig = Files.writeString(folder.resolve("rig.yaml"), RIG);
        return Pipeline.analyze(new JobFiles(List.of(log), rig, null), 1, Progress.SILENT);
    }

    private static String figure(double lPerMin) {
        return String.format(Locale.ROOT, "%.4f", lPerMin);
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static String record(Analysis a) {
        return plain(String.join(
                "\n",
                NitrogenRecordReport.of(a, OPTIONS).content().answer().stream()
                        .map(Sentence::text)
                        .toList()));
    }

    private static String review(Analysis a) {
        return plain(String.join("\n", PassReviewReport.of(a, OPTIONS).content().verdict()));
    }

    /** A row without a flow in the log may have served its 1,143 m² or not: neither skipped ground nor a total. */
    @Test
    void a_row_without_flow_in_the_log_is_neither_skipped_nor_in_a_total() throws IOException {
        Analysis a = job((row, pass, flow) -> row == 3 ? "" : figure(flow));
        assertTrue(
                a.intervals().products().get(0).volumeL().holds(0.03 * PASSES * LENGTH_M * BAR_M),
                a.intervals().products().get(0).volumeL().toString());
        String record = record(a);
        assertTrue(
                record.contains("That is not the total: the log has no flow for 12.5% of the worked ground."), record);
        assertTrue(record.contains("Whether 0.11 ha between the passes was covered is not known"), record);
        assertFalse(record.contains("skipped between"), record);
        String review = review(a);
        assertTrue(review.contains("0.11 ha perhaps skipped: what flowed there is not known"), review);
        assertFalse(review.startsWith("No"), review);
    }

    /** From the sixth pass on all rows give 80 %, and row 2 nothing from the fourth: no liter is told twice. */
    @Test
    void what_a_row_lost_is_not_told_again_as_the_bars() throws IOException {
        Analysis a = job((row, pass, flow) -> figure(row == 2 && pass >= 3 ? 0 : pass >= 5 ? 0.8 * flow : flow));
        double lackingL = a.rates().volumeL(0) - 0.03 * PASSES * LENGTH_M * BAR_M;
        List<Action> actions = PassReviewReport.of(a, OPTIONS).content().next().actions();
        double toldL = actions.stream()
                .filter(action -> action.title().startsWith("Check"))
                .mapToDouble(Action::costL)
                .sum();
        assertEquals(-lackingL, toldL, 0.02 * -lackingL, actions.toString());
        // Of seven rows and a bit: half of the job at 80 %.
        assertTrue(
                actions.stream()
                        .anyMatch(
                                action -> action.text().contains("Beside what is found, by its meters the bar put on")),
                actions.toString());
    }
}
