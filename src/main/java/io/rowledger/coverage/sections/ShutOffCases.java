package io.rowledger.coverage.sections;

import io.rowledger.coverage.strips.StripEdges;
import io.rowledger.coverage.strips.StripOutline;
import io.rowledger.coverage.strips.StripOutline.Sides;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * Results of other ways of section control on the same drive.
 *
 * <p>A group of rows is off in a step if each of its rows passes, with its whole band, over ground that an earlier
 * visit covered or that lies outside the boundary, and on otherwise, without any delay: the best that such a system can
 * do. Because rows are only off over prior ground, prior ground is the same for every grouping, and one search serves
 * all of them.
 *
 * <pre>
 * off      delivering, and all rows of the group over prior ground        saved: the metered volume
 * on       not delivering over prior ground, and not all rows of the group so   more: target × swept area
 * overlap  ∪ (Dⱼ − offⱼ) ∪ on                                           Dⱼ prior ground of visit j
 * </pre>
 *
 * Rows that were not delivering over uncovered ground stay off: whether that was a valve, a plug or an empty tank, no
 * grouping changes it.
 */
public final class ShutOffCases {
    private static final double MAX_TOUCHING_GAP_M = 1e-6;

    private final VisitIndex index;
    private final List<Geometry> priorCoverage;
    private final Strips strips;
    private final Delivery delivery;
    private final int threads;
    private final PriorCoverage.Result prior;
    private final double overlapM2;

    private ShutOffCases(
            VisitIndex index,
            List<Geometry> priorCoverage,
            Strips strips,
            Delivery delivery,
            @Nullable Boundary boundary,
            int threads) {
        this.index = index;
        this.priorCoverage = priorCoverage;
        this.strips = strips;
        this.delivery = delivery;
        this.threads = threads;
        this.prior = PriorCoverage.find(index, priorCoverage, strips, boundary, threads);
        this.overlapM2 = overlapM2(priorCoverage);
    }

    /**
     * Returns the results of the groupings.
     *
     * @param priorCoverage per visit, its part that earlier visits cover
     */
    public static List<ShutOffCase> of(
            VisitIndex index,
            List<Geometry> priorCoverage,
            Strips strips,
            Delivery delivery,
            @Nullable Boundary boundary,
            List<Grouping> groupings,
            int threads) {
        if (groupings.isEmpty()) {
            return List.of();
        }
        ShutOffCases work = new ShutOffCases(index, priorCoverage, strips, delivery, boundary, threads);
        return groupings.stream().map(work::with).toList();
    }

    private double overlapM2(List<Geometry> parts) {
        return Unions.union(parts.stream().filter(g -> !g.isEmpty()).toList(), threads)
                .getArea();
    }

    /** What a grouping changes in one visit. */
    private record Changed(
            boolean same,
            Geometry priorCoverage,
            double outsideLessM2,
            double uncoveredM2,
            double offM2,
            double offUnsettledM2,
            double onM2) {}

    private ShutOffCase with(Grouping grouping) {
        BitSet[] off = new BitSet[strips.rows()];
        BitSet[] on = new BitSet[strips.rows()];
        int[][] together = grouping.together(strips.rows());
        for (int r = 0; r < off.length; r++) {
            BitSet all = new BitSet();
            if (grouping.kind() != Grouping.Kind.NONE) {
                all.or(prior.steps()[r]);
                for (int other : together[r]) {
                    all.and(prior.steps()[other]);
                }
            }
            on[r] = (BitSet) prior.steps()[r].clone();
            on[r].andNot(all);
            on[r].andNot(delivery.deliveringSteps(r));
            all.and(delivery.deliveringSteps(r));
            off[r] = all;
        }
        List<Changed> changed = ParallelTasks.map(index.size(), threads, j -> changed(j, off, on));
        double[] sums = new double[5];
        boolean same = true;
        for (int j = 0; j < changed.size(); j++) {
            Changed c = changed.get(j);
            same &= c.same;
            sums[0] += c.outsideLessM2;
            sums[1] += c.uncoveredM2;
            sums[2] += c.offM2;
            sums[3] += c.offUnsettledM2;
            sums[4] += c.onM2;
        }
        double left = same
                ? overlapM2
                : overlapM2(changed.stream().map(Changed::priorCoverage).toList());
        return new ShutOffCase(
                grouping, savedL(off, on), left, overlapM2 - left, sums[0], sums[1], sums[2], sums[3], sums[4]);
    }

