package io.rowledger.uncertainty;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Heading;
import io.rowledger.geo.Jts;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * The delivered strips with few vertices, as columns, for samples with moved poses. The axes (u, v) are rotated so that scan
 * lines cross passes and headlands at an angle.
 *
 * <p>Vertices lie every {@value #VERTEX_M} m, and every {@value #VERTEX_DEG} degrees in turns: coarser than the strips whose
 * area is reported, but the same in every sample, and only differences are used.
 */
final class PerturbedCoverage {
    private static final double VERTEX_M = 12;
    private static final double VERTEX_DEG = 4;
    /** Scan lines over the field's extent; each crosses every pass it meets. */
    private static final int LINES = 300;
    /** Angle from the main direction of the edges to the scan lines, rad: oblique to passes and headlands. */
    private static final double ASLANT_RAD = 0.55;
    /** Without a boundary, gaps of 1.5 rows are skips; cut obliquely they look up to twice as long. */
    private static final double OPEN_GAP_ROWS = 3;

    /** Vertex m is at pose {@code pose[m]}; ascending. */
    final int[] pose;
    /** The vertex whose white noise vertex m shares: itself, or the one before for the start and end of a strip. */
    final int[] noiseOf;

    private final double[] u;
    private final double[] v;
    private final double[] rightU;
    private final double[] rightV;
    /** Strip i has vertices {@code vertex[first[i]] .. vertex[first[i + 1] - 1]}. */
    private final int[] first;

    private final int[] vertex;
    private final int[] leftRow;
    private final int[] rightRow;
    private final Strips strips;
    private final double cos;
    private final double sin;
    private final double[][] domain;
    private final double openGapM;
    private final double fromV;
    private final double toV;

    PerturbedCoverage(List<Pass> passes, Strips strips, Coverage coverage) {
        this.strips = strips;
        Poses poses = strips.poses();
        List<StripPolygon> delivered =
                coverage.strips().stream().filter(StripPolygon::delivering).toList();
        double angle = mainDirection(passes) + ASLANT_RAD;
        cos = Math.cos(angle);
        sin = Math.sin(angle);
        BitSet kept = kept(passes, poses);
        BitSet marked = (BitSet) kept.clone();
        for (StripPolygon strip : delivered) {
            marked.set(strip.firstStep());
            marked.set(strip.endStep());
        }
        pose = marked.stream().toArray();
        noiseOf = new int[pose.length];
        u = new double[pose.length];
        v = new double[pose.length];
        rightU = new double[pose.length];
        rightV = new double[pose.length];
        for (int m = 0; m < pose.length; m++) {
            noiseOf[m] = kept.get(pose[m]) || m == 0 ? m : noiseOf[m - 1];
            double e = poses.dropEastM(pose[m]);
            double n = poses.dropNorthM(pose[m]);
            double re = poses.eastM(pose[m], 1) - e;
            double rn = poses.northM(pose[m], 1) - n;
            u[m] = e * cos + n * sin;
            v[m] = n * cos - e * sin;
            rightU[m] = re * cos + rn * sin;
            rightV[m] = rn * cos - re * sin;
        }
        first = new int[delivered.size() + 1];
        leftRow = new int[delivered.size()];
        rightRow = new int[delivered.size()];
        vertex = vertices(delivered, kept);
        fromV = extent(-1);
        toV = extent(1);
        Boundary boundary = coverage.boundary();
        openGapM = boundary == null ? OPEN_GAP_ROWS * widestM() : 0;
        domain = domain(boundary == null ? coverage.covered() : boundary.area());
    }

    boolean isEmpty() {
        return leftRow.length == 0;
    }

    /** Direction modulo a right angle of the larger part of the passes, rad counterclockwise from east. */
    private static double mainDirection(List<Pass> passes) {
        double c = 0;
        double s = 0;
        for (Pass pass : passes) {
            c += pass.lengthM() * Math.cos(4 * pass.headingRad());
            s += pass.lengthM() * Math.sin(4 * pass.headingRad());
        }
        // Headings turn clockwise from north, axes the other way.
        return -Math.atan2(s, c) / 4;
    }

    private static BitSet kept(List<Pass> passes, Poses poses) {
        BitSet kept = new BitSet(poses.poses());
        for (Pass pass : passes) {
            int last = pass.firstStep();
            kept.set(last);
            kept.set(pass.endStep());
            for (int i = last + 1; i < pass.endStep(); i++) {
                double distanceM = Math.hypot(
                        poses.dropEastM(i) - poses.dropEastM(last), poses.dropNorthM(i) - poses.dropNorthM(last));
                double turn = Math.abs(Heading.wrap(poses.barHeadingRad(i) - poses.barHeadingRad(last)));
                if (distanceM > VERTEX_M || turn > Math.toRadians(VERTEX_DEG)) {
                    kept.set(i);
                    last = i;
                }
            }
        }
        return kept;
    }

    private int[] vertices(List<StripPolygon> delivered, BitSet kept) {
        int[] out = new int[delivered.size() * 4];
        int n = 0;
        for (int i = 0; i < delivered.size(); i++) {
            StripPolygon strip = delivered.get(i);
            first[i] = n;
            leftRow[i] = strip.firstRow() - 1;
            rightRow[i] = strip.lastRow() - 1;
            for (int k = strip.firstStep(); k >= 0 && k <= strip.endStep(); ) {
                if (n == out.length) {
                    out = Arrays.copyOf(out, 2 * n);
                }
                out[n++] = Arrays.binarySearch(pose, k);
                if (k == strip.endStep()) {
                    break;
                }
                int next = kept.nextSetBit(k + 1);
                k = next < 0 || next > strip.endStep() ? strip.endStep() : next;
            }
        }
        first[delivered.size()] = n;
        return Arrays.copyOf(out, n);
    }

    private double extent(int sign) {
        double max = Double.NEGATIVE_INFINITY;
        double reach = 0;
        for (int r = 0; r < strips.rows(); r++) {
            reach = Math.max(reach, Math.max(Math.abs(strips.leftM(r)), Math.abs(strips.rightM(r))));
        }
        for (int m : vertex) {
            max = Math.max(max, sign * v[m]);
        }
        return sign * (max + reach + VERTEX_M);
    }

    private double widestM() {
        double widest = 0;
        for (int r = 0; r < strips.rows(); r++) {
            widest = Math.max(widest, strips.rightM(r) - strips.leftM(r));
        }
        return widest;
    }

    /** Empty scan lines over this ground. */
    ScanLines lines() {
        return new ScanLines(fromV, toV, LINES);
    }

    /** Returns per line the intervals of the ground to be covered; holes of covered ground belong to it. */
    private double[][] domain(Geometry area) {
        ScanLines lines = lines();
        double[][] out = new double[lines.lines()][8];
        int[] n = new int[lines.lines()];
        for (Polygon polygon : Jts.polygons(area)) {
            cut(polygon.getExteriorRing(), lines, out, n);
            for (int i = 0; openGapM == 0 && i < polygon.getNumInteriorRing(); i++) {
                cut(polygon.getInteriorRingN(i), lines, out, n);
            }
        }
        for (int j = 0; j < out.length; j++) {
            out[j] = Arrays.copyOf(out[j], n[j]);
            Arrays.sort(out[j]);
        }
        return out;
    }

    private void cut(LinearRing ring, ScanLines lines, double[][] out, int[] n) {
        Coordinate[] c = ring.getCoordinates();
        for (int i = 1; i < c.length; i++) {
            double u0 = c[i - 1].x * cos + c[i - 1].y * sin;
            double v0 = c[i - 1].y * cos - c[i - 1].x * sin;
            double u1 = c[i].x * cos + c[i].y * sin;
            double v1 = c[i].y * cos - c[i].x * sin;
            int from = Math.max(0, lines.lineFrom(Math.min(v0, v1)) - 1);
            int to = Math.min(lines.lines() - 1, lines.lineFrom(Math.max(v0, v1)));
            for (int j = from; j <= to; j++) {
                double y = lines.v(j);
                if (v0 <= y != v1 <= y) {
                    if (n[j] == out[j].length) {
                        out[j] = Arrays.copyOf(out[j], 2 * n[j]);
                    }
                    out[j][n[j]++] = u0 + (y - v0) / (v1 - v0) * (u1 - u0);
                }
            }
        }
    }

    /**
     * Shares of a sample's errors to apply.
     *
     * @param receiver positions and lengths along the direction of travel
     * @param ends starts and stops
     * @param tape side offset and knives
     */
    record Shares(double receiver, double ends, double tape) {}

    /** Moves the strips by these shares of a sample's errors and sums the ground into the scan lines. */
    void sum(ErrorSample sample, Shares parts, ScanLines lines) {
        lines.clear();
        double[] cu = new double[4];
        double[] cv = new double[4];
        for (int i = 0; i < leftRow.length; i++) {
            double left = strips.leftM(leftRow[i]) + parts.tape * sample.leftM(leftRow[i]);
            double right = strips.rightM(rightRow[i]) + parts.tape * sample.rightM(rightRow[i]);
            for (int a = first[i]; a < first[i + 1]; a++) {
                int m = vertex[a];
                boolean edge = a == first[i] || a + 1 == first[i + 1];
                double along = parts.receiver * sample.alongM() + (edge ? parts.ends * sample.endM(m) : 0);
                double side = parts.tape * sample.sideM();
                double e = parts.receiver * sample.eastM(m);
                double n = parts.receiver * sample.northM(m);
                // Forward is right rotated by 90° counterclockwise.
                double atU = u[m] + e * cos + n * sin + side * rightU[m] - along * rightV[m];
                double atV = v[m] + n * cos - e * sin + side * rightV[m] + along * rightU[m];
                cu[2] = atU + right * rightU[m];
                cv[2] = atV + right * rightV[m];
                cu[3] = atU + left * rightU[m];
                cv[3] = atV + left * rightV[m];
                if (a > first[i]) {
                    lines.add(cu, cv);
                }
                cu[0] = cu[3];
                cv[0] = cv[3];
                cu[1] = cu[2];
                cv[1] = cv[2];
            }
        }
        lines.sum(domain, openGapM);
    }
}
