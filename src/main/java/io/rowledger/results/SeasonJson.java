package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonField;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;

/**
 * {@code season.json}: the ledger in SI, null where unknown. Its schema is {@code /schema/rowledger-season-1.schema.json} in
 * the jar.
 */
public final class SeasonJson {
    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-season/1";

    private final JsonGenerator json;

    private SeasonJson(JsonGenerator json) {
        this.json = json;
    }

    public static void write(Season season, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(out, json -> {
            json.writeStringField("schema", SCHEMA_ID);
            json.writeStringField("program_version", programVersion);
            new SeasonJson(json).document(season);
        });
    }

    private void document(Season season) throws IOException {
        json.writeObjectFieldStart("season");
        json.writeNumberField("jobs", season.jobs().size());
        JsonNumbers.field(json, "worked_area_m2", season.workedM2(), JsonNumbers.AREA_M2);
        nutrients(season.kg());
        nitrogen(season.earlierKg(), season.creditKg(), season.kg().nitrogenKg());
        bounds("worked_area_m2", season.workedWithin(), JsonNumbers.AREA_M2);
        bounds("nitrogen_kg", season.nitrogenWithin(), JsonNumbers.NITROGEN_KG);
        json.writeEndObject();
        json.writeArrayFieldStart("products");
        for (Season.Product product : season.products()) {
            json.writeStartObject();
            json.writeStringField("name", product.name());
            json.writeNumberField("jobs", product.jobs());
            put(product.volumeL(), product.massKg(), product.kg());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("fields");
        for (SeasonField field : season.fields()) {
            field(field);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("notes");
        for (String note : season.notes()) {
            json.writeString(note);
        }
        json.writeEndArray();
    }

    private void field(SeasonField field) throws IOException {
        json.writeStartObject();
        json.writeStringField("farm", field.farm());
        json.writeStringField("field", field.field());
        JsonNumbers.field(json, "area_m2", field.areaM2(), JsonNumbers.AREA_M2);
        nutrients(field.kg());
        nitrogen(field.earlierKg(), field.creditKg(), field.kg().nitrogenKg());
        bounds("nitrogen_kg", field.nitrogenWithin(), JsonNumbers.NITROGEN_KG);
        perHa("total_nitrogen_kg_per_ha", field.totalKgPerM2());
        perHa("plan_nitrogen_kg_per_ha", field.planKgPerM2());
        perHa("cap_nitrogen_kg_per_ha", field.capKgPerM2());
        json.writeArrayFieldStart("jobs");
        for (SeasonJob job : field.jobs()) {
            job(job);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void job(SeasonJob job) throws IOException {
        json.writeStartObject();
        json.writeStringField("folder", job.folder());
        json.writeArrayFieldStart("sha256");
        for (String digest : job.digests()) {
            json.writeString(digest);
        }
        json.writeEndArray();
        json.writeStringField("crop", job.crop());
        json.writeStringField("start", JsonNumbers.time(job.startS()));
        json.writeStringField("end", JsonNumbers.time(job.endS()));
        JsonNumbers.field(json, "covered_area_m2", job.coveredM2(), JsonNumbers.AREA_M2);
        json.writeArrayFieldStart("products");
        for (SeasonJob.Put put : job.products()) {
            json.writeStartObject();
            json.writeStringField("key", put.key());
            json.writeStringField("name", put.name());
            put(put.volumeL(), put.massKg(), put.kg());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void put(double volumeL, double massKg, NutrientKg kg) throws IOException {
        JsonNumbers.field(json, "volume_l", volumeL, JsonNumbers.VOLUME_L);
        mass("mass_kg", massKg);
        nutrients(kg);
    }

    private void nutrients(NutrientKg kg) throws IOException {
        mass("nitrogen_kg", kg.nitrogenKg());
        mass("phosphate_kg", kg.phosphateKg());
        mass("potash_kg", kg.potashKg());
        mass("sulfur_kg", kg.sulfurKg());
    }

    private void nitrogen(double earlierKg, double creditKg, double jobsKg) throws IOException {
        mass("earlier_nitrogen_kg", earlierKg);
        mass("credit_nitrogen_kg", creditKg);
        mass("total_nitrogen_kg", jobsKg + earlierKg + creditKg);
    }

    private void bounds(String figure, Interval within, int decimals) throws IOException {
        JsonNumbers.field(json, figure + "_low", within.low(), decimals);
        JsonNumbers.field(json, figure + "_high", within.high(), decimals);
    }

    private void mass(String name, double kg) throws IOException {
        JsonNumbers.field(json, name, kg, JsonNumbers.NITROGEN_KG);
    }

    private void perHa(String name, double kgPerM2) throws IOException {
        JsonNumbers.field(json, name, kgPerM2 * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
    }
}
