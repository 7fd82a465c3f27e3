package io.rowledger.results;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.finding.Finding;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.Nutrients.OfProduct;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.common.FindingFacts;
import io.rowledger.report.common.FindingProducts;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.ProductSums;
import io.rowledger.rig.Product;
import io.rowledger.track.Pass;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * {@code summary.json}: everything a program may want, SI, units in the names, null where unknown, keys in a fixed order.
 * Its schema is {@code /schema/rowledger-summary-1.schema.json} in the jar.
 */
public final class SummaryJson {
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-summary/1";

    private final Analysis a;
    private final JsonGenerator json;

    private SummaryJson(Analysis a, JsonGenerator json) {
        this.a = a;
        this.json = json;
    }

    public static void write(Analysis a, String programVersion, OutputStream out) throws IOException {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        printer.indentObjectsWith(lines);
        printer.indentArraysWith(lines);
        try (JsonGenerator json = new JsonFactory().createGenerator(out)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.setPrettyPrinter(printer);
            new SummaryJson(a, json).document(programVersion);
            json.writeRaw('\n');
        }
    }

    private void document(String programVersion) throws IOException {
        json.writeStartObject();
        json.writeStringField("schema", SCHEMA_ID);
        json.writeStringField("program_version", programVersion);
        inputs();
        JobJson.write(json, a.rig().job());
        field();
        rows();
        passes();
        findings();
        shutOffs();
        SetupJson.summary(json, a);
        json.writeArrayFieldStart("notes");
        for (String note : a.notes()) {
            json.writeString(note);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void inputs() throws IOException {
        json.writeArrayFieldStart("inputs");
        for (LogSource source : a.log().sources()) {
            json.writeStartObject();
            json.writeStringField("file", source.file());
            json.writeStringField("sha256", source.sha256());
            json.writeNumberField("records", source.records());
            json.writeNumberField("used", source.used());
            json.writeObjectFieldStart("dropped");
            json.writeNumberField("no_fix", source.dropped().noFix());
            json.writeNumberField("duplicate", source.dropped().duplicate());
            json.writeNumberField("out_of_order", source.dropped().outOfOrder());
            json.writeNumberField("jump", source.dropped().jump());
            json.writeNumberField("frozen", source.dropped().frozen());
            json.writeNumberField("unreadable", source.dropped().unreadable());
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void field() throws IOException {
        Coverage c = a.coverage();
        json.writeObjectFieldStart("field");
        json.writeStringField("start", JsonNumbers.time(JobTimes.startS(a)));
        json.writeStringField("end", JsonNumbers.time(JobTimes.endS(a)));
        area("swept_area_m2", a.rates().sweptAreaM2());
        area("covered_area_m2", c.coveredAreaM2());
        area("overlap_area_m2", c.overlapAreaM2());
        area("missed_area_m2", c.skipAreaM2());
        area("boundary_area_m2", c.boundaryAreaM2());
        area("outside_boundary_area_m2", c.outsideBoundaryM2());
        area("unsettled_area_m2", a.rates().unsettledAreaM2());
        json.writeObjectFieldStart("products");
        List<Product> products = a.rig().products();
        for (int p = 0; p < products.size(); p++) {
            json.writeObjectFieldStart(products.get(p).key());
            product(p, products.get(p));
            json.writeEndObject();
        }
        json.writeEndObject();
        KeepOutJson.field(a, json);
        if (a.zones() != null) {
            ZonesJson.write(a.zones(), products, json);
        }
        json.writeFieldName("intervals");
        IntervalsJson.write(a, json);
        WhatIfJson.write(a, json);
        json.writeEndObject();
    }

    private void nutrients(OfProduct put) throws IOException {
        json.writeStringField("name", put.product().name());
        mass("mass_kg", put.massKg());
        mass("nitrogen_kg", put.kg().nitrogenKg());
        mass("phosphate_kg", put.kg().phosphateKg());
        mass("potash_kg", put.kg().potashKg());
        mass("sulfur_kg", put.kg().sulfurKg());
    }

    private void mass(String name, double massKg) throws IOException {
        JsonNumbers.field(json, name, massKg, JsonNumbers.NITROGEN_KG);
    }

    private void product(int p, Product product) throws IOException {
        ProductSums sums = ProductSums.of(a, p);
        ReceivedStatistics received = a.coverage().received().get(p);
        volume("volume_l", sums.volumeL());
        volume("target_volume_l", sums.targetVolumeL());
        rate("mean_rate_l_per_ha", received.meanRateLPerM2());
        nutrients(Nutrients.ofVolume(product, sums.volumeL()));
        pct("cv_pct", received.cvPct());
        pct("within_5_pct", received.within5Pct());
        pct("within_10_pct", received.within10Pct());
        pct("within_20_pct", received.within20Pct());
        pct("under_10_pct", received.underPct());
        pct("over_10_pct", received.overPct());
        volume("grid_volume_l", received.gridVolumeL());
        volume("log_volume_l", received.logVolumeL());
        volume("outside_work_volume_l", RatesBuilder.volumeOutsideWorkL(a.track(), a.delivery())[p]);
        // One more digit than other percentages: the law is a tenth of a percent.
        JsonNumbers.field(json, "conservation_error_pct", received.conservationError() * 100, 4);
    }

    private void rows() throws IOException {
        json.writeArrayFieldStart("rows");
        for (RowTotals row : a.rates().rows()) {
            json.writeStartObject();
            json.writeNumberField("row", row.row());
            area("swept_area_m2", row.sweptAreaM2());
            area("applied_area_m2", row.appliedAreaM2());
            pct("turn_error_mean_abs_pct", row.turn().meanAbs() * 100);
            pct("turn_error_max_over_pct", row.turn().maxOver() * 100);
            pct("turn_error_max_under_pct", row.turn().maxUnder() * 100);
            pct("turn_error_remaining_mean_abs_pct", row.turnRemaining().meanAbs() * 100);
            pct("turn_error_remaining_max_over_pct", row.turnRemaining().maxOver() * 100);
            pct("turn_error_remaining_max_under_pct", row.turnRemaining().maxUnder() * 100);
            json.writeObjectFieldStart("products");
            for (int p = 0; p < row.products().size(); p++) {
                RowTotals.ProductTotals product = row.products().get(p);
                json.writeObjectFieldStart(a.rig().products().get(p).key());
                volume("volume_l", product.volumeL());
                volume("target_volume_l", product.targetVolumeL());
                rate("mean_rate_l_per_ha", row.meanRateLPerM2(p));
                pct("deviation_pct", product.deviationPct());
                json.writeEndObject();
            }
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void passes() throws IOException {
        json.writeArrayFieldStart("passes");
        List<Pass> passes = a.track().passes();
        for (int i = 0; i < passes.size(); i++) {
            Pass pass = passes.get(i);
            PassTotals totals = a.rates().passes().get(i);
            json.writeStartObject();
            json.writeNumberField("pass", pass.number());
            json.writeStringField("start", JsonNumbers.time(pass.startS()));
            json.writeStringField("end", JsonNumbers.time(pass.endS()));
            JsonNumbers.field(json, "length_m", pass.lengthM(), JsonNumbers.LENGTH_M);
            area("swept_area_m2", totals.sweptAreaM2());
            json.writeObjectFieldStart("products");
            for (int p = 0; p < totals.volumeL().length; p++) {
                json.writeObjectFieldStart(a.rig().products().get(p).key());
                volume("volume_l", totals.volumeL()[p]);
                volume("target_volume_l", totals.targetVolumeL()[p]);
                json.writeEndObject();
            }
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void findings() throws IOException {
        json.writeArrayFieldStart("findings");
        for (int i = 0; i < a.findings().size(); i++) {
            Finding finding = a.findings().get(i);
            json.writeStartObject();
            json.writeStringField("product", FindingProducts.onlyKey(a, i));
            json.writeStringField("kind", finding.kind().jsonName());
            json.writeArrayFieldStart("rows");
            for (int row : finding.rows()) {
                json.writeNumber(row);
            }
            json.writeEndArray();
            json.writeStringField("from", JsonNumbers.time(finding.fromS()));
            json.writeStringField("to", JsonNumbers.time(finding.toS()));
            JsonNumbers.field(json, "confidence", finding.confidence(), 2);
            area("area_m2", finding.areaM2());
            volume("volume_l", finding.volumeL());
            JsonNumbers.field(json, "nitrogen_kg", finding.nitrogenKg(), JsonNumbers.NITROGEN_KG);
            IntervalsJson.finding(a, i, json);
            json.writeObjectFieldStart("where");
            JsonNumbers.field(json, "lat", finding.latDeg(), JsonNumbers.DEGREES);
            JsonNumbers.field(json, "lon", finding.lonDeg(), JsonNumbers.DEGREES);
            json.writeEndObject();
            json.writeStringField("evidence", FindingFacts.filed(finding.evidence()));
            json.writeStringField("rival", FindingFacts.filed(finding.alternative()));
            json.writeStringField("check", FindingFacts.filed(finding.check()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void shutOffs() throws IOException {
        ShutOffScore score = a.coverage().shutOffs();
        json.writeObjectFieldStart("shut_offs");
        area("off_over_covered_m2", score.offOverCoveredM2());
        area("off_over_bare_m2", score.offOverUncoveredM2());
        area("on_over_covered_m2", score.onOverCoveredM2());
        volume("saved_l", score.savedL());
        volume("skipped_l", score.skippedL());
        volume("doubled_l", score.overlapL());
        json.writeEndObject();
    }

    private void area(String name, double areaM2) throws IOException {
        JsonNumbers.field(json, name, areaM2, JsonNumbers.AREA_M2);
    }

    private void volume(String name, double volumeL) throws IOException {
        JsonNumbers.field(json, name, volumeL, JsonNumbers.VOLUME_L);
    }

    private void rate(String name, double rateLPerM2) throws IOException {
        JsonNumbers.field(json, name, rateLPerM2 * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
    }

    private void pct(String name, double percent) throws IOException {
        JsonNumbers.field(json, name, percent, JsonNumbers.PCT);
    }
}
