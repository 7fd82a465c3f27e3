package io.rowledger.page;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import io.rowledger.page.PageData.DeviationClass;
import io.rowledger.page.PageData.FindingMark;
import io.rowledger.page.PageData.PassSpan;
import io.rowledger.page.PageData.Place;
import io.rowledger.page.PageData.Product;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.map.DeviationClasses;
import io.rowledger.rig.Band;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
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

    /** Outlines are written to the centimeter. */
    private static final double OUTLINE_STEP_M = 0.01;

    private final Analysis a;
    private final LocalPlane plane;

    PageDataBuilder(Analysis analysis) {
        this.a = analysis;
        this.plane = analysis.track().plane();
    }

    /** Everything but the columns' bytes. */
    PageData build(ReportOptions options, ColumnBlock block) {
        Coverage coverage = a.coverage();
        Poses poses = a.track().poses();
        double[] origin = new double[2];
        plane.inverse(0, 0, origin);
        return new PageData(
                FORMAT,
                VERSION,
                poses.poses() == 0 ? 0 : poses.timeS(0),
                options.zone().equals(ZoneOffset.UTC) ? "UTC" : options.zone().getId(),
                origin,
                metersPerDegree(origin),
                block.columns(),
                rows(),
                products(),
                classes(options.messages()),
                passes(),
                places("S", coverage.skips()),
                places("O", coverage.overlaps()),
                findings(),
                coverage.boundary() == null ? null : rings(coverage.boundary().area()),
                setbacks(),
                zones());
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
        List<Band> bands = a.rig().bands();
        double[][] rows = new double[bands.size()][];
        for (int r = 0; r < rows.length; r++) {
            rows[r] = new double[] {bands.get(r).leftM(), bands.get(r).rightM()};
        }
        return rows;
    }

    private List<Product> products() {
        List<Product> products = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            products.add(new Product(
                    a.rig().products().get(p).key(),
                    a.rig().products().get(p).name(),
                    finite(a.coverage().received().get(p).meanRateLPerM2())));
        }
        return products;
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : 0;
    }

    private List<PassSpan> passes() {
        List<PassSpan> passes = new ArrayList<>();
        for (Pass pass : a.track().passes()) {
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

    private List<FindingMark> findings() {
        List<FindingMark> marks = new ArrayList<>();
        for (Finding finding : a.findings()) {
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

    private List<double[][]> setbacks() {
        List<double[][]> rings = new ArrayList<>();
        if (a.setbacks() != null) {
            a.setbacks()
                    .places()
                    .forEach(place -> rings.addAll(rings(place.keepOut().ground())));
        }
        return rings;
    }

    private List<double[][]> zones() {
        List<double[][]> rings = new ArrayList<>();
        if (a.zones() != null) {
            a.zones().zones().forEach(zone -> rings.addAll(rings(zone.zone().area())));
        }
        return rings;
    }

    private static List<DeviationClass> classes(Messages words) {
        List<DeviationClass> classes = new ArrayList<>();
        for (int i = 0; i < DeviationClasses.count(); i++) {
            double upTo = DeviationClasses.upTo(i);
            classes.add(new DeviationClass(
                    DeviationClasses.color(i),
                    Double.isFinite(upTo) ? upTo : null,
                    words.text(DeviationClasses.name(i, true)),
                    words.text(DeviationClasses.shortName(i))));
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
        return Math.round(meters / OUTLINE_STEP_M) * OUTLINE_STEP_M;
    }

    private static double[] degrees(double[] latLon) {
        return new double[] {Math.round(latLon[0] * 1e7) / 1e7, Math.round(latLon[1] * 1e7) / 1e7};
    }
}
