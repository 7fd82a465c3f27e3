package io.rowledger.page;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.RowCheck;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.digest.Sha256;
import io.rowledger.finding.Finding;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogTable;
import io.rowledger.page.PageData.DeviationClass;
import io.rowledger.page.PageData.FindingMark;
import io.rowledger.page.PageData.PassSpan;
import io.rowledger.page.PageData.Place;
import io.rowledger.page.PageData.Product;
import io.rowledger.report.map.DeviationClasses;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setbacks;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import io.rowledger.zones.Zones;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** From an analysis to what the page holds. */
final class PageDataBuilder {
    static final String FORMAT = "rowledger-review";
    static final int VERSION = 1;

    /** Outlines are written to the centimeter: steps in a meter. */
    private static final double OUTLINE_STEPS = 100;

    private final Rig rig;
    private final LogTable log;
    private final Track track;
    private final List<Finding> findings;
    private final LocalPlane plane;

    private PageDataBuilder(Rig rig, LogTable log, Track track, List<Finding> findings) {
        this.rig = rig;
        this.log = log;
        this.track = track;
        this.findings = findings;
        this.plane = track.plane();
    }

    /** Everything of a job but the columns' bytes. */
    static PageData of(Analysis a, ZoneId zone, ColumnBlock block, String base64, double @Nullable [] backdrop) {
        Coverage c = a.coverage();
        PageDataBuilder builder = new PageDataBuilder(a.rig(), a.log(), a.track(), a.findings());
        List<Double> rates =
                c.received().stream().map(grid -> finite(grid.meanRateLPerM2())).toList();
        return builder.build(
                zone,
                block,
                base64,
                rates,
                builder.places("S", c.skips()),
                builder.places("D", c.doubtfulSkips()),
                builder.places("O", c.overlaps()),
                new Outlines(
                        c.boundary() == null ? null : rings(c.boundary().area()),
                        setbacks(a.setbacks()),
                        zones(a.zones()),
                        backdrop));
    }

    /** Everything of a check of rows but the columns' bytes. */
    static PageData of(RowCheck check, ZoneId zone, ColumnBlock block, String base64) {
        PageDataBuilder builder = new PageDataBuilder(
                check.rig(),
                check.reading().table(),
                check.track(),
                check.diagnosis().findings());
        List<Double> rates = check.rig().products().stream().map(product -> 0.0).toList();
        return builder.build(zone, block, base64, rates, List.of(), List.of(), List.of(), null);
    }

    /** Outlines that are no places, and the picture under the map. */
    private record Outlines(
            @Nullable List<double[][]> boundary,
            List<double[][]> setbacks,
            List<double[][]> zones,
            double @Nullable [] backdrop) {}

    private PageData build(
            ZoneId zone,
            ColumnBlock block,
            String base64,
            List<Double> meanRates,
            List<Place> skips,
            List<Place> doubtful,
            List<Place> overlaps,
            @Nullable Outlines outlines) {
        double[] origin = new double[2];
        plane.inverse(0, 0, origin);
        return new PageData(
                FORMAT,
                VERSION,
                key(base64, skips, overlaps),
                outlines != null,
                metering(),
                log.isTimed(),
                track.poses().poses() == 0 ? 0 : track.poses().timeS(0),
                zoneOfBrowsers(zone),
                origin,
                metersPerDegree(origin),
                block.columns(),
                rows(),
                products(meanRates),
                classes(),
                passes(),
                skips,
                doubtful,
                overlaps,
                marks(),
                outlines == null ? null : outlines.boundary(),
                outlines == null ? List.of() : outlines.setbacks(),
                outlines == null ? List.of() : outlines.zones(),
                outlines == null ? null : outlines.backdrop());
    }

    private static String key(String base64, List<Place> skips, List<Place> overlaps) {
        StringBuilder all = new StringBuilder(base64);
        skips.forEach(place -> all.append(place.label()).append(place.areaM2()));
        overlaps.forEach(place -> all.append(place.label()).append(place.areaM2()));
        return Sha256.of(all.toString().getBytes(StandardCharsets.UTF_8)).substring(0, 16);
    }

