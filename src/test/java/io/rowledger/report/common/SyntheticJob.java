package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.InputFile;
import io.rowledger.analysis.SetupReview;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.field.KeepOut;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.HandMadeDelivery;
import io.rowledger.rate.Rates;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.RowTotals.ProductTotals;
import io.rowledger.rate.RowTotals.TurnError;
import io.rowledger.rig.Band;
import io.rowledger.rig.BarLengths;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setbacks;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.whatif.WhatIf;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;

/**
 * A made-up job small enough for a pocket calculator: ten passes of 250 m, north and south by turns, with ten rows of
 * 0.8 m, in a boundary of 80 m by 250 m (2 ha), target 400 L/ha.
 *
 * <p>Each row sweeps 200 m² a pass and 2,000 m² in all, so its target is 8 L a pass and 80 L in all. Row 7 gets nothing
 * from pass 6 on (40 L, 50 % under), row 3 gets 6 % too much (84.8 L), the others 80 L: 764.8 L of 800 L. UAN of
 * 1.325 kg/L with 32 % N holds 0.424 kg N a liter.
 */
public final class SyntheticJob {
    static final GeometryFactory SHAPES = new GeometryFactory();
    static final double LAT0 = 44.0;
    static final double LON0 = -93.0;
    /** 2026-06-14T13:00:00Z. */
    public static final double START_S = 1_781_442_000.0;

    static final int PASSES = 10;
    static final int ROWS = 10;
    static final double ROW_M = 0.8;
    static final double PASS_M = 250;
    static final double TARGET = 0.04;

    boolean boundary = true;
    boolean target = true;
    boolean even;
    boolean secondProduct;
    private boolean faultyInBoth;
    private double density = 1.325;
    private double analysis = 0.32;
    double cellM = 0.5;
    private List<Finding> findings = List.of();
    private final Map<String, String> job = new LinkedHashMap<>(Map.of("field", "Willow bottom"));
    private Job block = Job.NONE;
    private String file = "willow.csv";
    int extraPlaces;
    double gridTimes = 1.0002;
    private int used = 1000;
    private boolean passes = true;
    private List<Setback> setbacks;

    /** Answers for the places of a keep-out file. */
    public SyntheticJob setbacks(Setback... places) {
        setbacks = List.of(places);
        return this;
    }

    /**
     * Three places: a well, 60 ft, with 40 L of UAN on 600 m² inside by rows 3 to 5 in pass 2; a ditch 4.2 m from the
     * nearest strip, setback 3 m; a pond that was not reached.
     */
    public SyntheticJob withSetbacks() {
        GeometryFactory shapes = new GeometryFactory();
        Point well = shapes.createPoint(new Coordinate(10, 100));
        LineString ditch = shapes.createLineString(new Coordinate[] {new Coordinate(-20, 0), new Coordinate(-20, 240)});
        Point pond = shapes.createPoint(new Coordinate(20_000, 0));
        return setbacks(
                new Setback(
                        new KeepOut(1, "Well & pump", 18.288, well, well.buffer(18.288), false),
                        new double[] {40},
                        new double[] {16.96},
                        600,
                        START_S + 200,
                        START_S + 231,
                        List.of(2),
                        List.of(3, 4, 5),
                        new Setback.Worst(2, 4, START_S + 215, 40, 5, 100),
                        0),
                new Setback(
                        new KeepOut(2, "Ditch", 3, ditch, ditch.buffer(3), false),
                        new double[1],
                        new double[1],
                        0,
                        Double.NaN,
                        Double.NaN,
                        List.of(),
                        List.of(),
                        null,
                        4.2),
                new Setback(
                        new KeepOut(3, "Pond", 30, pond, pond.buffer(30), false),
                        new double[1],
                        new double[1],
                        0,
                        Double.NaN,
                        Double.NaN,
                        List.of(),
                        List.of(),
                        null,
                        19_000));
    }

    public SyntheticJob withoutBoundary() {
        boundary = false;
        return this;
    }

    public SyntheticJob withoutTarget() {
        target = false;
        return this;
    }

    /** Every row on its target. */
    public SyntheticJob even() {
        even = true;
        return this;
    }

    public SyntheticJob withSecondProduct() {
        secondProduct = true;
        return this;
    }

    /** The rows' faults show in the second product too. */
    public SyntheticJob faultyInBoth() {
        faultyInBoth = true;
        return this;
    }

    boolean isFaultyInBoth() {
        return faultyInBoth;
    }

    public SyntheticJob withoutDensity() {
        density = Double.NaN;
        return this;
    }

    public SyntheticJob withoutAnalysis() {
        analysis = Double.NaN;
        return this;
    }

    public SyntheticJob cell(double metres) {
        cellM = metres;
        return this;
    }

    public SyntheticJob job(String key, String value) {
        job.put(key, value);
        return this;
    }

    /** This job block, its field named as usual. */
    public SyntheticJob block(Job other) {
        block = other;
        return this;
    }

    public SyntheticJob file(String name) {
        file = name;
        return this;
    }

    /** Adds n overlaps of a square meter each. */
    public SyntheticJob extraPlaces(int n) {
        extraPlaces = n;
        return this;
    }

