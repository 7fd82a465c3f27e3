package io.rowledger.coverage;

import io.rowledger.geo.Jts;
import io.rowledger.parallel.ParallelTasks;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Sorts doubled or missed ground into the pieces a person can drive to and the seams between.
 *
 * <p>A piece is often tied to others by seams of centimetres along whole passes. So every piece is opened: shrunk by
 * half the least width and grown again. What stays and is large enough is a place, the rest is seam.
 */
record Patches(List<Polygon> patches, double sliverM2, int sliverCount) {
    /** Losing less than this share when opened, a piece is taken as it is. */
    private static final double MIN_KEPT_SHARE = 0.98;

    static Patches of(Geometry ground, double minM2, double minWidthM, int threads) {
        List<Polygon> parts = Jts.polygons(ground);
        List<Patches> sorted = ParallelTasks.map(parts.size(), threads, i -> of(parts.get(i), minM2, minWidthM));
        List<Polygon> patches = new ArrayList<>();
        double sliverM2 = 0;
        int sliverCount = 0;
        for (Patches p : sorted) {
            patches.addAll(p.patches);
            sliverM2 += p.sliverM2;
            sliverCount += p.sliverCount;
        }
        return new Patches(patches, sliverM2, sliverCount);
    }

    private static Patches of(Polygon part, double minM2, double minWidthM) {
        double partM2 = part.getArea();
        if (partM2 < minM2) {
            return new Patches(List.of(), partM2, 1);
        }
        double halfM = minWidthM / 2;
        Geometry core = SkipFinder.mitred(part, -halfM);
        if (core.isEmpty()) {
            return new Patches(List.of(), partM2, 1);
        }
        Geometry opened = Jts.intersection(SkipFinder.mitred(core, halfM), part);
        List<Polygon> patches = new ArrayList<>();
        double patchesM2 = 0;
        for (Polygon piece : Jts.polygons(opened)) {
            if (piece.getArea() >= minM2) {
                patches.add(piece);
                patchesM2 += piece.getArea();
            }
        }
        if (patches.size() == 1 && patchesM2 > MIN_KEPT_SHARE * partM2) {
            return new Patches(List.of(part), 0, 0);
        }
        return new Patches(patches, partM2 - patchesM2, 1);
    }
}
