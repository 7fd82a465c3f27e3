package io.rowledger.coverage;

import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.parallel.ParallelTasks;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Finds the ground with two visits or more.
 *
 * <p>For each delivering visit, the part of it that earlier visits cover: the union of these parts is the overlap, the
 * sum of their areas the area driven again. A visit inside the pivot of a tight turn counts as a whole.
 */
public final class OverlapFinder {
    /**
     * Smallest mean width of an overlap of successive chunks of a pass, m: they share a bar line, and rounding to the
     * grid makes slivers up to the grid's width there.
     */
    private static final double MIN_OVERLAP_WIDTH_M = 10 * Jts.GRID_M;

    private final VisitIndex index;

    private OverlapFinder(VisitIndex index) {
        this.index = index;
    }

    /** Returns for each visit its part that earlier visits cover; an empty geometry if there is none. */
    public static List<Geometry> perVisit(VisitIndex index, int threads) {
        OverlapFinder work = new OverlapFinder(index);
        return ParallelTasks.map(index.size(), threads, work::priorCoverage);
    }

    private Geometry priorCoverage(int j) {
        Visit later = index.get(j);
        if (later.kind() == Kind.PIVOT) {
            return later.polygon();
        }
        List<Geometry> parts = new ArrayList<>();
        if (later.kind() == Kind.DELIVERING) {
            for (int i : index.near(later.polygon().getEnvelopeInternal())) {
                if (i < j && index.get(i).delivers() && !index.get(i).apartFrom(later)) {
                    parts.add(Jts.collect(intersection(index.get(i), later)));
                }
            }
        }
        return Unions.unionOfScattered(parts, 1);
    }

    private static List<Polygon> intersection(Visit earlier, Visit later) {
        List<Polygon> parts = Jts.polygons(Jts.intersection(earlier.polygon(), later.polygon()));
        boolean neighbors = earlier.pass() == later.pass()
                && Math.abs(earlier.chunk().number() - later.chunk().number()) <= 1;
        if (!neighbors || parts.isEmpty()) {
            return parts;
        }
        return parts.stream()
                .filter(p -> Jts.meanWidthM(p) > MIN_OVERLAP_WIDTH_M)
                .toList();
    }
}
