package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogReader;
import io.rowledger.log.LogTable;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rate.RowTotals;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TaskDataWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A job's figures from task data against those from the same log in CSV. The two differ by what each writes of a figure: CSV
 * nine decimals of a degree and four of gal/min, task data (ISO 11783-11) seven and whole mm³/s.
 */
class TaskDataJobTest {
    private static final SimRig DRAWN = SimRig.drawn(12);
    private static final int PASSES = 6;

    /** Half of 1 mm³/s and half of 0.0001 gal/min at 0.0630902 L/s (NIST SP 811 App. B.8), L/s. */
    private static final double FLOW_STEP_L_PER_S = 0.5e-6 + 0.5e-4 * 0.0630902;

    /** Half of 1e-7 degrees of latitude at 111.1 km a degree, m. */
    private static final double PLACE_STEP_M = 0.5e-7 * 111_100;

    @TempDir
    Path folder;

    private static Scenario job() {
        return new Scenario(71, DRAWN, PassPlan.rectangle(240, PASSES, 0, DRAWN.widthM()));
    }

    private static Analysis analysis(Path log, Path rig) {
        return Pipeline.analyze(new JobFiles(List.of(log), rig, null), 2, (phase, detail) -> {});
    }

    @Test
    void figures_agree_with_those_from_csv_within_what_the_numbers_resolve() {
        SimResult run = job().run().writeTo(folder);
        Path rig = folder.resolve("rig.yaml");
        Analysis csv = analysis(folder.resolve("log.csv"), rig);
        Analysis task = analysis(TaskDataWriter.of(run).writeTo(folder.resolve("TASKDATA")), rig);
        double seconds = csv.log().timeS(csv.log().records() - 1) - csv.log().timeS(0);
        double flowL = FLOW_STEP_L_PER_S * seconds;
        // A pass's two ends each move by no more than a position does; its sides wander to and fro and cancel.
        double areaM2 = PASSES * 2 * DRAWN.widthM() * PLACE_STEP_M;
        assertEquals(csv.rates().sweptAreaM2(), task.rates().sweptAreaM2(), areaM2);
        assertEquals(csv.coverage().coveredAreaM2(), task.coverage().coveredAreaM2(), areaM2);
        assertEquals(csv.coverage().overlapAreaM2(), task.coverage().overlapAreaM2(), areaM2);
        for (int r = 0; r < DRAWN.rows(); r++) {
            RowTotals a = csv.rates().rows().get(r);
            RowTotals b = task.rates().rows().get(r);
            assertEquals(a.products().get(0).volumeL(), b.products().get(0).volumeL(), flowL, "row " + (r + 1));
            assertEquals(a.sweptAreaM2(), b.sweptAreaM2(), areaM2 / DRAWN.rows(), "row " + (r + 1));
        }
        assertEquals(
                csv.diagnosis().findings().size(), task.diagnosis().findings().size());
        assertEquals(
                List.of("rig", "task data", "task data"),
                task.setups().stream().map(setup -> setup.role()).toList());
    }

    @Test
    void flows_made_from_rates_are_those_that_were_metered() {
        SimResult run = job().run();
        LogOptions options = new LogOptions(Map.of(), List.of("uan"), DRAWN.rows());
        LogTable metered = LogReader.read(List.of(TaskDataWriter.of(run).writeTo(folder.resolve("flows"))), options)
                .table();
        LogTable made = LogReader.read(List.of(TaskDataWriter.withRates(run).writeTo(folder.resolve("rates"))), options)
                .table();
        assertEquals(metered.records(), made.records());
        int compared = 0;
        for (int i = 0; i < metered.records(); i++) {
            if (metered.down(i) != 1 || metered.speedMps(i) < 0.2) {
                continue;
            }
            for (int r = 0; r < DRAWN.rows(); r++) {
                // Half of 1 mm3/s, and half of 0.01 mm3/m2 over 30 in at 3 m/s: 1.1e-8 L/s.
                assertEquals(metered.flowLPerS(0, r, i), made.flowLPerS(0, r, i), 0.5e-6 + 1.2e-8);
                compared++;
            }
        }
        assertTrue(compared > 10_000, compared + " flows");
    }
}
