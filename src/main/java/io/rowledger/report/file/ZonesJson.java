package io.rowledger.report.file;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.coverage.ZoneChanges;
import io.rowledger.coverage.ZoneChanges.Timing;
import io.rowledger.coverage.Zones;
import io.rowledger.coverage.Zones.ZoneProduct;
import io.rowledger.coverage.Zones.ZoneSums;
import io.rowledger.rig.Product;
import java.io.IOException;
import java.util.List;

/** The prescription against what was done: the parts of {@code summary.json} that are there where one was given. */
final class ZonesJson {
    private static final double M2_PER_HA = 10_000;
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
    static void zone(ZoneSums zone, List<Product> products, JsonGenerator json) throws IOException {
        new ZonesJson(json, products).zone(zone);
    }

    private void zone(ZoneSums zone) throws IOException {
        json.writeNumberField("zone", zone.zone().number());
        json.writeStringField("name", zone.zone().name());
        Decimals.field(json, "area_m2", zone.areaM2(), Decimals.AREA_M2);
        Decimals.field(json, "covered_area_m2", zone.coveredM2(), Decimals.AREA_M2);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < products.size(); p++) {
            json.writeObjectFieldStart(products.get(p).key());
            product(zone.products().get(p), products.get(p));
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private void product(ZoneProduct z, Product product) throws IOException {
        Decimals.field(json, "plan_rate_l_per_ha", z.planLPerM2() * M2_PER_HA, Decimals.RATE);
        Decimals.field(json, "planned_volume_l", z.plannedCoveredL(), Decimals.VOLUME_L);
        Decimals.field(json, "planned_zone_volume_l", z.plannedZoneL(), Decimals.VOLUME_L);
        Decimals.field(json, "asked_volume_l", z.askedL(), Decimals.VOLUME_L);
        Decimals.field(json, "volume_l", z.receivedL(), Decimals.VOLUME_L);
        Decimals.field(json, "mean_rate_l_per_ha", z.meanRateLPerM2() * M2_PER_HA, Decimals.RATE);
        Decimals.field(json, "nitrogen_kg", z.receivedL() * product.nitrogenKgPerL(), Decimals.NITROGEN_KG);
        Decimals.field(json, "within_5_pct", z.within5Pct(), Decimals.PCT);
        Decimals.field(json, "within_10_pct", z.within10Pct(), Decimals.PCT);
        Decimals.field(json, "within_20_pct", z.within20Pct(), Decimals.PCT);
    }

    private void outside(Zones zones) throws IOException {
        json.writeObjectFieldStart("outside_zones");
        Decimals.field(json, "covered_area_m2", zones.outsideCoveredM2(), Decimals.AREA_M2);
        json.writeObjectFieldStart("products");
        for (int p = 0; p < products.size(); p++) {
            json.writeObjectFieldStart(products.get(p).key());
            Decimals.field(json, "volume_l", zones.outsideReceivedL()[p], Decimals.VOLUME_L);
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
        json.writeNumberField("judged", timing.judged());
        json.writeNumberField("unfollowed", timing.unfollowed());
        Decimals.field(json, "late_m", timing.lateM(), Decimals.LENGTH_M);
        Decimals.field(json, "least_late_m", timing.leastLateM(), Decimals.LENGTH_M);
        Decimals.field(json, "most_late_m", timing.mostLateM(), Decimals.LENGTH_M);
        Decimals.field(json, "late_s", timing.lateS(), SECONDS);
        Decimals.field(json, "settled_m", timing.settledM(), Decimals.LENGTH_M);
    }
}