    /** The received grid holds so many times the log's volume. */
    public SyntheticJob gridHolds(double times) {
        gridTimes = times;
        return this;
    }

    /** So many of 1,010 records used, the rest unreadable. */
    public SyntheticJob used(int records) {
        used = records;
        return this;
    }

    /** A log in which nothing was ever lowered. */
    public SyntheticJob withoutPasses() {
        passes = false;
        return this;
    }

    public SyntheticJob withFinding() {
        findings = List.of(new Finding(
                FindingKind.PLUGGED,
                List.of(7),
                START_S + 750,
                START_S + 1475,
                0.93,
                1000,
                -40,
                -16.96,
                LAT0,
                LON0,
                Message.of("findings.text", "Row 7 fell to 0 % of its neighbors."),
                Message.of("findings.text", "the meter stopped"),
                Message.of("findings.text", "with the system bled, look at knife 7"),
                List.of()));
        return this;
    }

    /** These findings, whatever the log says. */
    public SyntheticJob withFindings(List<Finding> found) {
        findings = found;
        return this;
    }

    /** A job of nothing: no pass, no area, no volume. */
    private Analysis nothing() {
        Rig rig = rig();
        TurnError none = new TurnError(Double.NaN, Double.NaN, Double.NaN, 0, 0);
        List<RowTotals> rows = new ArrayList<>();
        for (int r = 1; r <= ROWS; r++) {
            rows.add(new RowTotals(r, 0, 0, none, none, List.of(new ProductTotals(0, 0, 0, 0))));
        }
        Track track = new Track(new LocalPlane(LAT0, LON0), new Poses(new PoseColumns()), List.of(), track().quality());
        Coverage coverage = new Coverage(
                0,
                0,
                0,
                Double.NaN,
                Double.NaN,
                SHAPES.createPolygon(),
                null,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                io.rowledger.coverage.Slivers.NONE,
                new ShutOffScore(0, 0, 0, 0, 0, 0),
                io.rowledger.coverage.sections.ShutOffCredit.nothing(1, 0, ROWS),
                new ReceivedGrid(0, 0, 0.5, 0, 0, new float[0], new float[1][0], new float[1][0]),
                List.of(new ReceivedStatistics(
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        Double.NaN,
                        new double[45],
                        0,
                        0)),
                List.of());
        return new Analysis(
                rig,
                log(),
                track,
                new Strips(track.poses(), rig.bands()),
                HandMadeDelivery.everywhere(1, ROWS, 0),
                new Rates(rows, List.of(), List.of(), 0, 0),
                coverage,
                new Diagnosis(List.of(), List.of(), List.of(), List.of(), List.of(), List.of()),
                Intervals.unknown(ROWS, 0, 1),
                List.of());
    }

    public Analysis build() {
        if (!passes) {
            return nothing();
        }
        Rig rig = rig();
        Track track = track();
        LogTable log = log();
        return new Analysis(
                rig,
                log,
                track,
                new Strips(track.poses(), rig.bands()),
                HandMadeDelivery.everywhere(
                        rig.products().size(), ROWS, track.poses().steps()),
                rates(),
                new SyntheticCoverage(this).build(),
                SyntheticDiagnosis.of(this, rig.products().size(), findings),
                Intervals.unknown(ROWS, track.passes().size(), rig.products().size()),
                SetupReview.none(),
                List.of(Message.of("findings.text", "Times carry no zone: taken as UTC.")),
                setbacks == null ? null : new Setbacks("fields/keep-out.geojson", setbacks),
                null,
                List.of(new InputFile("--rig", "willow.yaml", "cd".repeat(32))),
                List.of(),
                WhatIf.NOTHING);
    }

    /** Liters of a row in a pass. */
    double volumeL(int pass, int row) {
        double full = ROW_M * PASS_M * TARGET;
        if (even) {
            return full;
        }
        return row == 7 && pass >= 6 ? 0 : row == 3 ? full * 1.06 : full;
    }

    private Rig rig() {
        List<Band> bands = new ArrayList<>();
        for (int r = 0; r < ROWS; r++) {
            double left = -4 + r * ROW_M;
            bands.add(new Band(r + 1, left + 0.4, left, left + ROW_M, 1, null));
        }
        List<Product> products = new ArrayList<>();
        products.add(new Product(
                "uan",
                "UAN 32-0-0",
                density,
                analysis,
                0 * analysis,
                0 * analysis,
                0 * analysis,
                target ? TARGET : Double.NaN,
                0.5));
        if (secondProduct) {
            products.add(new Product("ats", "ATS 12-0-0-26S", 1.32, 0.12, 0, 0, 0.26, 0.004, 0));
        }
        return Rig.of("Ten-row mounted bar", BarLengths.mounted(1.6, 0.9, 2.4), bands, products, jobBlock());
    }

    private Job jobBlock() {
        Map<String, String> facts = new LinkedHashMap<>(job);
        facts.putAll(block.facts());
        return new Job(
                facts,
                block.earlier(),
                block.credits(),
                block.planKgPerM2(),
                block.capKgPerM2(),
                block.order(),
                block.tickets(),
                block.prices(),
                block.notes());
    }