    private List<String> metering() {
        List<String> metering = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            metering.add(log.metering(p).name().toLowerCase(Locale.ROOT));
        }
        return metering;
    }

    private double[] metersPerDegree(double[] origin) {
        double step = 1e-4;
        double[] north = new double[2];
        double[] east = new double[2];
        plane.forward(origin[0] + step, origin[1], north);
        plane.forward(origin[0], origin[1] + step, east);
        return new double[] {north[1] / step, east[0] / step};
    }

    private double[][] rows() {
        List<Band> bands = rig.bands();
        double[][] rows = new double[bands.size()][];
        for (int r = 0; r < rows.length; r++) {
            rows[r] = new double[] {bands.get(r).leftM(), bands.get(r).rightM()};
        }
        return rows;
    }

    private List<Product> products(List<Double> meanRates) {
        List<Product> products = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            products.add(new Product(
                    rig.products().get(p).key(), rig.products().get(p).name(), meanRates.get(p)));
        }
        return products;
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : 0;
    }

    private List<PassSpan> passes() {
        List<PassSpan> passes = new ArrayList<>();
        for (Pass pass : track.passes()) {
            passes.add(new PassSpan(pass.number(), pass.firstStep(), pass.endStep()));
        }
        return passes;
    }

    private List<Place> places(String letter, List<CoverageDefect> defects) {
        List<Place> places = new ArrayList<>();
        for (CoverageDefect defect : defects) {
            double[] latLon = new double[2];
            plane.inverse(defect.eastM(), defect.northM(), latLon);
            places.add(new Place(
                    letter + defect.number(),
                    round(defect.areaM2()),
                    new double[] {round(defect.eastM()), round(defect.northM())},
                    degrees(latLon),
                    defect.passes(),
                    defect.rows(),
                    defect.cause().name().toLowerCase(Locale.ROOT),
                    rings(defect.polygon())));
        }
        return places;
    }

    private List<FindingMark> marks() {
        List<FindingMark> marks = new ArrayList<>();
        for (Finding finding : findings) {
            marks.add(new FindingMark(
                    finding.kind().jsonName(),
                    finding.rows(),
                    finding.fromS(),
                    finding.toS(),
                    Math.round(finding.confidence() * 100) / 100.0,
                    degrees(new double[] {finite(finding.latDeg()), finite(finding.lonDeg())})));
        }
        return marks;
    }

    private static List<double[][]> setbacks(@Nullable Setbacks setbacks) {
        List<double[][]> rings = new ArrayList<>();
        if (setbacks != null) {
            setbacks.places()
                    .forEach(place -> rings.addAll(rings(place.keepOut().ground())));
        }
        return rings;
    }

    private static List<double[][]> zones(@Nullable Zones zones) {
        List<double[][]> rings = new ArrayList<>();
        if (zones != null) {
            zones.zones().forEach(zone -> rings.addAll(rings(zone.zone().area())));
        }
        return rings;
    }

    private static List<DeviationClass> classes() {
        List<DeviationClass> classes = new ArrayList<>();
        for (int i = 0; i < DeviationClasses.count(); i++) {
            double upTo = DeviationClasses.upTo(i);
            classes.add(new DeviationClass(DeviationClasses.color(i), Double.isFinite(upTo) ? upTo : null));
        }
        return classes;
    }

    private static List<double[][]> rings(@Nullable Geometry geometry) {
        List<double[][]> rings = new ArrayList<>();
        if (geometry != null) {
            for (Polygon polygon : Jts.polygons(geometry)) {
                for (LineString ring : Jts.rings(polygon)) {
                    rings.add(corners(ring.getCoordinates()));
                }
            }
        }
        return rings;
    }

    private static double[][] corners(Coordinate[] ring) {
        double[][] corners = new double[ring.length][];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = new double[] {round(ring[i].x), round(ring[i].y)};
        }
        return corners;
    }

    private static double round(double meters) {
        return Math.round(meters * OUTLINE_STEPS) / OUTLINE_STEPS;
    }

    private static double[] degrees(double[] latLon) {
        return new double[] {Math.round(latLon[0] * 1e7) / 1e7, Math.round(latLon[1] * 1e7) / 1e7};
    }

    /** The zone by a name that browsers know: not all of them know offsets such as -05:00, all know those of whole hours by name. */
    private static String zoneOfBrowsers(ZoneId zone) {
        boolean offset = zone.normalized() instanceof ZoneOffset;
        int seconds = zone.getRules().getOffset(Instant.EPOCH).getTotalSeconds();
        if (!offset || seconds % 3600 != 0) {
            return zone.getId();
        }
        return seconds == 0 ? "UTC" : "Etc/GMT" + (seconds < 0 ? "+" : "-") + Math.abs(seconds / 3600);
    }
}
