package io.rowledger.coverage;

import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Chunk;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.parallel.ParallelTasks;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/**
 * Union of all delivering strips.
 *
 * <p>The strips of a tiled chunk share edges but no area, so they are joined in one overlay; chunks are joined in
 * pairs.
 */
public final class CoveredArea {
    private CoveredArea() {}

    /** Returns the union of the polygons of all delivering visits. */
    public static Geometry of(VisitIndex index, int threads) {
        List<List<Polygon>> groups = groups(index);
        List<Geometry> joined = ParallelTasks.map(groups.size(), threads, g -> {
            List<Polygon> group = groups.get(g);
            return group.size() == 1 ? group.get(0) : tiles(group);
        });
        return Unions.union(joined, threads);
    }

    /** Joins tiles by an overlay with an empty polygon, which nodes and merges their edges. */
    private static Geometry tiles(List<Polygon> group) {
        return Jts.areal(OverlayNG.overlay(Jts.collect(group), Jts.FACTORY.createPolygon(), OverlayNG.UNION, Jts.GRID));
    }

    /**
     * Returns the delivering strips, those of each tiled chunk together, all others singly; visits are ordered by
     * chunk.
     */
    private static List<List<Polygon>> groups(VisitIndex index) {
        List<List<Polygon>> groups = new ArrayList<>();
        int pass = 0;
        @Nullable Chunk chunk = null;
        for (int i = 0; i < index.size(); i++) {
            Visit visit = index.get(i);
            if (!visit.delivers()) {
                continue;
            }
            boolean same = visit.chunk().tiled()
                    && visit.pass() == pass
                    && visit.chunk().equals(chunk);
            if (!same) {
                groups.add(new ArrayList<>());
            }
            groups.get(groups.size() - 1).add(visit.polygon());
            pass = visit.pass();
            chunk = visit.chunk();
        }
        return groups;
    }
}