    private static Track track() {
        int perPass = 251;
        int n = PASSES * perPass;
        PoseColumns c = new PoseColumns();
        c.timeS = new double[n];
        c.headingRad = new double[n];
        c.barHeadingRad = new double[n];
        c.barSin = new double[n];
        c.barCos = new double[n];
        c.dropEastM = new double[n];
        c.dropNorthM = new double[n];
        c.hitchEastM = c.dropEastM;
        c.hitchNorthM = new double[n];
        c.record = new int[n];
        c.pass = new int[n];
        c.unsettled = new boolean[n];
        c.backing = new boolean[n];
        List<Pass> passes = new ArrayList<>();
        for (int p = 0; p < PASSES; p++) {
            boolean north = p % 2 == 0;
            for (int i = 0; i < perPass; i++) {
                int k = p * perPass + i;
                c.timeS[k] = START_S + p * 150 + i * 0.5;
                c.dropEastM[k] = -36 + p * 8;
                c.dropNorthM[k] = north ? -125 + i : 125 - i;
                // The hitch pin is 2.4 m ahead of the drop line, as in the rig.
                c.hitchNorthM[k] = c.dropNorthM[k] + (north ? 2.4 : -2.4);
                c.headingRad[k] = north ? 0 : Math.PI;
                c.barHeadingRad[k] = north ? 0 : Math.PI;
                c.barCos[k] = north ? 1 : -1;
                boolean inside = i < perPass - 1;
                c.pass[k] = inside ? p + 1 : 0;
                c.record[k] = inside ? 0 : -1;
            }
            int first = p * perPass;
            passes.add(new Pass(
                    p + 1,
                    first,
                    first + 250,
                    START_S + p * 150,
                    START_S + p * 150 + 125,
                    PASS_M,
                    north ? 0 : Math.PI));
        }
        double[] noise = new double[9];
        java.util.Arrays.fill(noise, Double.NaN);
        noise[4] = 0.012;
        int[] byFix = new int[10];
        byFix[4] = 980;
        byFix[5] = 20;
        return new Track(
                new LocalPlane(LAT0, LON0), new Poses(c), passes, new TrackQuality(0.2, 2, 65, false, noise, byFix));
    }

    private LogTable log() {
        LogColumns c = new LogColumns();
        c.products = secondProduct ? List.of("uan", "ats") : List.of("uan");
        c.timeS = new double[] {START_S, START_S + 1475};
        c.latDeg = new double[] {LAT0, LAT0};
        c.lonDeg = new double[] {LON0, LON0};
        c.flowLPerS = new double[2][ROWS][2];
        LogSource source =
                new LogSource(file, "ab".repeat(32), 1010, used, new LogSource.Dropped(4, 3, 1, 2, 1000 - used));
        return new LogTable(c, List.of(source));
    }

    private Rates rates() {
        List<RowTotals> rows = new ArrayList<>();
        for (int r = 1; r <= ROWS; r++) {
            double volumeL = 0;
            for (int p = 1; p <= PASSES; p++) {
                volumeL += volumeL(p, r);
            }
            double applied = !even && r == 7 ? 1000 : 2000;
            rows.add(row(r, 2000, applied, volumeL, target ? 80 : Double.NaN, r));
        }
        List<PassTotals> passes = new ArrayList<>();
        List<List<RowTotals>> passRows = new ArrayList<>();
        for (int p = 1; p <= PASSES; p++) {
            double sum = 0;
            List<RowTotals> inPass = new ArrayList<>();
            for (int r = 1; r <= ROWS; r++) {
                sum += volumeL(p, r);
                inPass.add(row(r, 200, volumeL(p, r) > 0 ? 200 : 0, volumeL(p, r), target ? 8 : Double.NaN, r));
            }
            double targetL = target ? 80 : Double.NaN;
            passes.add(new PassTotals(
                    p,
                    2000,
                    secondProduct ? new double[] {sum, 8} : new double[] {sum},
                    secondProduct ? new double[] {targetL, 8} : new double[] {targetL},
                    secondProduct ? new double[] {targetL, 8} : new double[] {targetL}));
            passRows.add(inPass);
        }
        return new Rates(rows, passes, passRows, 20_000, 300);
    }

    /** Turn error of row r: 1 % a row seen, a quarter of it left. */
    private RowTotals row(int r, double sweptM2, double appliedM2, double volumeL, double targetL, int scale) {
        List<ProductTotals> products = new ArrayList<>();
        products.add(new ProductTotals(volumeL, targetL, targetL, 0));
        if (secondProduct) {
            products.add(new ProductTotals(sweptM2 * 0.004, sweptM2 * 0.004, sweptM2 * 0.004, 0));
        }
        return new RowTotals(
                r,
                sweptM2,
                appliedM2,
                new TurnError(scale * 0.01, scale * 0.04, -scale * 0.02, sweptM2 * 0.2, sweptM2 * 0.1),
                new TurnError(scale * 0.0025, scale * 0.01, -scale * 0.005, sweptM2 * 0.05, sweptM2 * 0.02),
                products);
    }
}
