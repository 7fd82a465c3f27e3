package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.taskdata.TaskDataBuild;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TaskDataWriter;
import io.rowledger.text.Argument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Task data reads as its twin in CSV does, to the last bit of every column: both hold the same whole numbers. */
@Tag("slow")
class TaskDataTwinTest {
    private static final SimRig DRAWN = SimRig.drawn(18);

    @TempDir
    Path folder;

    private static Scenario job(long seed) {
        return new Scenario(seed, DRAWN, PassPlan.rectangle(150, 3, 0, DRAWN.widthM()));
    }

    private void reads_as_its_twin(Scenario scenario) throws IOException {
        SimResult run = scenario.run();
        TaskDataWriter writer = TaskDataWriter.of(run);
        List<String> keys = scenario.products().stream().map(SimProduct::key).toList();
        LogOptions options = new LogOptions(Map.of(), keys, scenario.rig().rows());
        Path csv = Files.writeString(folder.resolve("twin.csv"), writer.twinCsv());
        LogTable twin = LogReader.read(List.of(csv), options).table();
        LogReading reading = LogReader.read(List.of(writer.writeTo(folder.resolve("TASKDATA"))), options);
        LogTable table = reading.table();
        assertTrue(twin.records() > 500, twin.records() + " records");
        assertEquals(twin.records(), table.records());
        assertEquals(twin.products(), table.products());
        assertEquals(twin.sources().get(0).dropped(), table.sources().get(0).dropped());
        for (int i = 0; i < twin.records(); i++) {
            assertArrayEquals(common(twin, i), common(table, i), "record " + i);
            for (int p = 0; p < keys.size(); p++) {
                assertEquals(twin.targetLPerM2(p, i), table.targetLPerM2(p, i));
                assertEquals(twin.totalLPerS(p, i), table.totalLPerS(p, i));
                for (int r = 0; r < twin.outlets(); r++) {
                    assertEquals(twin.flowLPerS(p, r, i), table.flowLPerS(p, r, i), "record " + i + ", row " + r);
                }
            }
            for (int r = 0; r < twin.outlets(); r++) {
                assertEquals(twin.on(r, i), table.on(r, i));
            }
        }
        assertEquals(2, reading.beside().size());
    }

    private static double[] common(LogTable log, int i) {
        return new double[] {
            log.timeS(i),
            log.latDeg(i),
            log.lonDeg(i),
            log.breakBefore(i) ? 1 : 0,
            log.fix(i),
            log.hdop(i),
            log.speedMps(i),
            log.down(i)
        };
    }

    @Test
    void a_plain_job() throws IOException {
        reads_as_its_twin(job(1));
    }

    @Test
    void states_of_eighteen_rows_and_a_total_meter() throws IOException {
        // Eighteen sections take two condensed work states of sixteen.
        reads_as_its_twin(job(2).format(LogFormat.customaryUnits().with(LogFormat.Column.ON, LogFormat.Column.TOTAL)));
    }

    @Test
    void two_products_are_two_functions_at_the_same_places() throws IOException {
        reads_as_its_twin(job(3).products(SimProduct.uan32(42), SimProduct.ats(5)));
    }

    @Test
    void lost_records_and_fixes_that_jump() throws IOException {
        reads_as_its_twin(job(4).gnss(
                        GnssModel.rtk(5).withLosses(0.02, 0.01).withJumps(List.of(new GnssModel.Jump(60, 400, 0, 1)))));
    }

    @Test
    void local_time_takes_the_zone_of_the_rig_file() throws IOException {
        SimResult run = job(5).run();
        Path data = TaskDataWriter.inLocalTime(run).writeTo(folder.resolve("local"));
        Path utc = TaskDataWriter.of(run).writeTo(folder.resolve("utc"));
        LogHints hints = new LogHints(ZoneId.of("-05:00"), null, null, 0, null, Double.NaN, null, Set.of());
        LogTable local = LogReader.read(List.of(data), new LogOptions(Map.of(), List.of("uan"), 18, hints))
                .table();
        LogTable known = LogReader.read(List.of(utc), new LogOptions(Map.of(), List.of("uan"), 18))
                .table();
        assertEquals(known.timeS(0), local.timeS(0));
        assertEquals(known.timeS(known.records() - 1), local.timeS(local.records() - 1));
        LogReading guessed = LogReader.read(List.of(data), new LogOptions(Map.of(), List.of("uan"), 18));
        assertTrue(
                LogNotes.of(guessed).stream().anyMatch(note -> note.contains("have no zone and were read as UTC")),
                guessed.notes().toString());
    }

    @Test
    void the_time_logs_of_a_task_are_joined_by_time() throws IOException {
        SimResult run = job(6).run();
        Path data = TaskDataWriter.of(run).writeTo(folder.resolve("TASKDATA"));
        LogOptions options = new LogOptions(Map.of(), List.of("uan"), 18);
        LogTable one = LogReader.read(List.of(data), options).table();
        // The same bytes under a second name cover the same times: each counts once.
        Path task = data.resolve("TASKDATA.XML");
        Files.writeString(
                task,
                Files.readString(task)
                        .replace("<TLG A=\"TLG00001\" C=\"1\"/>", "<TLG A=\"TLG00001\"/><TLG A=\"TLG00002\"/>"));
        Files.copy(data.resolve("TLG00001.XML"), data.resolve("TLG00002.XML"));
        Files.copy(data.resolve("TLG00001.BIN"), data.resolve("TLG00002.BIN"));
        LogTable both = LogReader.read(List.of(data), options).table();
        assertEquals(one.records(), both.records());
        assertEquals(2, both.sources().size());
        assertEquals(0, both.sources().get(1).used());
        // Named one by one, the log is the same.
        assertEquals(
                one.records(),
                LogReader.read(List.of(data.resolve("TLG00001.BIN")), options)
                        .table()
                        .records());
    }

    /** Sections of 3 m and a rig file with rows of 30 in (0.762 m): three differ, the fourth doesn't. */
    @Test
    void a_width_other_than_the_rig_files_is_told() {
        Path data = new TaskDataBuild(4, 30, 2)
                .log(2, "DET-2", i -> 2_000_000)
                .log(67, "DET-1", i -> 12_000)
                .logSections(3)
                .writeTo(folder.resolve("widths"));
        BarLayout bar = new BarLayout(List.of(0.762, 0.762, 0.762, 3.0), List.of(), List.of(), List.of());
        LogOptions options = new LogOptions(Map.of(), List.of("uan"), 4, LogHints.NONE, bar);
        assertEquals(
                1,
                LogReader.read(List.of(data), options).notes().stream()
                        .filter(note -> note.key().equals("notes.taskdata.widths")
                                && note.arguments().get(0).equals(new Argument.Count(3))
                                && note.arguments().get(2).equals(new Argument.Count(1)))
                        .count());
    }
}