    private double[] savedL(BitSet[] off, BitSet[] on) {
        double[] saved = new double[delivery.products()];
        for (int p = 0; p < saved.length; p++) {
            for (int r = 0; r < off.length; r++) {
                for (int k = off[r].nextSetBit(0); k >= 0; k = off[r].nextSetBit(k + 1)) {
                    saved[p] += delivery.flowLPerS(p, r, k) * strips.poses().durationS(k);
                }
                for (int k = on[r].nextSetBit(0); k >= 0; k = on[r].nextSetBit(k + 1)) {
                    saved[p] -= delivery.targetLPerM2(p, r, k) * Math.max(0, strips.signedAreaM2(k, r))
                            - delivery.flowLPerS(p, r, k) * strips.poses().durationS(k);
                }
            }
        }
        return saved;
    }

    private Changed changed(int j, BitSet[] off, BitSet[] on) {
        Visit visit = index.get(j);
        Geometry before = priorCoverage.get(j);
        boolean delivers = visit.kind() == Kind.DELIVERING;
        Geometry ground = visit.kind() == Kind.PIVOT ? Jts.collect(List.of()) : ground(visit, delivers ? off : on);
        if (ground.isEmpty()) {
            return new Changed(true, before, 0, 0, 0, 0, 0);
        }
        double sweptM2 = sweptM2(visit, delivers ? off : on, false);
        if (!delivers) {
            return new Changed(false, ground, 0, 0, 0, 0, sweptM2);
        }
        Geometry left = before.isEmpty() ? before : Jts.difference(before, ground);
        double overlapLessM2 = before.getArea() - left.getArea();
        double outsideLessM2 = outsideM2(j, before, ground);
        return new Changed(
                false,
                left,
                outsideLessM2,
                Math.max(0, ground.getArea() - overlapLessM2 - outsideLessM2),
                sweptM2,
                sweptM2(visit, off, true),
                0);
    }

    /** Returns the part of this ground of visit j that lies outside the boundary and was not covered before, m². */
    private double outsideM2(int j, Geometry before, Geometry ground) {
        Geometry outside = prior.outside().get(j);
        if (outside.isEmpty()) {
            return 0;
        }
        Geometry both = Jts.intersection(outside, ground);
        return before.isEmpty() || both.isEmpty()
                ? both.getArea()
                : Jts.difference(both, before).getArea();
    }

    /**
     * Returns the ground that a visit's rows pass over in these steps; neighboring rows with the same steps as one
     * outline.
     */
    private Geometry ground(Visit visit, BitSet[] steps) {
        StripPolygon strip = visit.strip();
        StripEdges edges = new StripEdges(strips.poses(), visit.poses());
        List<Geometry> out = new ArrayList<>();
        BitSet last = new BitSet();
        int from = strip.firstRow() - 1;
        for (int r = from; r <= strip.lastRow(); r++) {
            BitSet row = r == strip.lastRow() ? new BitSet() : steps[r].get(strip.firstStep(), strip.endStep());
            boolean touches =
                    r > from && r < strip.lastRow() && strips.leftM(r) - strips.rightM(r - 1) < MAX_TOUCHING_GAP_M;
            if (r > from && !(touches && row.equals(last))) {
                outline(edges, strip.firstStep(), last, strips.leftM(from), strips.rightM(r - 1), out);
                from = r;
            }
            last = row;
        }
        return out.isEmpty() ? Jts.collect(List.of()) : Unions.union(out, 1);
    }

    private static void outline(
            StripEdges edges, int firstStep, BitSet steps, double leftM, double rightM, List<Geometry> out) {
        for (int k = steps.nextSetBit(0); k >= 0; k = steps.nextSetBit(steps.nextClearBit(k))) {
            int[] vertices = edges.vertices(firstStep + k, firstStep + steps.nextClearBit(k));
            out.addAll(StripOutline.polygons(edges, new Sides(vertices, vertices, vertices), leftM, rightM));
        }
    }

    private double sweptM2(Visit visit, BitSet[] steps, boolean unsettledOnly) {
        StripPolygon strip = visit.strip();
        double sum = 0;
        for (int r = strip.firstRow() - 1; r < strip.lastRow(); r++) {
            for (int k = steps[r].nextSetBit(strip.firstStep()); k >= 0 && k < strip.endStep(); ) {
                if (!unsettledOnly || strips.poses().unsettled(k)) {
                    sum += Math.max(0, strips.signedAreaM2(k, r));
                }
                k = steps[r].nextSetBit(k + 1);
            }
        }
        return sum;
    }
}
