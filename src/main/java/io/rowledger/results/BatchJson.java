package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.report.season.SeasonJob;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * {@code batch-summary.json}: what became of each job, SI, null where unknown. Its schema is
 * {@code /schema/rowledger-batch-1.schema.json} in the jar.
 */
public final class BatchJson {
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-batch/1";

    private final JsonGenerator json;

    private BatchJson(JsonGenerator json) {
        this.json = json;
    }

    public static void write(List<BatchOutcome> outcomes, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(out, json -> {
            json.writeStringField("schema", SCHEMA_ID);
            json.writeStringField("program_version", programVersion);
            new BatchJson(json).document(outcomes);
        });
    }

    private void document(List<BatchOutcome> outcomes) throws IOException {
        json.writeObjectFieldStart("jobs_by_result");
        for (Result result : Result.values()) {
            json.writeNumberField(
                    result.jsonName(),
                    outcomes.stream()
                            .filter(outcome -> outcome.result() == result)
                            .count());
        }
        json.writeEndObject();
        json.writeArrayFieldStart("jobs");
        for (BatchOutcome outcome : outcomes) {
            job(outcome);
        }
        json.writeEndArray();
    }

    private void job(BatchOutcome outcome) throws IOException {
        json.writeStartObject();
        json.writeStringField("job", outcome.name());
        json.writeStringField("result", outcome.result().jsonName());
        json.writeNumberField("logs", outcome.logs());
        json.writeStringField("put_together", outcome.how());
        json.writeStringField("message", outcome.message());
        json.writeStringField("results", outcome.results());
        json.writeFieldName("figures");
        if (outcome.figures() == null) {
            json.writeNull();
        } else {
            figures(outcome.figures());
        }
        json.writeEndObject();
    }

    private void figures(BatchFigures of) throws IOException {
        json.writeStartObject();
        json.writeStringField("start", JsonNumbers.time(of.job().startS()));
        json.writeStringField("end", JsonNumbers.time(of.job().endS()));
        JsonNumbers.field(json, "covered_area_m2", of.job().coveredM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "missed_area_m2", of.skipM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "overlap_area_m2", of.overlapM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "volume_l", of.volumeL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "nitrogen_kg", of.job().nitrogenKg(), JsonNumbers.NITROGEN_KG);
        json.writeObjectFieldStart("products");
        for (SeasonJob.Put put : of.job().products()) {
            json.writeObjectFieldStart(put.key());
            json.writeStringField("name", put.name());
            JsonNumbers.field(json, "volume_l", put.volumeL(), JsonNumbers.VOLUME_L);
            JsonNumbers.field(json, "nitrogen_kg", put.kg().nitrogenKg(), JsonNumbers.NITROGEN_KG);
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeArrayFieldStart("findings");
        for (BatchFigures.Fault fault : of.findings()) {
            json.writeStartObject();
            json.writeStringField("kind", fault.kind().jsonName());
            json.writeArrayFieldStart("rows");
            for (int row : fault.rows()) {
                json.writeNumber(row);
            }
            json.writeEndArray();
            JsonNumbers.field(json, "confidence", fault.confidence(), 2);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
