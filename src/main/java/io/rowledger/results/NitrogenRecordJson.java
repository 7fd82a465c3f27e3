package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.InputFile;
import io.rowledger.coverage.Coverage;
import io.rowledger.log.source.LogSource;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.record.NitrogenFigures;
import io.rowledger.report.record.NitrogenRecord;
import io.rowledger.report.record.NitrogenRecord.Missing;
import io.rowledger.rig.Amount;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.rig.LoadTicket;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * {@code nitrogen-record.json}: the record for programs, SI, units in the names, null where unknown; what the user entered
 * stands whole and as entered. Its schema is {@code /schema/rowledger-nitrogen-record-1.schema.json} in the jar. Files go by
 * their names alone: the same files in another folder make the same record.
 */
public final class NitrogenRecordJson {
    /** Its name in the results and inside the PDF. */
    public static final String FILE = "nitrogen-record.json";
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-nitrogen-record/1";

    private final Analysis a;
    private final NitrogenFigures figures;
    private final JsonGenerator json;

    private NitrogenRecordJson(Analysis a, JsonGenerator json) {
        this.a = a;
        this.figures = NitrogenFigures.of(a);
        this.json = json;
    }

    public static void write(Analysis a, NitrogenRecord record, ReportOptions options, OutputStream out)
            throws IOException {
        JsonFile.write(out, json -> new NitrogenRecordJson(a, json).document(record, options));
    }

