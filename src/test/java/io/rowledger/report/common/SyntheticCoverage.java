package io.rowledger.report.common;

import static io.rowledger.report.common.SyntheticJob.PASSES;
import static io.rowledger.report.common.SyntheticJob.PASS_M;
import static io.rowledger.report.common.SyntheticJob.ROWS;
import static io.rowledger.report.common.SyntheticJob.ROW_M;
import static io.rowledger.report.common.SyntheticJob.TARGET;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.Boundary;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

/** The covered ground of a {@link SyntheticJob}, with the skips of row 7 and the overlap at the north end of passes 1 and 2. */
final class SyntheticCoverage {
    private final SyntheticJob job;

    SyntheticCoverage(SyntheticJob job) {
        this.job = job;
    }

    Coverage build() {
        List<CoverageDefect> skips = new ArrayList<>();
        List<CoverageDefect> overlaps = new ArrayList<>();
        org.locationtech.jts.geom.Geometry covered = box(-40, -125, 40, 125);
        if (!job.even) {
            for (int p = 6; p <= PASSES; p++) {
                double west = -40 + (p - 1) * 8 + (p % 2 == 1 ? 6 * ROW_M : 3 * ROW_M);
                Polygon skip = box(west, -125, west + ROW_M, 125);
                covered = covered.difference(skip);
                skips.add(new CoverageDefect(
                        p - 5,
                        skip,
                        200,
                        west + 0.4,
                        40 - 20 * (p - 6),
                        List.of(p),
                        List.of(7),
                        CoverageDefect.Cause.ROW_NOT_DELIVERING));
            }
            overlaps.add(new CoverageDefect(
                    1,
                    ring(-40, 117, -40, 125, -20, 125, -20, 117),
                    160,
                    -30,
                    121,
                    List.of(1, 2),
                    List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10),
                    CoverageDefect.Cause.HEADLAND_OVERLAP));
            for (int i = 0; i < job.extraPlaces; i++) {
                double west = -38 + i;
                overlaps.add(new CoverageDefect(
                        2 + i,
                        box(west, 0, west + 1, 1),
                        1,
                        west + 0.5,
                        0.5,
                        List.of(1),
                        List.of(1),
                        CoverageDefect.Cause.PASSES_OVERLAP));
            }
        }
        double skipM2 = skips.size() * 200.0;
        Boundary outline = job.boundary ? new Boundary("willow.geojson", "", box(-40, -125, 40, 125), false) : null;
        List<StripPolygon> strips = new ArrayList<>();
        for (int p = 1; p <= PASSES; p++) {
            double west = -40 + (p - 1) * 8;
            strips.add(new StripPolygon(
                    p, 1, 10, (p - 1) * 251, (p - 1) * 251 + 250, true, p == 1, box(west, -125, west + 8, 125)));
        }
        return new Coverage(
                20_000 - skipM2,
                job.even ? 0 : 160 + job.extraPlaces,
                skipM2,
                job.boundary ? 20_000 : Double.NaN,
                job.boundary ? 0 : Double.NaN,
                covered,
                outline,
                strips,
                overlaps,
                skips,
                List.of(),
                io.rowledger.coverage.Slivers.NONE,
                job.even ? new ShutOffScore(0, 0, 0, 0, 0, 0) : new ShutOffScore(400, 1000, 160, 16, 40, 6.4),
                io.rowledger.coverage.sections.ShutOffCredit.nothing(2, PASSES, ROWS),
                grid(),
                received(skipM2),
                List.of());
    }

    private List<ReceivedStatistics> received(double skipM2) {
        double logL = job.even ? 800 : 764.8;
        double[] histogram = new double[45];
        histogram[20] = 20_000 - skipM2 - 2000;
        histogram[21] = 1840;
        histogram[40] = 160;
        List<ReceivedStatistics> all = new ArrayList<>();
        all.add(new ReceivedStatistics(
                logL / (20_000 - skipM2),
                11.25,
                job.target ? 89.47 : Double.NaN,
                job.target ? 99.16 : Double.NaN,
                job.target ? 99.16 : Double.NaN,
                job.target ? 0 : Double.NaN,
                job.target ? 0.84 : Double.NaN,
                job.target ? histogram : new double[45],
                logL * job.gridTimes,
                logL));
        if (job.secondProduct) {
            all.add(new ReceivedStatistics(0.004, 1, 100, 100, 100, 0, 0, histogram, 80, 80));
        }
        return all;
    }

    private ReceivedGrid grid() {
        int cols = (int) Math.round(80 / job.cellM);
        int rows = (int) Math.round(250 / job.cellM);
        float[] covered = new float[cols * rows];
        float[] volume = new float[cols * rows];
        float[] wanted = new float[cols * rows];
        float cellM2 = (float) (job.cellM * job.cellM);
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < cols; x++) {
                int i = y * cols + x;
                double east = -40 + (x + 0.5) * job.cellM;
                double north = -125 + (y + 0.5) * job.cellM;
                int pass = (int) Math.min(PASSES, Math.floor((east + 40) / 8) + 1);
                double across = east + 40 - (pass - 1) * 8;
                int place = (int) Math.min(ROWS, Math.floor(across / ROW_M) + 1);
                int row = pass % 2 == 1 ? place : ROWS + 1 - place;
                double rate = job.volumeL(pass, row) / (ROW_M * PASS_M);
                boolean twice = !job.even && north > 117 && east < -20;
                covered[i] = rate > 0 ? cellM2 : 0;
                volume[i] = (float) (rate * cellM2 * (twice ? 2 : 1));
                wanted[i] = job.target ? (float) (TARGET * covered[i]) : Float.NaN;
            }
        }
        float[][] volumes = job.secondProduct ? new float[][] {volume, volume} : new float[][] {volume};
        float[][] targets = job.secondProduct ? new float[][] {wanted, wanted} : new float[][] {wanted};
        return new ReceivedGrid(-40, -125, job.cellM, cols, rows, covered, volumes, targets);
    }

    private static Polygon box(double west, double south, double east, double north) {
        return (Polygon) SyntheticJob.SHAPES.toGeometry(new Envelope(west, east, south, north));
    }

    /** A polygon by its corners, the ring as given (JTS does not turn it). */
    private static Polygon ring(double... eastNorth) {
        Coordinate[] corners = new Coordinate[eastNorth.length / 2 + 1];
        for (int i = 0; i < corners.length - 1; i++) {
            corners[i] = new Coordinate(eastNorth[2 * i], eastNorth[2 * i + 1]);
        }
        corners[corners.length - 1] = corners[0];
        return SyntheticJob.SHAPES.createPolygon(corners);
    }
}
