package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.report.common.RowHealth;
import io.rowledger.report.common.SavedDiagnosis;
import io.rowledger.report.common.SavedDiagnosis.ProductState;
import io.rowledger.report.common.SavedDiagnosis.SavedFinding;
import io.rowledger.report.compare.Matching;
import io.rowledger.report.compare.RowVerdict;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;

/**
 * {@code comparison.json}: findings gone, remaining, new and not tested, and every row before and after. Its schema is
 * {@code /schema/rowledger-comparison-1.schema.json} in the jar.
 */
public final class ComparisonJson {
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-comparison/1";

    private ComparisonJson() {}

    public static void write(SavedDiagnosis before, SavedDiagnosis after, String programVersion, OutputStream out)
            throws IOException {
        Matching matching = Matching.of(before, after);
        JsonFile.write(out, json -> {
            json.writeStringField("schema", SCHEMA_ID);
            json.writeStringField("program_version", programVersion);
            job(json, "before", before);
            job(json, "after", after);
            json.writeArrayFieldStart("gone");
            for (SavedFinding found : matching.gone()) {
                one(json, found);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("remaining");
            for (Matching.Pair pair : matching.remaining()) {
                json.writeStartObject();
                json.writeFieldName("before");
                one(json, pair.before());
                json.writeFieldName("after");
                one(json, pair.after());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("new");
            for (SavedFinding found : matching.fresh()) {
                one(json, found);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("not_tested");
            for (Matching.NotTested untested : matching.notTested()) {
                json.writeStartObject();
                json.writeFieldName("before");
                one(json, untested.before());
                json.writeStringField("why", untested.why());
                json.writeEndObject();
            }
            json.writeEndArray();
            products(json, before, after);
        });
    }

    private static void job(JsonGenerator json, String name, SavedDiagnosis job) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeStringField("field", job.field());
        json.writeStringField("rig", job.rig());
        json.writeStringField("start", JsonNumbers.time(job.startS()));
        json.writeStringField("end", JsonNumbers.time(job.endS()));
        json.writeEndObject();
    }

    private static void one(JsonGenerator json, SavedFinding found) throws IOException {
        json.writeStartObject();
        DiagnosisJson.finding(json, found);
        json.writeEndObject();
    }

    private static void products(JsonGenerator json, SavedDiagnosis before, SavedDiagnosis after) throws IOException {
        json.writeArrayFieldStart("products");
        for (ProductState state : after.products()) {
            for (ProductState old : before.products()) {
                if (!old.key().equals(state.key())) {
                    continue;
                }
                json.writeStartObject();
                json.writeStringField("product", state.key());
                json.writeArrayFieldStart("rows");
                for (int r = 0; r < state.rows().size(); r++) {
                    row(json, old.rows().get(r), state.rows().get(r));
                }
                json.writeEndArray();
                json.writeEndObject();
            }
        }
        json.writeEndArray();
    }

    private static void row(JsonGenerator json, RowHealth before, RowHealth after) throws IOException {
        json.writeStartObject();
        json.writeNumberField("row", after.row());
        json.writeObjectFieldStart("before");
        DiagnosisJson.health(json, before);
        json.writeEndObject();
        json.writeObjectFieldStart("after");
        DiagnosisJson.health(json, after);
        json.writeEndObject();
        json.writeStringField("verdict", RowVerdict.of(before, after).name().toLowerCase(Locale.ROOT));
        json.writeEndObject();
    }
}
