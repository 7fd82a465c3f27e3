package io.rowledger.report.file;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.coverage.Place;
import io.rowledger.coverage.StripPolygon;
import io.rowledger.coverage.Zones.ZoneSums;
import io.rowledger.finding.Finding;
import io.rowledger.geo.Jts;
import io.rowledger.report.Analysis;
import io.rowledger.track.Poses;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;

/** The map layers: strips, overlaps, missed ground, findings. */
final class Layers {
    private Layers() {}

    static void strips(Analysis a, OutputStream out) throws IOException {
        Poses poses = a.track().poses();
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            for (StripPolygon strip : a.coverage().strips()) {
                layer.polygon(strip.polygon(), json -> {
                    json.writeNumberField("pass", strip.pass());
                    json.writeNumberField("first_row", strip.firstRow());
                    json.writeNumberField("last_row", strip.lastRow());
                    json.writeStringField("from", Decimals.time(poses.timeS(strip.firstStep())));
                    json.writeStringField("to", Decimals.time(poses.timeS(strip.endStep())));
                    json.writeBooleanField("delivering", strip.delivering());
                    json.writeBooleanField("unsettled", strip.unsettled());
                    Decimals.field(json, "area_m2", strip.polygon().getArea(), Decimals.AREA_M2);
                });
            }
        }
    }

    static void overlaps(Analysis a, OutputStream out) throws IOException {
        places(a, a.coverage().overlaps(), out);
    }

    static void missed(Analysis a, OutputStream out) throws IOException {
        places(a, a.coverage().missed(), out);
    }

    /** The prescription's zones, each with its plan and what it received; an empty layer without a prescription. */
    static void zones(Analysis a, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            for (ZoneSums zone :
                    a.zones() == null ? List.<ZoneSums>of() : a.zones().zones()) {
                layer.polygons(
                        Jts.polygons(zone.zone().area()),
                        json -> ZonesJson.zone(zone, a.rig().products(), json));
            }
        }
    }

    static void findings(Analysis a, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            int count = 0;
            for (Finding finding : a.findings()) {
                int number = ++count;
                layer.point(finding.latDeg(), finding.lonDeg(), json -> {
                    json.writeNumberField("number", number);
                    json.writeStringField("kind", finding.kind().jsonName());
                    numbers(json, "rows", finding.rows());
                    json.writeStringField("from", Decimals.time(finding.fromS()));
                    json.writeStringField("to", Decimals.time(finding.toS()));
                    Decimals.field(json, "confidence", finding.confidence(), 2);
                    Decimals.field(json, "area_m2", finding.areaM2(), Decimals.AREA_M2);
                    Decimals.field(json, "volume_l", finding.volumeL(), Decimals.VOLUME_L);
                    Decimals.field(json, "nitrogen_kg", finding.nitrogenKg(), Decimals.NITROGEN_KG);
                    json.writeStringField("evidence", finding.evidence());
                    json.writeStringField("check", finding.check());
                });
            }
        }
    }

    private static void places(Analysis a, List<Place> places, OutputStream out) throws IOException {
        double[] latLon = new double[2];
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            for (Place place : places) {
                a.track().plane().inverse(place.eastM(), place.northM(), latLon);
                layer.polygon(place.polygon(), json -> {
                    json.writeNumberField("number", place.number());
                    Decimals.field(json, "area_m2", place.areaM2(), Decimals.AREA_M2);
                    Decimals.field(json, "lat", latLon[0], Decimals.DEGREES);
                    Decimals.field(json, "lon", latLon[1], Decimals.DEGREES);
                    numbers(json, "passes", place.passes());
                    numbers(json, "rows", place.rows());
                    json.writeStringField("cause", place.cause().name().toLowerCase(Locale.ROOT));
                });
            }
        }
    }

    private static void numbers(JsonGenerator json, String name, List<Integer> numbers) throws IOException {
        json.writeArrayFieldStart(name);
        for (int number : numbers) {
            json.writeNumber(number);
        }
        json.writeEndArray();
    }
}
