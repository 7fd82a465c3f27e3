package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.document.pdf.Paper;
import io.rowledger.output.Reports;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.Scenarios;
import io.rowledger.sim.SimResult;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** What must not change a figure: threads, the order of columns, where a log is cut. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class PipelineLawsTest {
    private Path folder;
    private SimResult job;
    private Path log;
    private Path rig;
    private Path boundary;

    @BeforeAll
    void simulate_a_field(@TempDir Path temporary) {
        folder = temporary;
        job = Scenarios.headlandLapsDrawn(3)
                .gnss(GnssModel.rtk(5))
                .withoutGround()
                .run()
                .writeTo(folder);
        log = folder.resolve("log.csv");
        rig = folder.resolve("rig.yaml");
        boundary = folder.resolve("boundary.geojson");
    }

    @Test
    void one_thread_and_two_and_eight_give_the_same_bytes() throws IOException {
        Path one = write(analyze(List.of(log), 1), "one");
        for (int threads : new int[] {2, 8}) {
            assertSameFiles(one, write(analyze(List.of(log), threads), "threads" + threads));
        }
    }

    @Test
    void a_shuffled_column_order_gives_the_same_figures() throws IOException {
        List<String> lines = Files.readAllLines(log);
        int columns = lines.get(0).split(",", -1).length;
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            order.add(i);
        }
        Collections.shuffle(order, new Random(5));
        List<String> shuffled = new ArrayList<>();
        for (String line : lines) {
            String[] fields = line.split(",", -1);
            shuffled.add(String.join(",", order.stream().map(i -> fields[i]).toList()));
        }
        Path other = Files.createDirectories(folder.resolve("shuffled")).resolve("log.csv");
        Files.write(other, shuffled);
        Path plain = write(analyze(List.of(log), 2), "plain");
        Path mixed = write(analyze(List.of(other), 2), "mixed");
        for (String file : List.of("rows.csv", "passes.csv", "layers/strips.geojson", "layers/skips.geojson")) {
            assertArrayEquals(Files.readAllBytes(plain.resolve(file)), Files.readAllBytes(mixed.resolve(file)), file);
        }
    }

    @Test
    void a_log_cut_in_two_files_gives_the_same_totals() throws IOException {
        int cut = job.records() * 3 / 7;
        Path cutFolder = Files.createDirectories(folder.resolve("cut"));
        Path first = Files.writeString(cutFolder.resolve("a.csv"), job.logText(0, cut));
        Path second = Files.writeString(cutFolder.resolve("b.csv"), job.logText(cut, job.records()));
        Analysis whole = analyze(List.of(log), 2);
        Analysis parts = analyze(List.of(second, first), 2);
        assertEquals(
                whole.rates().sweptAreaM2(),
                parts.rates().sweptAreaM2(),
                1e-9 * whole.rates().sweptAreaM2());
        assertEquals(whole.coverage().coveredAreaM2(), parts.coverage().coveredAreaM2(), 1e-6);
        assertEquals(whole.coverage().overlapAreaM2(), parts.coverage().overlapAreaM2(), 1e-6);
        assertEquals(whole.track().passes().size(), parts.track().passes().size());
        assertEquals(2, parts.log().sources().size());
    }

    private Analysis analyze(List<Path> logs, int threads) {
        return Pipeline.analyze(new JobFiles(logs, rig, boundary), threads, Progress.SILENT);
    }

    private Path write(Analysis analysis, String name) {
        Path out = folder.resolve(name);
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        Reports.write(analysis, options, out, Set.of(), List.of(), 1);
        return out;
    }

    private static void assertSameFiles(Path expected, Path actual) throws IOException {
        for (String file : Arrays.asList(
                "summary.json",
                "diagnosis.json",
                "setup-check.json",
                "rows.csv",
                "passes.csv",
                "layers/strips.geojson",
                "layers/overlaps.geojson",
                "layers/skips.geojson",
                "layers/findings.geojson")) {
            assertArrayEquals(
                    Files.readAllBytes(expected.resolve(file)), Files.readAllBytes(actual.resolve(file)), file);
        }
    }
}
