package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.analysis.Analysis;
import io.rowledger.field.KeepOut;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setback.Worst;
import io.rowledger.setback.Setbacks;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/** What was applied within setbacks, for programs: in {@code summary.json} and as a map layer. */
public final class KeepOutJson {
    private KeepOutJson() {}

    /** The field {@code keep_outs}: null where no keep-out file was given. */
    static void field(Analysis a, JsonGenerator json) throws IOException {
        Setbacks setbacks = a.setbacks();
        if (setbacks == null) {
            json.writeNullField("keep_outs");
            return;
        }
        json.writeArrayFieldStart("keep_outs");
        for (Setback setback : setbacks.places()) {
            json.writeStartObject();
            figures(a, setback, json);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** The layer: each place, and the ground within its setback, with the same figures. */
    public static void layer(Analysis a, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            Setbacks setbacks = a.setbacks();
            for (Setback setback : setbacks == null ? List.<Setback>of() : setbacks.places()) {
                KeepOut keepOut = setback.keepOut();
                part(a, setback, keepOut.place(), "place", layer);
                if (!keepOut.ground().isEmpty()) {
                    part(a, setback, keepOut.ground(), "setback", layer);
                }
            }
        }
    }

    private static void part(Analysis a, Setback setback, Geometry geometry, String part, GeoJson layer)
            throws IOException {
        layer.geometry(geometry, json -> {
            json.writeStringField("part", part);
            figures(a, setback, json);
        });
    }

    private static void figures(Analysis a, Setback setback, JsonGenerator json) throws IOException {
        KeepOut keepOut = setback.keepOut();
        json.writeNumberField("number", keepOut.number());
        json.writeStringField("name", keepOut.name());
        JsonNumbers.field(json, "setback_m", keepOut.setbackM(), 4);
        json.writeBooleanField("applied_inside", setback.anythingInside());
        JsonNumbers.field(json, "closest_m", setback.closestM(), JsonNumbers.LENGTH_M);
        JsonNumbers.field(json, "covered_area_m2", setback.coveredM2(), JsonNumbers.AREA_M2);
        json.writeStringField("first", JsonNumbers.time(setback.firstS()));
        json.writeStringField("last", JsonNumbers.time(setback.lastS()));
        numbers(json, "passes", setback.passes());
        numbers(json, "rows", setback.rows());
        json.writeObjectFieldStart("products");
        for (int p = 0; p < setback.volumeL().length; p++) {
            json.writeObjectFieldStart(a.rig().products().get(p).key());
            JsonNumbers.field(json, "volume_l", setback.volumeL()[p], JsonNumbers.VOLUME_L);
            JsonNumbers.field(json, "nitrogen_kg", setback.nitrogenKg()[p], JsonNumbers.NITROGEN_KG);
            json.writeEndObject();
        }
        json.writeEndObject();
        worst(a, setback, json);
    }

    private static void worst(Analysis a, Setback setback, JsonGenerator json) throws IOException {
        Worst worst = setback.worst();
        if (worst == null) {
            json.writeNullField("worst");
            return;
        }
        double[] latLon = new double[2];
        a.track().plane().inverse(worst.eastM(), worst.northM(), latLon);
        json.writeObjectFieldStart("worst");
        json.writeNumberField("pass", worst.pass());
        json.writeNumberField("row", worst.row());
        json.writeStringField("time", JsonNumbers.time(worst.timeS()));
        JsonNumbers.field(json, "volume_l", worst.volumeL(), JsonNumbers.VOLUME_L);
        JsonNumbers.field(json, "lat", latLon[0], JsonNumbers.DEGREES);
        JsonNumbers.field(json, "lon", latLon[1], JsonNumbers.DEGREES);
        json.writeEndObject();
    }

    private static void numbers(JsonGenerator json, String name, List<Integer> numbers) throws IOException {
        json.writeArrayFieldStart(name);
        for (int number : numbers) {
            json.writeNumber(number);
        }
        json.writeEndArray();
    }
}
