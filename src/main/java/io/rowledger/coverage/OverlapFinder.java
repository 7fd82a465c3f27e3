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
 * Ground with two visits or more.
 *
 * <p>For each delivering visit the part of it that an earlier visit had done already; these parts' union is the overlap
 * area, their sum the area driven over again. A visit inside the pivot counts whole as ground done again.
 */
public final class OverlapFinder {
    /**
     * Chunks of one pass that follow each other share a bar line; after rounding to the grid it can enclose slivers up
     * to the grid's width. Ten times that is no crossing yet, m.
     */
    private static final double MIN_OVERLAP_WIDTH_M = 10 * Jts.GRID_M;

    private final VisitIndex index;

    private OverlapFinder(VisitIndex index) {
        this.index = index;
    }

    /** Per visit the ground of it that was done already; empty geometries where none was. */
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
        boolean neighbours = earlier.pass() == later.pass()
                && Math.abs(earlier.chunk().number() - later.chunk().number()) <= 1;
        if (!neighbours || parts.isEmpty()) {
            return parts;
        }
        return parts.stream()
                .filter(p -> Jts.meanWidthM(p) > MIN_OVERLAP_WIDTH_M)
                .toList();
    }
}
