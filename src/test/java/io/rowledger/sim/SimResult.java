package io.rowledger.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A finished run: what was logged, and what was true. */
public final class SimResult {
    private final Scenario scenario;
    private final List<SimRecord> records;
    private final Truth truth;
    private final FieldPlan plan;

    SimResult(Scenario scenario, List<SimRecord> records, Truth truth, FieldPlan plan) {
        this.scenario = scenario;
        this.records = records;
        this.truth = truth;
        this.plan = plan;
    }

    /** What really happened. */
    public Truth truth() {
        return truth;
    }

    /** What was simulated. */
    public Scenario scenario() {
        return scenario;
    }

    /** The plan that was driven. */
    public FieldPlan plan() {
        return plan;
    }

    /** Number of records in the log. */
    public int records() {
        return records.size();
    }

    /** Time of a record since the first, s. */
    public double timeS(int record) {
        return records.get(record).timeS;
    }

    /** What the log shows of a row (from 1 at the left) in a record, L/s. */
    public double flowLPerS(int record, int product, int row) {
        return records.get(record).flowLPerS[product][row - 1];
    }

    /** True if the bar was down in a record. */
    public boolean working(int record) {
        return records.get(record).down;
    }

    /** True if the log has this column. */
    public boolean logs(LogFormat.Column column) {
        return scenario.format().has(column);
    }

    /** Writes {@code log.csv}, {@code rig.yaml} and, where there is one, {@code boundary.geojson}. */
    public SimResult writeTo(Path folder) {
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("log.csv"), logText());
            Files.writeString(folder.resolve("rig.yaml"), rigText());
            if (plan.boundary() != null) {
                Files.writeString(folder.resolve("boundary.geojson"), boundaryText());
            }
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The records, for other writers. */
    List<SimRecord> log() {
        return records;
    }

    /** The log as text, in the scenario's format. */
    public String logText() {
        StringBuilder text = new StringBuilder(records.size() * 256 + 1024);
        try {
            log(text, 0, records.size());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** A part of the log, header and records {@code from} (inclusive) to {@code to} (exclusive). */
    public String logText(int from, int to) {
        StringBuilder text = new StringBuilder((to - from) * 256 + 1024);
        try {
            log(text, from, to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private void log(Appendable out, int from, int to) throws IOException {
        LogWriter writer = new LogWriter(scenario, out);
        for (SimRecord record : records.subList(from, to)) {
            writer.write(record);
        }
    }

    /** Writes the log alone. */
    public void writeLog(Path file) {
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            log(out, 0, records.size());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rig file. */
    public String rigText() {
        return SetupWriter.rigYaml(scenario);
    }

    /** The boundary as a GeoJSON feature collection, or null. */
    public String boundaryText() {
        return plan.boundary() == null ? null : SetupWriter.boundaryGeoJson(scenario, plan.boundary());
    }
}
