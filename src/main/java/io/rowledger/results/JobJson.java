package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.util.Map;

/** The {@code job} object of {@code summary.json}: what the log can't know, as entered, with its figures in SI. */
final class JobJson {
    /** Nitrogen per area, kg/ha: a figure of three digits in any unit comes back as it went in. */
    private static final int PER_HA = 4;

    private JobJson() {}

    static void write(JsonGenerator json, Job job) throws IOException {
        json.writeObjectFieldStart("job");
        json.writeStringField("zone", job.zone().getId());
        json.writeObjectFieldStart("facts");
        for (Map.Entry<String, String> fact : job.facts().entrySet()) {
            json.writeStringField(fact.getKey(), fact.getValue());
        }
        json.writeEndObject();
        perHa(json, "plan_nitrogen_kg_per_ha", job.planKgPerM2());
        perHa(json, "cap_nitrogen_kg_per_ha", job.capKgPerM2());
        json.writeArrayFieldStart("earlier");
        for (EarlierApplication earlier : job.earlier()) {
            json.writeStartObject();
            json.writeStringField("date", earlier.date());
            json.writeStringField("what", earlier.what());
            perHa(json, "nitrogen_kg_per_ha", earlier.nitrogenKgPerM2());
            perHa(json, "phosphate_kg_per_ha", earlier.phosphateKgPerM2());
            perHa(json, "potash_kg_per_ha", earlier.potashKgPerM2());
            perHa(json, "sulfur_kg_per_ha", earlier.sulfurKgPerM2());
            json.writeStringField("entered", earlier.entered());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("credits");
        for (Credit credit : job.credits()) {
            json.writeStartObject();
            json.writeStringField("what", credit.what());
            perHa(json, "nitrogen_kg_per_ha", credit.nitrogenKgPerM2());
            json.writeStringField("entered", credit.entered());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void perHa(JsonGenerator json, String name, double kgPerM2) throws IOException {
        JsonNumbers.field(json, name, kgPerM2 * Factor.SQUARE_METRES_PER_HECTARE, PER_HA);
    }
}
