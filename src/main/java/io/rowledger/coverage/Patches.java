package io.rowledger.coverage;

import io.rowledger.geo.Jts;
import io.rowledger.parallel.ParallelTasks;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Skip or overlap area divided into patches that are large enough to list, and slivers.
 *
 * <p>Patches are often connected by slivers of centimeters along whole passes. Therefore each part is opened
 * (morphological opening: shrunk by half the smallest width and grown again); what remains and is large enough is a
 * patch, the rest is sliver.
 *
 * @param patches the patches
 * @param sliverM2 area that is in no patch, m²
 * @param sliverCount number of parts of that area
 */
record Patches(List<Polygon> patches, double sliverM2, int sliverCount) {
    /** A part that keeps this fraction of its area when opened is taken unchanged. */
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
        for (Polygon patch : Jts.polygons(opened)) {
            if (patch.getArea() >= minM2) {
                patches.add(patch);
                patchesM2 += patch.getArea();
            }
        }
        if (patches.size() == 1 && patchesM2 > MIN_KEPT_SHARE * partM2) {
            return new Patches(List.of(part), 0, 0);
        }
        return new Patches(patches, partM2 - patchesM2, 1);
    }
}