    private void document(NitrogenRecord record, ReportOptions options) throws IOException {
        json.writeStringField("schema", SCHEMA_ID);
        json.writeStringField("program_version", options.programVersion());
        json.writeStringField("start", JsonNumbers.time(JobTimes.startS(a)));
        json.writeStringField("end", JsonNumbers.time(JobTimes.endS(a)));
        json.writeStringField("zone", options.zone().getId());
        entered();
        json.writeArrayFieldStart("not_recorded");
        for (Missing missing : record.missing()) {
            json.writeStartObject();
            json.writeStringField("item", missing.item());
            json.writeStringField("asked_for_by", missing.rules());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("products");
        for (int p = 0; p < a.rig().products().size(); p++) {
            product(p, a.rig().products().get(p));
        }
        json.writeEndArray();
        tickets();
        nitrogen();
        ground();
        KeepOutJson.field(a, json);
        if (a.zones() != null) {
            ZonesJson.write(a.zones(), a.rig().products(), json);
        }
        machine(a.rig());
        inputs();
        json.writeStringField("command", record.basis().command());
        texts("notes", record.basis().notes());
        texts("cautions", record.cautions());
    }

    private void texts(String name, Iterable<String> texts) throws IOException {
        json.writeArrayFieldStart(name);
        for (String text : texts) {
            json.writeString(text);
        }
        json.writeEndArray();
    }

    private void entered() throws IOException {
        json.writeObjectFieldStart("entered_by_user");
        for (Map.Entry<String, String> fact : a.rig().job().facts().entrySet()) {
            json.writeStringField(fact.getKey(), fact.getValue());
        }
        json.writeEndObject();
    }

    private void product(int p, Product product) throws IOException {
        double volumeL = ProductSums.of(a, p).volumeL();
        double coveredHa = a.coverage().coveredAreaM2() / Factor.SQUARE_METRES_PER_HECTARE;
        double massKg = volumeL * product.densityKgPerL();
        json.writeStartObject();
        json.writeStringField("key", product.key());
        json.writeStringField("name", product.name());
        JsonNumbers.field(json, "density_kg_per_l", product.densityKgPerL(), 6);
        JsonNumbers.field(json, "density_at_c", product.densityAtC(), 2);
        JsonNumbers.field(json, "nitrogen_fraction", product.nitrogenFraction(), 5);
        JsonNumbers.field(json, "phosphate_fraction", product.phosphateFraction(), 5);
        JsonNumbers.field(json, "potash_fraction", product.potashFraction(), 5);
        JsonNumbers.field(json, "sulfur_fraction", product.sulfurFraction(), 5);
        JsonNumbers.field(json, "volume_l", volumeL, JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "mean_rate_l_per_ha", volumeL / coveredHa, JsonNumbers.RATE);
        mass("nitrogen_kg", massKg * product.nitrogenFraction());
        mass("phosphate_kg", massKg * product.phosphateFraction());
        mass("potash_kg", massKg * product.potashFraction());
        mass("sulfur_kg", massKg * product.sulfurFraction());
        amount("ordered", a.rig().job().order().get(product.key()));
        json.writeEndObject();
    }

    private void amount(String name, @Nullable Amount amount) throws IOException {
        json.writeFieldName(name);
        if (amount == null) {
            json.writeNull();
            return;
        }
        json.writeStartObject();
        JsonNumbers.field(json, "volume_l", amount.volumeL(), JsonNumbers.VOLUME_L);
        mass("mass_kg", amount.massKg());
        JsonNumbers.field(json, "density_kg_per_l", amount.densityKgPerL(), 6);
        json.writeStringField("entered", amount.entered());
        json.writeEndObject();
    }

    private void tickets() throws IOException {
        json.writeArrayFieldStart("load_tickets");
        for (LoadTicket ticket : a.rig().job().tickets()) {
            json.writeStartObject();
            json.writeStringField("number", ticket.number());
            json.writeStringField("date", ticket.date());
            json.writeStringField("product", ticket.product());
            amount("amount", ticket.amount());
            JsonNumbers.field(json, "temperature_c", ticket.temperatureC(), 2);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void nitrogen() throws IOException {
        Job job = a.rig().job();
        json.writeObjectFieldStart("nitrogen");
        mass("job_kg", figures.jobKg());
        perHa("job_kg_per_ha", figures.jobKgPerM2());
        perHa("job_kg_per_ha_low", a.intervals().nitrogenKgPerM2().low());
        perHa("job_kg_per_ha_high", a.intervals().nitrogenKgPerM2().high());
        json.writeArrayFieldStart("earlier");
        for (EarlierApplication earlier : job.earlier()) {
            json.writeStartObject();
            json.writeStringField("date", earlier.date());
            json.writeStringField("what", earlier.what());
            perHa("nitrogen_kg_per_ha", earlier.nitrogenKgPerM2());
            perHa("phosphate_kg_per_ha", earlier.phosphateKgPerM2());
            perHa("potash_kg_per_ha", earlier.potashKgPerM2());
            perHa("sulfur_kg_per_ha", earlier.sulfurKgPerM2());
            json.writeStringField("entered", earlier.entered());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("credits");
        for (Credit credit : job.credits()) {
            json.writeStartObject();
            json.writeStringField("what", credit.what());
            perHa("nitrogen_kg_per_ha", credit.nitrogenKgPerM2());
            json.writeStringField("entered", credit.entered());
            json.writeEndObject();
        }
        json.writeEndArray();
        perHa("total_kg_per_ha", figures.totalKgPerM2());
        perHa("plan_kg_per_ha", job.planKgPerM2());
        perHa("cap_kg_per_ha", job.capKgPerM2());
        json.writeFieldName("cap_exceeded");
        if (Double.isFinite(job.capKgPerM2()) && Double.isFinite(figures.totalKgPerM2())) {
            json.writeBoolean(figures.totalKgPerM2() > job.capKgPerM2());
        } else {
            json.writeNull();
        }
        json.writeEndObject();
    }

    private void ground() throws IOException {
        Coverage c = a.coverage();
        json.writeObjectFieldStart("ground");
        area("covered_area_m2", c.coveredAreaM2());
        area("covered_area_m2_low", a.intervals().coveredAreaM2().low());
        area("covered_area_m2_high", a.intervals().coveredAreaM2().high());
        area("boundary_area_m2", c.boundaryAreaM2());
        area("missed_area_m2", c.skipAreaM2());
        area("overlap_area_m2", c.overlapAreaM2());
        json.writeStringField("compared_with", figures.comparedWith());
        JsonNumbers.field(json, "within_10_pct", figures.withinPct(), JsonNumbers.PCT);
        JsonNumbers.field(json, "under_10_pct", figures.underPct(), JsonNumbers.PCT);
        JsonNumbers.field(json, "over_10_pct", figures.overPct(), JsonNumbers.PCT);
        json.writeEndObject();
    }

    private void machine(Rig rig) throws IOException {
        json.writeObjectFieldStart("machine");
        json.writeStringField("name", rig.name());
        json.writeStringField("hitch", rig.hitch().word());
        length("antenna_ahead_of_axle_m", rig.antennaAheadM());
        length("antenna_right_of_center_m", rig.antennaRightM());
        length("axle_to_hitch_m", rig.axleToHitchM());
        length("hitch_to_wheels_m", rig.hitchToWheelsM());
        length("hitch_to_drop_m", rig.hitchToDropM());
        length("bar_right_of_center_m", rig.barRightM());
        json.writeNumberField("rows", rig.rows());
        length("width_m", rig.widthM());
        json.writeObjectFieldStart("flow_lag_s");
        for (Product product : rig.products()) {
            JsonNumbers.field(json, product.key(), product.flowLagS(), 3);
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private void inputs() throws IOException {
        json.writeArrayFieldStart("inputs");
        for (LogSource source : a.log().sources()) {
            json.writeStartObject();
            json.writeStringField("role", "log");
            json.writeStringField("file", name(source.file()));
            json.writeStringField("sha256", source.sha256());
            json.writeNumberField("records", source.records());
            json.writeNumberField("used", source.used());
            json.writeEndObject();
        }
        for (InputFile setup : a.setups()) {
            json.writeStartObject();
            json.writeStringField("role", setup.role());
            json.writeStringField("file", name(setup.file()));
            json.writeStringField("sha256", setup.sha256());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static String name(String path) {
        return path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
    }

    private void area(String name, double areaM2) throws IOException {
        JsonNumbers.field(json, name, areaM2, JsonNumbers.AREA_M2);
    }

    private void mass(String name, double massKg) throws IOException {
        JsonNumbers.field(json, name, massKg, JsonNumbers.NITROGEN_KG);
    }

    private void perHa(String name, double kgPerM2) throws IOException {
        JsonNumbers.field(json, name, kgPerM2 * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
    }

    private void length(String name, double lengthM) throws IOException {
        JsonNumbers.field(json, name, lengthM, 4);
    }
}
