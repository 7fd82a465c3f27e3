package io.rowledger.results;

import com.fasterxml.jackson.databind.JsonNode;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.report.season.JobFinding;
import io.rowledger.report.season.SeasonJob;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** {@code batch-summary.json}: what became of each job, in SI. */
public record BatchJson(String schema, String programVersion, Map<String, Integer> jobsByResult, List<Job> jobs) {

    /** Whether a folder has a summary of a batch in it that this program wrote. */
    public static boolean isIn(Path folder) {
        try {
            JsonFile.read(folder, ResultFile.BATCH, JsonNode.class);
            return true;
        } catch (UnusableInputException e) {
            return false;
        }
    }

    /** Writes the outcomes of a batch. */
    public static void write(List<BatchOutcome> outcomes, String programVersion, OutputStream out) throws IOException {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (Result result : Result.values()) {
            counts.put(result.jsonName(), 0);
        }
        outcomes.forEach(outcome -> counts.merge(outcome.result().jsonName(), 1, Integer::sum));
        JsonFile.write(
                new BatchJson(
                        ResultFile.BATCH.schemaId(),
                        programVersion,
                        counts,
                        outcomes.stream().map(Job::of).toList()),
                out);
    }

    /**
     * One job.
     *
     * @param assembly how it was put together from files, a sentence; empty where it could not be
     * @param message why it was skipped or failed; empty where it was done
     * @param results folder of its results, or null
     */
    record Job(
            String job,
            String result,
            int logs,
            String assembly,
            String message,
            @OrNull @Nullable String results,
            @OrNull @Nullable Figures figures) {
        static Job of(BatchOutcome outcome) {
            BatchFigures figures = outcome.figures();
            return new Job(
                    outcome.name(),
                    outcome.result().jsonName(),
                    outcome.logs(),
                    outcome.how(),
                    outcome.message(),
                    outcome.results(),
                    figures == null ? null : Figures.of(figures));
        }
    }

    /** The figures of a job. */
    record Figures(
            @OrNull @Nullable Instant start,
            @OrNull @Nullable Instant end,
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double skipAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double overlapAreaM2,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            Map<String, OfProduct> products,
            List<Found> findings) {
        static Figures of(BatchFigures of) {
            Map<String, OfProduct> products = new LinkedHashMap<>();
            for (SeasonJob.AppliedProduct put : of.job().products()) {
                products.put(
                        put.key(),
                        new OfProduct(put.name(), put.volumeL(), put.kg().nitrogenKg()));
            }
            return new Figures(
                    JsonNumbers.instant(of.job().startS()),
                    JsonNumbers.instant(of.job().endS()),
                    of.job().coveredM2(),
                    of.skipM2(),
                    of.overlapM2(),
                    of.volumeL(),
                    of.job().nitrogenKg(),
                    products,
                    of.findings().stream().map(Found::of).toList());
        }
    }

    /** One product of a job. */
    record OfProduct(
            String name,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg) {}

    /** A finding of a job. */
    record Found(
            String kind,
            List<Integer> rows,
            @Decimals(FindingJson.CONFIDENCE) double confidence) {
        static Found of(JobFinding fault) {
            return new Found(fault.kind().jsonName(), fault.rows(), fault.confidence());
        }
    }
}
