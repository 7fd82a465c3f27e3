package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.analysis.Analysis;
import io.rowledger.report.common.FindingUncertainty;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import io.rowledger.units.Factor;
import java.io.IOException;

/** {@code field.intervals} of the summary: low and high of every figure that has them, and what they rest on. */
final class IntervalsJson {
    private final Analysis a;
    private final JsonGenerator json;

    private IntervalsJson(Analysis a, JsonGenerator json) {
        this.a = a;
        this.json = json;
    }

    static void write(Analysis a, JsonGenerator json) throws IOException {
        new IntervalsJson(a, json).object();
    }

    private void object() throws IOException {
        Intervals in = a.intervals();
        json.writeStartObject();
        json.writeNumberField("level_pct", Intervals.LEVEL_PCT);
        interval("swept_area_m2", in.sweptAreaM2(), 1, JsonNumbers.AREA_M2);
        interval("covered_area_m2", in.coveredAreaM2(), 1, JsonNumbers.AREA_M2);
        interval("overlap_area_m2", in.overlapAreaM2(), 1, JsonNumbers.AREA_M2);
        interval("missed_area_m2", in.skipAreaM2(), 1, JsonNumbers.AREA_M2);
        interval("boundary_area_m2", in.boundaryAreaM2(), 1, JsonNumbers.AREA_M2);
        interval("nitrogen_kg", in.nitrogenKg(), 1, JsonNumbers.NITROGEN_KG);
        interval("nitrogen_kg_per_ha", in.nitrogenKgPerM2(), Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < in.products().size(); p++) {
            Intervals.OfProduct product = in.products().get(p);
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            interval("volume_l", product.volumeL(), 1, JsonNumbers.VOLUME_L);
            interval(
                    "mean_rate_l_per_ha", product.meanRateLPerM2(), Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
            interval("nitrogen_kg", product.nitrogenKg(), 1, JsonNumbers.NITROGEN_KG);
            interval(
                    "nitrogen_kg_per_ha",
                    product.nitrogenKgPerM2(),
                    Factor.SQUARE_METRES_PER_HECTARE,
                    JsonNumbers.RATE);
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeArrayFieldStart("rows");
        for (Intervals.OfRow row : in.rows()) {
            row(row);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("passes");
        for (int i = 0; i < in.passes().size(); i++) {
            pass(a.track().passes().get(i).number(), in.passes().get(i));
        }
        json.writeEndArray();
        basis(in.basis());
        json.writeEndObject();
    }

    private void row(Intervals.OfRow row) throws IOException {
        json.writeStartObject();
        json.writeNumberField("row", row.row());
        interval("swept_area_m2", row.sweptAreaM2(), 1, JsonNumbers.AREA_M2);
        interval("applied_area_m2", row.appliedAreaM2(), 1, JsonNumbers.AREA_M2);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < row.products().size(); p++) {
            Intervals.OfRowProduct product = row.products().get(p);
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            interval("volume_l", product.volumeL(), 1, JsonNumbers.VOLUME_L);
            interval(
                    "mean_rate_l_per_ha", product.meanRateLPerM2(), Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
            interval("deviation_pct", product.deviationPct(), 1, JsonNumbers.PCT);
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private void pass(int number, Intervals.OfPass pass) throws IOException {
        json.writeStartObject();
        json.writeNumberField("pass", number);
        interval("swept_area_m2", pass.sweptAreaM2(), 1, JsonNumbers.AREA_M2);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < pass.products().size(); p++) {
            Intervals.OfPassProduct product = pass.products().get(p);
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            interval("volume_l", product.volumeL(), 1, JsonNumbers.VOLUME_L);
            interval("deviation_pct", product.deviationPct(), 1, JsonNumbers.PCT);
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    /** {@code intervals} of finding i. */
    static void finding(Analysis a, int i, JsonGenerator json) throws IOException {
        IntervalsJson out = new IntervalsJson(a, json);
        FindingUncertainty doubt = FindingUncertainty.of(a, i);
        json.writeObjectFieldStart("intervals");
        out.interval("area_m2", doubt.areaM2(), 1, JsonNumbers.AREA_M2);
        out.interval("volume_l", doubt.volumeL(), 1, JsonNumbers.VOLUME_L);
        out.interval("nitrogen_kg", doubt.nitrogenKg(), 1, JsonNumbers.NITROGEN_KG);
        json.writeEndObject();
    }

    private void basis(UncertaintyBudget basis) throws IOException {
        json.writeObjectFieldStart("rests_on");
        JsonNumbers.field(json, "setup_tolerance_m", basis.toleranceM(), 4);
        json.writeBooleanField("setup_tolerance_given", basis.toleranceGiven());
        json.writeObjectFieldStart("products");
        for (int p = 0; p < basis.liquids().size(); p++) {
            UncertaintyBudget.Liquid liquid = basis.liquids().get(p);
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            JsonNumbers.field(json, "meter_accuracy_pct", liquid.meterAccuracy() * 100, JsonNumbers.PCT);
            json.writeBooleanField("meter_accuracy_given", liquid.meterGiven());
            JsonNumbers.field(json, "density_accuracy_pct", liquid.densityAccuracy() * 100, JsonNumbers.PCT);
            json.writeBooleanField("density_accuracy_given", liquid.densityGiven());
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeArrayFieldStart("fixes");
        for (UncertaintyBudget.Fix fix : basis.fixes()) {
            json.writeStartObject();
            if (fix.digit() > 8) {
                json.writeNullField("fix");
            } else {
                json.writeNumberField("fix", fix.digit());
            }
            json.writeNumberField("records", fix.records());
            JsonNumbers.field(json, "noise_m", fix.noiseM(), 4);
            JsonNumbers.field(json, "drift_m", fix.driftM(), 4);
            json.writeEndObject();
        }
        json.writeEndArray();
        JsonNumbers.field(json, "drift_time_constant_s", basis.driftTauS(), 0);
        JsonNumbers.field(json, "record_interval_s", basis.intervalS(), 3);
        json.writeNumberField("draws", basis.draws());
        json.writeStringField("seed", Long.toUnsignedString(basis.seed(), 16));
        json.writeEndObject();
    }

    private void interval(String name, Interval interval, double factor, int decimals) throws IOException {
        if (!interval.known()) {
            json.writeNullField(name);
            return;
        }
        json.writeObjectFieldStart(name);
        JsonNumbers.field(json, "low", interval.low() * factor, decimals);
        JsonNumbers.field(json, "high", interval.high() * factor, decimals);
        json.writeEndObject();
    }
}
