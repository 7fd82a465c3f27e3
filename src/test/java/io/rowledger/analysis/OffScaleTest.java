package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.Paper;
import io.rowledger.log.taskdata.TaskDataBuild;
import io.rowledger.report.common.ReportOptions;
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

/** Task data whose controller counts a hundred times what its flows add up to: told beside the figure, and no row is accused. */
class OffScaleTest {
    private static final int ROWS = 4;
    private static final String RIG = MountedRig.text(ROWS, "3 m", "200 L/ha");

    @TempDir
    Path folder;

    /** 120 s at 2 m/s, four rows of 3 m, 0.12 L/s each (200 L/ha): 57.6 L by the flows where they are whole. */
    private Analysis analyze(String name, int mm3PerS, int totalL) throws IOException {
        TaskDataBuild build = new TaskDataBuild(ROWS, 120, 2);
        for (int s = 0; s < ROWS; s++) {
            int row = s;
            // The third row runs at half, which by itself is a finding.
            build.log(37, TaskDataBuild.section(s), i -> row == 2 && i > 20 ? mm3PerS / 2 : mm3PerS);
            int offsetMm = 3000 * s - 4500;
            build.log(135, TaskDataBuild.section(s), i -> offsetMm).log(67, TaskDataBuild.section(s), i -> 3000);
        }
        build.log(80, "DET-1", i -> totalL * i / 119);
        Path rig = Files.writeString(folder.resolve(name + ".yaml"), RIG);
        return Pipeline.analyze(
                new JobFiles(List.of(build.writeTo(folder.resolve(name))), rig, null), 1, Progress.SILENT);
    }

    private static ReportOptions options() {
        return new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test", Locale.US);
    }

    @Test
    void no_row_is_named_and_record_and_review_warn_beside_the_figure() throws IOException {
        Analysis a = analyze("small", 1_200, 52);
        assertTrue(a.log().isOffScale());
        assertEquals(List.of(), a.findings());
        assertFalse(a.diagnosis().allClear());
        assertTrue(a.coverage().coveredAreaM2() > 1000, "the ground counts as covered: its own flow is the measure");
        List<String> record = NitrogenRecordReport.of(a, options()).content().answer().stream()
                .map(sentence -> sentence.text())
                .toList();
        assertTrue(record.get(1).startsWith("Check before you use a volume or rate"), record.toString());
        List<String> review = PassReviewReport.of(a, options()).content().verdict();
        assertTrue(review.get(0).startsWith("Check before you use a volume or rate"), review.toString());
        assertTrue(review.stream().noneMatch(text -> text.matches("(?s).*\\brows? \\d.*")), review.toString());
        assertFalse(a.intervals().nitrogenKg().known(), "the controller's total lies a hundredfold outside any bound");
        assertFalse(a.intervals().products().get(0).volumeL().known());
        assertTrue(a.intervals().coveredAreaM2().known());
        for (List<String> page : List.of(record, review)) {
            assertTrue(page.stream().noneMatch(text -> text.contains("within 10%")), page.toString());
        }
    }

    @Test
    void a_total_a_third_above_the_flows_leaves_no_narrow_bounds_of_volume() throws IOException {
        Analysis a = analyze("third", 120_000, 72);
        assertFalse(a.log().isOffScale());
        assertTrue(a.log().isContradicted());
        assertFalse(a.intervals().nitrogenKg().known());
    }

    @Test
    void where_the_totals_agree_rows_are_held_against_their_target() throws IOException {
        Analysis a = analyze("whole", 120_000, 52);
        assertFalse(a.log().isOffScale());
        List<String> review = PassReviewReport.of(a, options()).content().verdict();
        assertTrue(review.stream().anyMatch(text -> text.contains("row 3")), review.toString());
    }
}
