package io.rowledger.coverage;

import io.rowledger.geo.Jts;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.hprtree.HilbertEncoder;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;

/** Union of many polygons: neighbours first, along a Hilbert curve, in groups that do not depend on the threads. */
final class Unions {
    /** Polygons joined in one go; small enough to keep two cores busy, large enough to keep the rounds few. */
    private static final int GROUP = 8;

    private static final int HILBERT_LEVEL = 12;

    private Unions() {}

    static Geometry union(List<? extends Geometry> parts, int threads) {
        List<Geometry> round = inHilbertOrder(parts);
        while (round.size() > 1) {
            List<Geometry> from = round;
            int groups = (from.size() + GROUP - 1) / GROUP;
            round = Parallel.map(groups, threads, g -> {
                List<Geometry> group = from.subList(g * GROUP, Math.min(from.size(), (g + 1) * GROUP));
                return group.size() == 1 ? group.get(0) : Jts.areal(UnaryUnionNG.union(group, Jts.GRID));
            });
        }
        return round.isEmpty() ? Jts.FACTORY.createMultiPolygon() : round.get(0);
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
