package io.rowledger.geo;

import io.rowledger.parallel.ParallelTasks;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.locationtech.jts.index.hprtree.HilbertEncoder;

/** Union of many polygons: cascaded in pairs along a Hilbert curve; the pairs don't depend on the number of threads. */
public final class Unions {
    private static final int HILBERT_LEVEL = 12;

    private Unions() {}

    /** Returns the union of the polygons of all parts, on the grid of {@link Jts}. */
    public static Geometry union(List<? extends Geometry> parts, int threads) {
        List<Polygon> polygons = new ArrayList<>(parts.size());
        parts.forEach(part -> polygons.addAll(Jts.polygons(part)));
        List<Geometry> round = inHilbertOrder(polygons);
        while (round.size() > 1) {
            List<Geometry> from = round;
            int whole = from.size() / 2;
            round = new ArrayList<>(ParallelTasks.map(
                    whole, threads, pair -> PairUnion.of(from.get(2 * pair), from.get(2 * pair + 1))));
            if (from.size() % 2 == 1) {
                round.add(from.get(from.size() - 1));
            }
        }
        return round.isEmpty() ? Jts.FACTORY.createMultiPolygon() : round.get(0);
    }

    /**
     * Returns the union of geometries that are mostly disjoint, each without overlap in itself: only polygons whose
     * bounding boxes meet one of another geometry are overlaid, the others are copied.
     */
    public static Geometry unionOfScattered(List<? extends Geometry> parts, int threads) {
        List<Polygon> polygons = new ArrayList<>();
        List<Integer> partOf = new ArrayList<>();
        HPRtree tree = new HPRtree();
        for (int i = 0; i < parts.size(); i++) {
            for (Polygon polygon : Jts.polygons(parts.get(i))) {
                tree.insert(polygon.getEnvelopeInternal(), polygons.size());
                polygons.add(polygon);
                partOf.add(i);
            }
        }
        int[] first = new int[polygons.size()];
        Arrays.setAll(first, i -> i);
        for (int i = 0; i < first.length; i++) {
            int self = i;
            tree.query(polygons.get(i).getEnvelopeInternal(), item -> {
                int other = (Integer) item;
                if (other < self && !partOf.get(other).equals(partOf.get(self))) {
                    join(first, self, other);
                }
            });
        }
        Map<Integer, List<Polygon>> groups = new LinkedHashMap<>();
        for (int i = 0; i < first.length; i++) {
            groups.computeIfAbsent(root(first, i), g -> new ArrayList<>()).add(polygons.get(i));
        }
        List<List<Polygon>> inOrder = new ArrayList<>(groups.values());
        List<Geometry> joined = ParallelTasks.map(
                inOrder.size(),
                threads,
                g -> inOrder.get(g).size() == 1 ? inOrder.get(g).get(0) : union(inOrder.get(g), 1));
        List<Polygon> out = new ArrayList<>();
        joined.forEach(g -> out.addAll(Jts.polygons(g)));
        return Jts.collect(out);
    }

    /** Disjoint sets; the root of each is its smallest index, so that the order of queries doesn't matter. */
    private static void join(int[] first, int a, int b) {
        int rootA = root(first, a);
        int rootB = root(first, b);
        first[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
    }

    private static int root(int[] first, int i) {
        int at = i;
        while (first[at] != at) {
            first[at] = first[first[at]];
            at = first[at];
        }
        return at;
    }

    private static List<Geometry> inHilbertOrder(List<? extends Geometry> parts) {
        Envelope extent = new Envelope();
        for (Geometry part : parts) {
            extent.expandToInclude(part.getEnvelopeInternal());
        }
        HilbertEncoder encoder = new HilbertEncoder(HILBERT_LEVEL, extent);
        long[] keys = new long[parts.size()];
        for (int i = 0; i < keys.length; i++) {
            keys[i] = ((long) encoder.encode(parts.get(i).getEnvelopeInternal()) << 32) | i;
        }
        Arrays.sort(keys);
        List<Geometry> out = new ArrayList<>(keys.length);
        for (long key : keys) {
            out.add(parts.get((int) key));
        }
        return out;
    }
}
