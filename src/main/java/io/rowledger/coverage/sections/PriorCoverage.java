package io.rowledger.coverage.sections;

import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.strip.Strips;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * Steps in which the whole band of a row lies over ground that an earlier visit covered or that lies outside the
 * boundary: there, and only there, shutting the row off leaves no skip.
 *
 * <p>The bar's line in the middle of a step is intersected with the prior ground; the row is over it if the
 * intersection holds its whole band. No overlay is needed: for delivering visits the prior ground is known from {@code
 * OverlapFinder}, for the others the outlines of earlier visits nearby are used. Rows that go backward inside the pivot
 * of a turn never count.
 */
public final class PriorCoverage {
    /**
     * Width of a band that may lie outside the prior ground, m: strips are simplified within 1 cm on either side, and
     * slivers between passes of this size are below what a knife's liquid spreads.
     */
    public static final double SLIVER_M = 0.05;

    /** Bar lines of a tiled chunk lie within 40 degrees of each other. */
    private static final double TILED_COS = Math.cos(Math.toRadians(40));

    private final VisitIndex index;
    private final List<Geometry> priorCoverage;
    private final Strips strips;
    private final @Nullable PreparedGeometry boundary;
    private final double minWidthM;

    private PriorCoverage(VisitIndex index, List<Geometry> priorCoverage, Strips strips, @Nullable Boundary boundary) {
        this.index = index;
        this.priorCoverage = priorCoverage;
        this.strips = strips;
        this.boundary = boundary == null ? null : PreparedGeometryFactory.prepare(boundary.area());
        double min = Double.POSITIVE_INFINITY;
        for (int r = 0; r < strips.rows(); r++) {
            min = Math.min(min, strips.rightM(r) - strips.leftM(r));
        }
        this.minWidthM = min - SLIVER_M;
    }

    /**
     * Result of the search.
     *
     * @param steps per outlet, the steps in which its whole band lay over prior ground
     * @param outside per visit, its part outside the boundary; an empty geometry if there is none
     */
    record Result(BitSet[] steps, List<Geometry> outside) {}

    /** Result of one visit: steps by row, counted from its first step, and its part outside the boundary. */
    private record OfVisit(BitSet[] rows, Geometry outside) {}

    static Result find(
            VisitIndex index, List<Geometry> priorCoverage, Strips strips, @Nullable Boundary boundary, int threads) {
        PriorCoverage work = new PriorCoverage(index, priorCoverage, strips, boundary);
        List<OfVisit> found = ParallelTasks.map(index.size(), threads, work::ofVisit);
        BitSet[] steps = new BitSet[strips.rows()];
        Arrays.setAll(steps, r -> new BitSet(strips.poses().steps()));
        for (int i = 0; i < found.size(); i++) {
            StripPolygon strip = index.get(i).strip();
            BitSet[] rows = found.get(i).rows;
            for (int j = 0; j < rows.length; j++) {
                BitSet row = steps[strip.firstRow() - 1 + j];
                rows[j].stream().forEach(k -> row.set(strip.firstStep() + k));
            }
        }
        return new Result(steps, found.stream().map(OfVisit::outside).toList());
    }

    private OfVisit ofVisit(int j) {
        Visit visit = index.get(j);
        Geometry outside = Jts.FACTORY.createMultiPolygon();
        if (visit.kind() == Kind.PIVOT) {
            return new OfVisit(new BitSet[0], outside);
        }
        if (boundary != null && !boundary.covers(visit.polygon())) {
            outside = Jts.difference(visit.polygon(), boundary.getGeometry());
        }
        List<Polygon> done = new ArrayList<>();
        if (visit.kind() == Kind.DELIVERING) {
            done.addAll(Jts.polygons(priorCoverage.get(j)));
        } else {
            done.addAll(earlier(j, visit));
        }
        done.addAll(Jts.polygons(outside));
        done.removeIf(polygon -> tooThin(polygon, visit));
        return new OfVisit(done.isEmpty() ? new BitSet[0] : cut(visit, new BarCut(done)), outside);
    }

    private List<Polygon> earlier(int j, Visit visit) {
        List<Polygon> out = new ArrayList<>();
        for (int i : index.near(visit.polygon().getEnvelopeInternal())) {
            Visit other = index.get(i);
            boolean before = i < j && other.strip().endStep() <= visit.strip().firstStep();
            if (before && other.delivers() && !other.apartFrom(visit)) {
                out.add(other.polygon());
            }
        }
        return out;
    }

    /** Returns true if a polygon can't hold a row's whole band; most prior ground is slivers between passes. */
    private boolean tooThin(Polygon polygon, Visit visit) {
        Envelope box = polygon.getEnvelopeInternal();
        if (Math.hypot(box.getWidth(), box.getHeight()) < minWidthM) {
            return true;
        }
        if (!visit.chunk().tiled()) {
            return false;
        }
        int middle = (visit.strip().firstStep() + visit.strip().endStep()) / 2;
        double re = strips.poses().eastM(middle, 1) - strips.poses().eastM(middle, 0);
        double rn = strips.poses().northM(middle, 1) - strips.poses().northM(middle, 0);
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        var c = polygon.getExteriorRing().getCoordinateSequence();
        for (int i = 0; i < c.size(); i++) {
            double across = c.getX(i) * re + c.getY(i) * rn;
            min = Math.min(min, across);
            max = Math.max(max, across);
        }
        return max - min < TILED_COS * minWidthM;
    }

    private BitSet[] cut(Visit visit, BarCut ground) {
        StripPolygon strip = visit.strip();
        BitSet[] rows = new BitSet[strip.lastRow() - strip.firstRow() + 1];
        Arrays.setAll(rows, j -> new BitSet());
        for (int k = strip.firstStep(); k < strip.endStep(); k++) {
            if (ground.at(strips.poses(), k)) {
                for (int j = 0; j < rows.length; j++) {
                    double left = strips.leftM(strip.firstRow() - 1 + j);
                    double right = strips.rightM(strip.firstRow() - 1 + j);
                    rows[j].set(k - strip.firstStep(), ground.lengthM(left, right) >= right - left - SLIVER_M);
                }
            }
        }
        return rows;
    }
}
