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

/** Scores the rows' shutting off, in swept area, visit by visit. */
public final class ShutOffs {
    private final VisitIndex index;
    private final Poses poses;
    private final Delivery delivery;
    private final @Nullable Boundary boundary;

    private ShutOffs(VisitIndex index, Poses poses, Delivery delivery, @Nullable Boundary boundary) {
        this.index = index;
        this.poses = poses;
        this.delivery = delivery;
        this.boundary = boundary;
    }

    private record Score(double rightM2, double bareM2, double doubleM2, double savedL, double lackL, double overlapL) {
        Score plus(Score o) {
            return new Score(
                    rightM2 + o.rightM2,
                    bareM2 + o.bareM2,
                    doubleM2 + o.doubleM2,
                    savedL + o.savedL,
                    lackL + o.lackL,
                    overlapL + o.overlapL);
        }
    }

    public static ShutOffScore score(
            VisitIndex index,
            List<Geometry> doneAlready,
            Poses poses,
            Delivery delivery,
            @Nullable Boundary boundary,
            int threads) {
        ShutOffs work = new ShutOffs(index, poses, delivery, boundary);
        List<Score> scores = ParallelTasks.map(index.size(), threads, i -> work.one(i, doneAlready.get(i)));
        Score sum = new Score(0, 0, 0, 0, 0, 0);
        for (Score score : scores) {
            sum = sum.plus(score);
        }
        return new ShutOffScore(sum.rightM2, sum.bareM2, sum.doubleM2, sum.savedL, sum.lackL, sum.overlapL);
    }

    private Score one(int i, Geometry doneAlready) {
        Visit visit = index.get(i);
        if (visit.kind() == Kind.SILENT) {
            return silent(visit);
        }
        double doubleM2 = doneAlready.getArea();
        double litres = doubleM2 == 0 ? 0 : volumeL(visit) * doubleM2 / visit.runAreaM2();
        return new Score(0, 0, doubleM2, 0, 0, litres);
    }

    private Score silent(Visit visit) {
        List<Geometry> done = new ArrayList<>();
        for (int i : index.near(visit.polygon().getEnvelopeInternal())) {
            Visit other = index.get(i);
            if (other.delivers() && !other.apartFrom(visit)) {
                done.addAll(Jts.polygons(Jts.intersection(visit.polygon(), other.polygon())));
            }
        }
        Geometry right = Unions.union(done, 1);
        Geometry bare = right.isEmpty() ? visit.polygon() : Jts.difference(visit.polygon(), right);
        if (boundary != null) {
            bare = Jts.intersection(bare, boundary.area());
        }
        double target = targetLPerM2(visit.strip());
        return new Score(
                right.getArea(), bare.getArea(), 0, litres(target, right.getArea()), litres(target, bare.getArea()), 0);
    }

    private static double litres(double targetLPerM2, double areaM2) {
        return areaM2 == 0 ? 0 : targetLPerM2 * areaM2;
    }

    /** Target of the first product, mean over the time and the rows of the strip; NaN where a step has none. */
    private double targetLPerM2(StripPolygon strip) {
        double sum = 0;
        double timeS = 0;
        for (int k = strip.firstStep(); k < strip.endStep(); k++) {
            sum += delivery.meanTargetLPerM2(0, strip.firstRow() - 1, strip.lastRow(), k) * poses.durationS(k);
            timeS += poses.durationS(k);
        }
        return sum / timeS;
    }

    /** Volume of the first product put on the strip, L. */
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
