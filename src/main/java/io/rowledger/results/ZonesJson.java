package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.rig.Product;
import io.rowledger.units.Factor;
import io.rowledger.zones.ZoneChanges;
import io.rowledger.zones.ZoneChanges.Timing;
import io.rowledger.zones.Zones;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.io.IOException;
import java.util.List;

/** The prescription against what was done: the parts of {@code summary.json} that are there where one was given. */
public final class ZonesJson {
    private static final int SECONDS = 2;

    private final JsonGenerator json;
    private final List<Product> products;

    private ZonesJson(JsonGenerator json, List<Product> products) {
        this.json = json;
        this.products = products;
    }

    /** Writes the fields into the open object of the field. */
    static void write(Zones zones, List<Product> products, JsonGenerator json) throws IOException {
        ZonesJson writer = new ZonesJson(json, products);
        json.writeArrayFieldStart("zones");
        for (ZoneSums zone : zones.zones()) {
            json.writeStartObject();
            writer.zone(zone);
            json.writeEndObject();
        }
        json.writeEndArray();
        writer.outside(zones);
        json.writeObjectFieldStart("zone_changes");
        for (int p = 0; p < products.size(); p++) {
            json.writeObjectFieldStart(products.get(p).key());
            writer.changes(zones.changes().get(p));
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    /** Writes one zone's fields into an open object; the map layer has the same. */
    public static void zone(ZoneSums zone, List<Product> products, JsonGenerator json) throws IOException {
        new ZonesJson(json, products).zone(zone);
    }

    private void zone(ZoneSums zone) throws IOException {
        json.writeNumberField("zone", zone.zone().number());
        json.writeStringField("name", zone.zone().name());
        JsonNumbers.field(json, "area_m2", zone.areaM2(), JsonNumbers.AREA_M2);
        JsonNumbers.field(json, "covered_area_m2", zone.coveredM2(), JsonNumbers.AREA_M2);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < products.size(); p++) {
            json.writeObjectFieldStart(products.get(p).key());
            product(zone.products().get(p), products.get(p));
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void product(ZoneProduct z, Product product) throws IOException {
        JsonNumbers.field(
                json, "plan_rate_l_per_ha", z.planLPerM2() * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
        JsonNumbers.field(json, "planned_volume_l", z.plannedCoveredL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "planned_zone_volume_l", z.plannedZoneL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "asked_volume_l", z.loggedTargetL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "volume_l", z.receivedL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(
                json, "mean_rate_l_per_ha", z.meanRateLPerM2() * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
        JsonNumbers.field(json, "nitrogen_kg", z.receivedL() * product.nitrogenKgPerL(), JsonNumbers.NITROGEN_KG);
        JsonNumbers.field(json, "within_5_pct", z.within5Pct(), JsonNumbers.PCT);
        JsonNumbers.field(json, "within_10_pct", z.within10Pct(), JsonNumbers.PCT);
        JsonNumbers.field(json, "within_20_pct", z.within20Pct(), JsonNumbers.PCT);
    }

    private void outside(Zones zones) throws IOException {
        json.writeObjectFieldStart("outside_zones");
        JsonNumbers.field(json, "covered_area_m2", zones.outsideCoveredM2(), JsonNumbers.AREA_M2);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < products.size(); p++) {
            json.writeObjectFieldStart(products.get(p).key());
            JsonNumbers.field(json, "volume_l", zones.outsideReceivedL()[p], JsonNumbers.VOLUME_L);
            json.writeEndObject();
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private void changes(ZoneChanges changes) throws IOException {
        timing(changes.all());
        json.writeStringField("why_not_known", changes.why());
        json.writeArrayFieldStart("pairs");
        for (ZoneChanges.Pair pair : changes.pairs()) {
            json.writeStartObject();
            json.writeNumberField("from_zone", pair.from());
            json.writeNumberField("to_zone", pair.to());
            timing(pair.timing());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void timing(Timing timing) throws IOException {
        json.writeNumberField("crossings", timing.crossings());
        json.writeNumberField("judged", timing.evaluated());
        json.writeNumberField("unfollowed", timing.unfollowed());
        JsonNumbers.field(json, "late_m", timing.lateM(), JsonNumbers.LENGTH_M);
        JsonNumbers.field(json, "least_late_m", timing.minLateM(), JsonNumbers.LENGTH_M);
        JsonNumbers.field(json, "most_late_m", timing.maxLateM(), JsonNumbers.LENGTH_M);
        JsonNumbers.field(json, "late_s", timing.lateS(), SECONDS);
        JsonNumbers.field(json, "settled_m", timing.settledM(), JsonNumbers.LENGTH_M);
    }
}
