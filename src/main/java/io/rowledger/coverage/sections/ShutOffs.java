package io.rowledger.coverage.sections;

import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/** Computes the {@link ShutOffScore}, visit by visit. */
public final class ShutOffs {
    private final VisitIndex index;
    private final Poses poses;
    private final Delivery delivery;
    private final @Nullable Boundary boundary;
    private final OffReasons reasons;

    private ShutOffs(
            VisitIndex index, Poses poses, Delivery delivery, @Nullable Boundary boundary, OffReasons reasons) {
        this.index = index;
        this.poses = poses;
        this.delivery = delivery;
        this.boundary = boundary;
        this.reasons = reasons;
    }

    private record Score(
            double offOverCoveredM2,
            double uncoveredM2,
            double overlapM2,
            double savedL,
            double skippedL,
            double overlapL) {
        Score plus(Score o) {
            return new Score(
                    offOverCoveredM2 + o.offOverCoveredM2,
                    uncoveredM2 + o.uncoveredM2,
                    overlapM2 + o.overlapM2,
                    savedL + o.savedL,
                    skippedL + o.skippedL,
                    overlapL + o.overlapL);
        }
    }

    /**
     * Returns the score of a job.
     *
     * @param priorCoverage per visit, its part that earlier visits cover
     * @param reasons why rows had no flow: only rows that were shut off count as off
     */
    public static ShutOffScore score(
            VisitIndex index,
            List<Geometry> priorCoverage,
            Poses poses,
            Delivery delivery,
            @Nullable Boundary boundary,
            OffReasons reasons,
            int threads) {
        ShutOffs work = new ShutOffs(index, poses, delivery, boundary, reasons);
        List<Score> scores = ParallelTasks.map(index.size(), threads, i -> work.one(i, priorCoverage.get(i)));
        Score sum = new Score(0, 0, 0, 0, 0, 0);
        for (Score score : scores) {
            sum = sum.plus(score);
        }
        return new ShutOffScore(
                sum.offOverCoveredM2, sum.uncoveredM2, sum.overlapM2, sum.savedL, sum.skippedL, sum.overlapL);
    }

    private Score one(int i, Geometry priorCoverage) {
        Visit visit = index.get(i);
        if (visit.kind() == Kind.NOT_DELIVERING) {
            return notDelivering(visit);
        }
        double overlapM2 = priorCoverage.getArea();
        double litres = overlapM2 == 0 ? 0 : volumeL(visit) * overlapM2 / visit.runAreaM2();
        return new Score(0, 0, overlapM2, 0, 0, litres);
    }

    private Score notDelivering(Visit visit) {
        double share = reasons.shutOffShare(visit.strip(), poses);
        if (share == 0) {
            return new Score(0, 0, 0, 0, 0, 0);
        }
        List<Geometry> parts = new ArrayList<>();
        for (int i : index.near(visit.polygon().getEnvelopeInternal())) {
            Visit other = index.get(i);
            if (other.delivers() && !other.apartFrom(visit)) {
                parts.addAll(Jts.polygons(Jts.intersection(visit.polygon(), other.polygon())));
            }
        }
        Geometry covered = Unions.union(parts, 1);
        Geometry uncovered = covered.isEmpty() ? visit.polygon() : Jts.difference(visit.polygon(), covered);
        if (boundary != null) {
            uncovered = Jts.intersection(uncovered, boundary.area());
        }
        double target = targetLPerM2(visit.strip());
        double rightM2 = share * covered.getArea();
        double skipM2 = share * uncovered.getArea();
        return new Score(rightM2, skipM2, 0, litres(target, rightM2), litres(target, skipM2), 0);
    }

    private static double litres(double targetLPerM2, double areaM2) {
        return areaM2 == 0 ? 0 : targetLPerM2 * areaM2;
    }

    /** Returns the target of the first product, mean over time and rows of the strip, L/m²; NaN if a step has none. */
    private double targetLPerM2(StripPolygon strip) {
        double sum = 0;
        double timeS = 0;
        for (int k = strip.firstStep(); k < strip.endStep(); k++) {
            sum += delivery.meanTargetLPerM2(0, strip.firstRow() - 1, strip.lastRow(), k) * poses.durationS(k);
            timeS += poses.durationS(k);
        }
        return sum / timeS;
    }

    /** Returns the volume of the first product on the strip, L. */
    private double volumeL(Visit visit) {
        double sum = 0;
        for (int r = visit.strip().firstRow() - 1; r < visit.strip().lastRow(); r++) {
            for (int k = visit.strip().firstStep(); k < visit.strip().endStep(); k++) {
                sum += delivery.flowLPerS(0, r, k) * poses.durationS(k);
            }
        }
        return sum;
    }
}
