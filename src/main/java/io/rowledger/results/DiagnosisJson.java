package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.FindingFacts;
import io.rowledger.report.common.RowHealth;
import io.rowledger.report.common.RowPicture;
import io.rowledger.report.common.SavedDiagnosis;
import io.rowledger.report.common.SavedDiagnosis.ProductState;
import io.rowledger.report.common.SavedDiagnosis.SavedFinding;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * {@code diagnosis.json}: what the rows were like and what was found, for programs and for {@code rowledger compare}. SI,
 * units in the names, null where unknown. Its schema is {@code /schema/rowledger-diagnosis-1.schema.json} in the jar.
 */
public final class DiagnosisJson {
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-diagnosis/1";

    /** Ratios to a tenth of a percent. */
    private static final int RATIO = 4;
    /** Deviations in the picture, percent: finer than a colour. */
    private static final int PICTURE_PCT = 1;

    private DiagnosisJson() {}

    public static void write(SavedDiagnosis d, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(out, json -> {
            json.writeStringField("schema", SCHEMA_ID);
            json.writeStringField("program_version", programVersion);
            json.writeStringField("field", d.field());
            json.writeStringField("rig", d.rig());
            json.writeStringField("zone", d.zone());
            json.writeStringField("start", JsonNumbers.time(d.startS()));
            json.writeStringField("end", JsonNumbers.time(d.endS()));
            json.writeNumberField("rows", d.rows());
            JsonNumbers.field(json, "fastest_pass_m_per_s", d.fastestPassMps(), 3);
            json.writeArrayFieldStart("products");
            for (ProductState product : d.products()) {
                product(json, product, d.startS());
            }
            json.writeEndArray();
            json.writeArrayFieldStart("findings");
            for (SavedFinding found : d.findings()) {
                json.writeStartObject();
                finding(json, found);
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("notes");
            for (String note : d.notes()) {
                json.writeString(note);
            }
            json.writeEndArray();
        });
    }

    private static void product(JsonGenerator json, ProductState product, double startS) throws IOException {
        json.writeStartObject();
        json.writeStringField("product", product.key());
        json.writeStringField("name", product.name());
        json.writeArrayFieldStart("rows");
        for (RowHealth row : product.rows()) {
            json.writeStartObject();
            json.writeNumberField("row", row.row());
            health(json, row);
            healthy(json, product.baselines(), row.row());
            json.writeEndObject();
        }
        json.writeEndArray();
        picture(json, product.picture(), startS);
        json.writeEndObject();
    }

    /** The fields of a row's health into an open object. */
    static void health(JsonGenerator json, RowHealth row) throws IOException {
        JsonNumbers.field(json, "median_deviation_pct", row.medianDeviation() * 100, JsonNumbers.PCT);
        JsonNumbers.field(json, "beyond_10_pct_share_pct", row.offShare() * 100, JsonNumbers.PCT);
        JsonNumbers.field(json, "judged_s", row.evaluatedS(), 1);
    }

    private static void healthy(JsonGenerator json, List<RowBaseline> baselines, int row) throws IOException {
        for (RowBaseline baseline : baselines) {
            if (baseline.row() == row) {
                json.writeObjectFieldStart("healthy");
                JsonNumbers.field(json, "median_ratio", baseline.medianRatio(), RATIO);
                JsonNumbers.field(json, "spread_ratio", baseline.spread(), RATIO);
                JsonNumbers.field(json, "response_s", baseline.responseS(), 2);
                JsonNumbers.field(json, "judged_s", baseline.evaluatedS(), 1);
                json.writeBooleanField("outlier", baseline.outlier());
                json.writeEndObject();
                return;
            }
        }
        json.writeNullField("healthy");
    }

    private static void picture(JsonGenerator json, RowPicture picture, double startS) throws IOException {
        json.writeObjectFieldStart("picture");
        json.writeArrayFieldStart("from_s");
        for (double time : picture.startS()) {
            number(json, time - startS, 2);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("to_s");
        for (double time : picture.endS()) {
            number(json, time - startS, 2);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("pass");
        for (int pass : picture.pass()) {
            json.writeNumber(pass);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("deviation_pct");
        for (float[] row : picture.deviation()) {
            json.writeStartArray();
            for (float deviation : row) {
                number(json, deviation * 100.0, PICTURE_PCT);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, double value, int decimals) throws IOException {
        String text = JsonNumbers.text(value, decimals);
        if (text.isEmpty()) {
            json.writeNull();
        } else {
            json.writeNumber(text);
        }
    }

    /** The fields of a finding into an open object. */
    static void finding(JsonGenerator json, SavedFinding found) throws IOException {
        Finding finding = found.finding();
        json.writeStringField("product", found.product());
        json.writeStringField("kind", finding.kind().jsonName());
        json.writeArrayFieldStart("rows");
        for (int row : finding.rows()) {
            json.writeNumber(row);
        }
        json.writeEndArray();
        json.writeStringField("from", JsonNumbers.time(finding.fromS()));
        json.writeStringField("to", JsonNumbers.time(finding.toS()));
        JsonNumbers.field(json, "confidence", finding.confidence(), 2);
        JsonNumbers.field(json, "area_m2", finding.areaM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "volume_l", finding.volumeL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "nitrogen_kg", finding.nitrogenKg(), JsonNumbers.NITROGEN_KG);
        json.writeObjectFieldStart("where");
        JsonNumbers.field(json, "lat", finding.latDeg(), JsonNumbers.DEGREES);
        JsonNumbers.field(json, "lon", finding.lonDeg(), JsonNumbers.DEGREES);
        json.writeEndObject();
        json.writeStringField("evidence", FindingFacts.filed(finding.evidence()));
        json.writeStringField("rival", FindingFacts.filed(finding.alternative()));
        json.writeStringField("check", FindingFacts.filed(finding.check()));
        json.writeArrayFieldStart("figures");
        for (Figure figure : found.figures()) {
            json.writeStartObject();
            json.writeStringField("name", figure.name());
            JsonNumbers.field(json, "value", figure.value(), 4);
            json.writeStringField("unit", figure.unit());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
