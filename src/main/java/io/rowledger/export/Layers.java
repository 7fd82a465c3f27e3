package io.rowledger.export;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.KeepOut;
import io.rowledger.finding.Finding;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.results.Decimals;
import io.rowledger.results.GeoJson;
import io.rowledger.results.JsonNumbers;
import io.rowledger.results.PrescriptionJson;
import io.rowledger.results.SetbackJson;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setbacks;
import io.rowledger.track.Poses;
import io.rowledger.zones.Zones.ZoneSums;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/** The GeoJSON layers: strips, overlaps, skips, findings, zones, setbacks. */
public final class Layers {
    private Layers() {}

    private record Strip(
            @Nullable Integer pass,
            @Nullable Integer firstRow,
            @Nullable Integer lastRow,
            @Nullable Instant from,
            @Nullable Instant to,
            boolean delivering,
            boolean unsettled,
            @Decimals(JsonNumbers.AREA_M2) double areaM2) {}

    private record Place(
            int number,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            @Decimals(JsonNumbers.DEGREES) double lat,
            @Decimals(JsonNumbers.DEGREES) double lon,
            List<Integer> passes,
            List<Integer> rows,
            String cause) {}

    private record Found(
            int number,
            String kind,
            List<Integer> rows,
            @Nullable Instant from,
            @Nullable Instant to,
            @Decimals(2) double confidence,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            String evidence,
            String check) {}

    /** The place itself, or the ground within its setback, both with the same figures. */
    private record SetbackPart(String part, @JsonUnwrapped SetbackJson figures) {}

    public static void strips(FieldMap map, OutputStream out) throws IOException {
        Poses poses = map.track().poses();
        try (GeoJson layer = new GeoJson(map.track().plane(), out)) {
            for (StripPolygon strip : map.coverage().strips()) {
                boolean area = strip.isArea();
                layer.polygon(
                        strip.polygon(),
                        new Strip(
                                area ? null : strip.pass(),
                                area ? null : strip.firstRow(),
                                area ? null : strip.lastRow(),
                                area ? null : JsonNumbers.instant(poses.timeS(strip.firstStep())),
                                area ? null : JsonNumbers.instant(poses.timeS(strip.endStep())),
                                strip.delivering(),
                                strip.unsettled(),
                                strip.polygon().getArea()));
            }
        }
    }

    public static void overlaps(FieldMap map, OutputStream out) throws IOException {
        places(map.track().plane(), map.coverage().overlaps(), out);
    }

    public static void skips(FieldMap map, OutputStream out) throws IOException {
        places(map.track().plane(), map.coverage().skips(), out);
    }

    private static void places(LocalPlane plane, List<CoverageDefect> places, OutputStream out) throws IOException {
        double[] latLon = new double[2];
        try (GeoJson layer = new GeoJson(plane, out)) {
            for (CoverageDefect place : places) {
                plane.inverse(place.eastM(), place.northM(), latLon);
                layer.polygon(
                        place.polygon(),
                        new Place(
                                place.number(),
                                place.areaM2(),
                                latLon[0],
                                latLon[1],
                                place.passes(),
                                place.rows(),
                                place.cause().name().toLowerCase(Locale.ROOT)));
            }
        }
    }

    /** The prescription's zones, each with its plan and what it received; an empty layer without a prescription. */
    public static void zones(FieldMap map, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(map.track().plane(), out)) {
            for (ZoneSums zone :
                    map.zones() == null ? List.<ZoneSums>of() : map.zones().zones()) {
                layer.polygons(Jts.polygons(zone.zone().area()), PrescriptionJson.Zone.of(zone, map.products()));
            }
        }
    }

    /** The places of the keep-out file and the ground within their setbacks; an empty layer without one. */
    public static void setbacks(FieldMap map, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(map.track().plane(), out)) {
            Setbacks setbacks = map.setbacks();
            for (Setback setback : setbacks == null ? List.<Setback>of() : setbacks.places()) {
                KeepOut keepOut = setback.keepOut();
                SetbackJson figures =
                        SetbackJson.of(setback, map.products(), map.track().plane());
                layer.geometry(keepOut.place(), new SetbackPart("place", figures));
                Geometry ground = keepOut.ground();
                if (!ground.isEmpty()) {
                    layer.geometry(ground, new SetbackPart("setback", figures));
                }
            }
        }
    }

    public static void findings(FieldMap map, OutputStream out) throws IOException {
        try (GeoJson layer = new GeoJson(map.track().plane(), out)) {
            int number = 0;
            for (Finding finding : map.findings()) {
                layer.point(
                        finding.latDeg(),
                        finding.lonDeg(),
                        new Found(
                                ++number,
                                finding.kind().jsonName(),
                                finding.rows(),
                                JsonNumbers.instant(finding.fromS()),
                                JsonNumbers.instant(finding.toS()),
                                finding.confidence(),
                                finding.areaM2(),
                                finding.volumeL(),
                                finding.nitrogenKg(),
                                FindingFacts.filed(finding.evidence()),
                                FindingFacts.filed(finding.check())));
            }
        }
    }
}
