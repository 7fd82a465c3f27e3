package io.rowledger.page;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.RowCheck;
import io.rowledger.coverage.AppliedArea;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.digest.Sha256;
import io.rowledger.finding.Finding;
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
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** From an analysis to what the page holds. */
final class PageDataBuilder {
    static final String FORMAT = "rowledger-review";
    static final int VERSION = 2;

    /** Places and areas are written to a hundredth of a meter or square meter. */
    private static final double STEPS_PER_UNIT = 100;

    /** Rates and targets of areas are written to a tenth of a liter a hectare. */
    private static final double RATE_QUANTUM_L_PER_M2 = 1e-5;

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

    /** Everything of a job but the columns' bytes; puts the corners of its outlines into the columns. */
    static PageData of(Analysis a, ZoneId zone, ColumnBlock block, double @Nullable [] backdrop) {
        Coverage c = a.coverage();
        PageDataBuilder builder = new PageDataBuilder(a.rig(), a.log(), a.track(), withCards(a));
        List<Double> rates =
                c.received().stream().map(grid -> finite(grid.meanRateLPerM2())).toList();
        Outlines outlines = new Outlines();
        Ground ground = new Ground(
                builder.places("S", c.skips(), outlines),
                builder.places("D", c.doubtfulSkips(), outlines),
                builder.places("O", c.overlaps(), outlines),
                c.boundary() == null ? null : outlines.add(c.boundary().area()),
                setbacks(a.setbacks(), outlines),
                zones(a.zones(), outlines),
                backdrop);
        areas(a.areas(), a.rig().products().size(), outlines, block);
        outlines.addTo(block);
        return builder.build(zone, block, rates, ground, true);
    }

    /** The findings that have a card, and so a number on the map. */
    private static List<Finding> withCards(Analysis a) {
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < a.findings().size(); i++) {
            if (!a.diagnosis().alsoNoticed().get(i)) {
                findings.add(a.findings().get(i));
            }
        }
        return findings;
    }

    /** Everything of a check of rows but the columns' bytes. */
    static PageData of(RowCheck check, ZoneId zone, ColumnBlock block) {
        PageDataBuilder builder = new PageDataBuilder(
                check.rig(),
                check.reading().table(),
                check.track(),
                check.diagnosis().findings());
        List<Double> rates = check.rig().products().stream().map(product -> 0.0).toList();
        Outlines none = new Outlines();
        areas(List.of(), check.rig().products().size(), none, block);
        none.addTo(block);
        return builder.build(zone, block, rates, Ground.NONE, false);
    }

    /** What lies on the ground beside the strips; see {@link PageData}. */
    private record Ground(
            List<Place> skips,
            List<Place> doubtful,
            List<Place> overlaps,
            @Nullable List<Integer> boundary,
            List<Integer> setbacks,
            List<Integer> zones,
            double @Nullable [] backdrop) {
        static final Ground NONE = new Ground(List.of(), List.of(), List.of(), null, List.of(), List.of(), null);
    }

    private PageData build(ZoneId zone, ColumnBlock block, List<Double> meanRates, Ground ground, boolean known) {
        double[] origin = new double[2];
        plane.inverse(0, 0, origin);
        return new PageData(
                FORMAT,
                VERSION,
                key(block, ground),
                known,
                metering(),
                meters(),
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
                ground.skips(),
                ground.doubtful(),
                ground.overlaps(),
                marks(),
                ground.boundary(),
                ground.setbacks(),
                ground.zones(),
                ground.backdrop());
    }

    private static String key(ColumnBlock block, Ground ground) {
        StringBuilder all = new StringBuilder(block.digest());
        ground.skips().forEach(place -> all.append(place.label()).append(place.areaM2()));
        ground.overlaps().forEach(place -> all.append(place.label()).append(place.areaM2()));
        return Sha256.of(all.toString().getBytes(StandardCharsets.UTF_8)).substring(0, 16);
    }

    private List<String> metering() {
        List<String> metering = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            metering.add(log.metering(p).name().toLowerCase(Locale.ROOT));
        }
        return metering;
    }

    private List<List<List<Integer>>> meters() {
        List<List<List<Integer>>> meters = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            List<List<Integer>> ofProduct = new ArrayList<>();
            for (int[] rows : log.meterRows(p)) {
                ofProduct.add(Arrays.stream(rows).map(r -> r + 1).boxed().toList());
            }
            meters.add(ofProduct);
        }
        return meters;
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

    private List<Place> places(String letter, List<CoverageDefect> defects, Outlines outlines) {
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
                    outlines.add(defect.polygon())));
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

    private static List<Integer> setbacks(@Nullable Setbacks setbacks, Outlines outlines) {
        List<Integer> corners = new ArrayList<>();
        if (setbacks != null) {
            setbacks.places()
                    .forEach(
                            place -> corners.addAll(outlines.add(place.keepOut().ground())));
        }
        return corners;
    }

    private static List<Integer> zones(@Nullable Zones zones, Outlines outlines) {
        List<Integer> corners = new ArrayList<>();
        if (zones != null) {
            zones.zones()
                    .forEach(zone -> corners.addAll(outlines.add(zone.zone().area())));
        }
        return corners;
    }

    /** Adds the rings of areas, and the rates and targets of each; a rate of 0 is drawn as nothing at all. */
    private static void areas(List<AppliedArea> areas, int products, Outlines outlines, ColumnBlock block) {
        List<Integer> rings = new ArrayList<>();
        List<Integer> corners = new ArrayList<>();
        for (AppliedArea area : areas) {
            List<Integer> own = outlines.add(area.ground());
            rings.add(own.size());
            corners.addAll(own);
        }
        block.add("area.rings", rings.size(), 1, 1, rings::get);
        block.add("area.corners", corners.size(), 1, 1, corners::get);
        for (int p = 0; p < products; p++) {
            int product = p;
            block.add(
                    "area.rate." + p,
                    areas.size(),
                    RATE_QUANTUM_L_PER_M2,
                    1,
                    i -> areas.get(i).rateLPerM2()[product]);
            block.add(
                    "area.target." + p,
                    areas.size(),
                    RATE_QUANTUM_L_PER_M2,
                    1,
                    i -> areas.get(i).targetLPerM2()[product]);
        }
    }

    private static List<DeviationClass> classes() {
        List<DeviationClass> classes = new ArrayList<>();
        for (int i = 0; i < DeviationClasses.count(); i++) {
            double upTo = DeviationClasses.upTo(i);
            classes.add(new DeviationClass(DeviationClasses.color(i), Double.isFinite(upTo) ? upTo : null));
        }
        return classes;
    }

    private static double round(double value) {
        return Math.round(value * STEPS_PER_UNIT) / STEPS_PER_UNIT;
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
