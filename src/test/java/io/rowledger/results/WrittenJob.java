package io.rowledger.results;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.document.pdf.Paper;
import io.rowledger.output.Reports;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;

/** A simulated job of two products with a row that plugs, and every file the program writes of it. */
public final class WrittenJob {
    public final SimResult job;
    public final Analysis analysis;
    final Path out;

    public WrittenJob(Path folder) {
        SimRig rig = SimRig.drawn(12);
        job = new Scenario(41, rig, PassPlan.rectangle(200, 6, 1, rig.widthM()))
                .products(SimProduct.uan32(30), SimProduct.ats(6))
                .fault(SimFault.of(SimFault.Kind.PLUGGED, 7, 260, 0))
                .withoutGround()
                .run()
                .writeTo(folder);
        JobFiles files = new JobFiles(
                List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), folder.resolve("boundary.geojson"));
        analysis = Pipeline.analyze(files, 2, Progress.SILENT);
        out = folder.resolve("out");
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        Reports.write(analysis, options, out, Set.of(), List.of(), 2);
    }

    public Path layer(String name) {
        return out.resolve("layers").resolve(name);
    }

    /** The features of a GeoJSON layer. */
    public JsonNode features(String name) throws IOException {
        return new ObjectMapper().readTree(layer(name).toFile()).get("features");
    }
}
