package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.CorrectedRun;
import io.rowledger.analysis.SetupReview;
import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.rig.RigCorrection;
import java.io.IOException;
import java.io.OutputStream;

/**
 * {@code setup-check.json}: what the log says about the setup, SI, null where it can't tell. Its schema is
 * {@code /schema/rowledger-setup-check-1.schema.json} in the jar.
 */
public final class SetupJson {
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-setup-check/1";

    /** A millimetre, a millisecond. */
    private static final int FINE = 3;

    private SetupJson() {}

    public static void write(Analysis a, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(out, json -> {
            json.writeStringField("schema", SCHEMA_ID);
            json.writeStringField("program_version", programVersion);
            json.writeArrayFieldStart("measures");
            for (SetupMeasurement m : a.setup().check().measurements()) {
                json.writeStartObject();
                figures(json, a, m);
                RigCorrection.Line line = a.setup().line(m);
                if (line == null) {
                    json.writeNullField("rig_line");
                    json.writeNullField("written_before");
                    json.writeNullField("written_after");
                } else {
                    json.writeNumberField("rig_line", line.line());
                    json.writeStringField("written_before", line.before());
                    json.writeStringField("written_after", line.after());
                }
                json.writeStringField("basis", m.basis());
                json.writeStringField("rival", m.alternative());
                json.writeEndObject();
            }
            json.writeEndArray();
            corrected(json, a);
        });
    }

    /** The short form that {@code summary.json} holds, as a field of an open object. */
    static void summary(JsonGenerator json, Analysis a) throws IOException {
        json.writeObjectFieldStart("setup");
        json.writeArrayFieldStart("measures");
        for (SetupMeasurement m : a.setup().check().measurements()) {
            json.writeStartObject();
            figures(json, a, m);
            json.writeEndObject();
        }
        json.writeEndArray();
        corrected(json, a);
        json.writeEndObject();
    }

    private static void figures(JsonGenerator json, Analysis a, SetupMeasurement m) throws IOException {
        json.writeStringField("measure", m.parameter().jsonName());
        if (m.product() < 0) {
            json.writeNullField("product");
        } else {
            json.writeStringField("product", a.rig().products().get(m.product()).key());
        }
        json.writeStringField("rig_key", m.key());
        json.writeStringField("unit", unit(m.parameter()));
        JsonNumbers.field(json, "rig_value", m.given(), FINE);
        JsonNumbers.field(json, "estimate", m.estimate(), FINE);
        JsonNumbers.field(json, "low_90", m.low(), FINE);
        JsonNumbers.field(json, "high_90", m.high(), FINE);
        json.writeBooleanField("differs", m.differs());
    }

    private static String unit(SetupParameter what) {
        return switch (what) {
            case FLOW_LAG -> "s";
            case OUTSIDE_SHARE, ROW_ORDER -> "1";
            default -> "m";
        };
    }

    private static void corrected(JsonGenerator json, Analysis a) throws IOException {
        CorrectedRun run = a.setup().corrected();
        if (run == null) {
            json.writeNullField("corrected");
            return;
        }
        json.writeObjectFieldStart("corrected");
        json.writeStringField("rig_file", SetupReview.CORRECTED_FILE);
        areas(json, "before", a.coverage());
        areas(json, "after", run.coverage());
        json.writeEndObject();
    }

    private static void areas(JsonGenerator json, String name, Coverage c) throws IOException {
        json.writeObjectFieldStart(name);
        JsonNumbers.field(json, "covered_area_m2", c.coveredAreaM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "overlap_area_m2", c.overlapAreaM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "missed_area_m2", c.skipAreaM2(), JsonNumbers.AREA_M2);
        json.writeEndObject();
    }
}
