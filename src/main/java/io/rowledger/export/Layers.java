package io.rowledger.export;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.finding.Finding;
import io.rowledger.geo.Jts;
import io.rowledger.report.common.FindingFacts;
import io.rowledger.results.GeoJson;
import io.rowledger.results.JsonNumbers;
import io.rowledger.results.ZonesJson;
import io.rowledger.track.Poses;
import io.rowledger.zones.Zones.ZoneSums;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;

/** The map layers: strips, overlaps, missed ground, findings. */
public final class Layers {
    private Layers() {}

    public static void strips(Analysis a, OutputStream out) throws IOException {
        Poses poses = a.track().poses();
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            for (StripPolygon strip : a.coverage().strips()) {
                layer.polygon(strip.polygon(), json -> {
                    json.writeNumberField("pass", strip.pass());
                    json.writeNumberField("first_row", strip.firstRow());
                    json.writeNumberField("last_row", strip.lastRow());
                    json.writeStringField("from", JsonNumbers.time(poses.timeS(strip.firstStep())));
                    json.writeStringField("to", JsonNumbers.time(poses.timeS(strip.endStep())));
                    json.writeBooleanField("delivering", strip.delivering());
                    json.writeBooleanField("unsettled", strip.unsettled());
                    JsonNumbers.field(json, "area_m2", strip.polygon().getArea(), JsonNumbers.AREA_M2);
                });
            }
        }
    }

    public static void overlaps(Analysis a, OutputStream out) throws IOException {
        places(a, a.coverage().overlaps(), out);
    }

    public static void skips(Analysis a, OutputStream out) throws IOException {
        places(a, a.coverage().skips(), out);
    }

    /** The prescription's zones, each with its plan and what it received; an empty layer without a prescription. */
    public static void zones(Analysis a, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            for (ZoneSums zone :
                    a.zones() == null ? List.<ZoneSums>of() : a.zones().zones()) {
                layer.polygons(
                        Jts.polygons(zone.zone().area()),
                        json -> ZonesJson.zone(zone, a.rig().products(), json));
            }
        }
    }

    public static void findings(Analysis a, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            int count = 0;
            for (Finding finding : a.findings()) {
                int number = ++count;
                layer.point(finding.latDeg(), finding.lonDeg(), json -> {
                    json.writeNumberField("number", number);
                    json.writeStringField("kind", finding.kind().jsonName());
                    numbers(json, "rows", finding.rows());
                    json.writeStringField("from", JsonNumbers.time(finding.fromS()));
                    json.writeStringField("to", JsonNumbers.time(finding.toS()));
                    JsonNumbers.field(json, "confidence", finding.confidence(), 2);
                    JsonNumbers.field(json, "area_m2", finding.areaM2(), JsonNumbers.AREA_M2);
                    JsonNumbers.field(json, "volume_l", finding.volumeL(), JsonNumbers.VOLUME_L);
                    JsonNumbers.field(json, "nitrogen_kg", finding.nitrogenKg(), JsonNumbers.NITROGEN_KG);
                    json.writeStringField("evidence", FindingFacts.filed(finding.evidence()));
                    json.writeStringField("check", FindingFacts.filed(finding.check()));
                });
            }
        }
    }

    private static void places(Analysis a, List<CoverageDefect> places, OutputStream out) throws IOException {
        double[] latLon = new double[2];
        try (GeoJson layer = new GeoJson(a.track().plane(), out)) {
            for (CoverageDefect place : places) {
                a.track().plane().inverse(place.eastM(), place.northM(), latLon);
                layer.polygon(place.polygon(), json -> {
                    json.writeNumberField("number", place.number());
                    JsonNumbers.field(json, "area_m2", place.areaM2(), JsonNumbers.AREA_M2);
                    JsonNumbers.field(json, "lat", latLon[0], JsonNumbers.DEGREES);
                    JsonNumbers.field(json, "lon", latLon[1], JsonNumbers.DEGREES);
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
