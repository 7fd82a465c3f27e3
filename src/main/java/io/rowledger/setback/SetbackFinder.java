package io.rowledger.setback;

import io.rowledger.coverage.strips.RowRuns;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.KeepOut;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Product;
import io.rowledger.setback.Setback.Worst;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * Computes what every outlet applied within one setback. Only blocks of steps whose bounding box meets the setback are
 * examined; in each, the setback is first clipped to the block's box, so that a long bank costs no more than its part
 * nearby.
 */
final class SetbackFinder {
    /** Smallest volume, L: half of the last printed decimal. Less is rounding of sums. */
    private static final double NOTHING_L = 0.0005;
    /** Area below which a strip's volume is at a point, m²: a square millimeter. */
    private static final double POINT_M2 = 1e-6;
    /** Distance that both ends of the bar must advance so that no pivot lies on it, m. */
    private static final double ADVANCE_M = 1e-4;

    private final Strips strips;
    private final Poses poses;
    private final Delivery delivery;
    private final StepBlocks blocks;
    private final List<StripPolygon> covered;
    private final List<Touch> touches = new ArrayList<>();
    private final double[] volumeL;
    private final BitSet rows = new BitSet();
    private final double[] e = new double[4];
    private final double[] n = new double[4];
    private double centerE;
    private double centerN;

    /** A step that applied something inside. */
    private record Touch(int step, double volumeL, int row, double eastM, double northM) {}

    SetbackFinder(Strips strips, Delivery delivery, StepBlocks blocks, List<StripPolygon> covered) {
        this.strips = strips;
        this.poses = strips.poses();
        this.delivery = delivery;
        this.blocks = blocks;
        this.covered = covered;
        this.volumeL = new double[delivery.products()];
    }

    Setback find(KeepOut keepOut, List<Product> products) {
        Geometry ground = keepOut.ground();
        PreparedGeometry prepared = PreparedGeometryFactory.prepare(ground);
        for (int b = 0; b < blocks.count() && !ground.isEmpty(); b++) {
            Envelope box = blocks.of(b);
            if (!box.isNull() && box.intersects(ground.getEnvelopeInternal())) {
                block(b, ground, prepared);
            }
        }
        double sumL = touches.stream().mapToDouble(Touch::volumeL).sum();
        boolean any = sumL > NOTHING_L;
        double[] nitrogenKg = new double[volumeL.length];
        for (int p = 0; p < volumeL.length; p++) {
            volumeL[p] = any ? volumeL[p] : 0;
            nitrogenKg[p] = volumeL[p] == 0 ? 0 : volumeL[p] * products.get(p).nitrogenKgPerL();
        }
        Touch last = any ? touches.get(touches.size() - 1) : null;
        return new Setback(
                keepOut,
                volumeL,
                nitrogenKg,
                coveredM2(ground, prepared),
                any ? poses.timeS(touches.get(0).step()) : Double.NaN,
                last != null ? poses.timeS(last.step() + 1) : Double.NaN,
                any
                        ? touches.stream()
                                .map(t -> poses.pass(t.step()))
                                .distinct()
                                .sorted()
                                .toList()
                        : List.of(),
                any ? rows.stream().mapToObj(r -> r + 1).toList() : List.of(),
                any ? worst() : null,
                ClosestApproach.closestM(keepOut.place(), strips, delivery, blocks));
    }

    private void block(int b, Geometry ground, PreparedGeometry prepared) {
        Geometry box = Jts.FACTORY.toGeometry(blocks.of(b));
        if (!prepared.intersects(box)) {
            return;
        }
        ClippedArea local = null;
        Envelope near = blocks.of(b);
        if (!prepared.covers(box)) {
            Geometry piece = Jts.intersection(ground, box);
            if (piece.isEmpty()) {
                return;
            }
            near = piece.getEnvelopeInternal();
            local = new ClippedArea(piece);
        }
        for (int k = blocks.first(b); k < blocks.end(b); k++) {
            if (poses.working(k) && blocks.box(k).intersects(near)) {
                step(k, local);
            }
        }
    }

    /** Adds what step k applied inside; a missing area means that all of the bar is inside. */
    private void step(int k, @Nullable ClippedArea local) {
        double sumL = 0;
        double maxL = 0;
        int maxRow = -1;
        double maxE = 0;
        double maxN = 0;
        for (int r = 0; r < strips.rows(); r++) {
            double allL = flowLPerS(r, k) * poses.durationS(k);
            double share = allL == 0 ? 0 : share(k, r, local);
            if (share == 0) {
                continue;
            }
            rows.set(r);
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += share * delivery.flowLPerS(p, r, k) * poses.durationS(k);
            }
            sumL += share * allL;
            if (share * allL > maxL) {
                maxL = share * allL;
                maxRow = r;
                maxE = centerE;
                maxN = centerN;
            }
        }
        if (maxRow >= 0) {
            touches.add(new Touch(k, sumL, maxRow + 1, maxE, maxN));
        }
    }

    private double flowLPerS(int r, int k) {
        double sum = 0;
        for (int p = 0; p < volumeL.length; p++) {
            sum += delivery.flowLPerS(p, r, k);
        }
        return sum;
    }

    /** Returns the fraction of outlet r's ground in step k that lies inside, and sets the center of that part. */
    private double share(int k, int r, @Nullable ClippedArea local) {
        double left = strips.leftM(r);
        double right = strips.rightM(r);
        double a = RowRuns.forwardM(poses, k, left);
        double b = RowRuns.forwardM(poses, k, right);
        boolean oneWay = Math.min(a, b) > ADVANCE_M || Math.max(a, b) < -ADVANCE_M;
        if (oneWay || a * b >= 0) {
            return share(k, left, right, local);
        }
        // The row goes forward at one end and backward at the other: cut it at the pivot, as the received grid does.
        double t = a / (a - b);
        double pivot = left + t * (right - left);
        double first = share(k, left, pivot, local);
        double firstE = centerE;
        double firstN = centerN;
        double second = share(k, pivot, right, local);
        if (first * t > second * (1 - t)) {
            centerE = firstE;
            centerN = firstN;
        }
        return t * first + (1 - t) * second;
    }

    private double share(int k, double left, double right, @Nullable ClippedArea local) {
        e[0] = poses.eastM(k, left);
        n[0] = poses.northM(k, left);
        e[1] = poses.eastM(k + 1, left);
        n[1] = poses.northM(k + 1, left);
        e[2] = poses.eastM(k + 1, right);
        n[2] = poses.northM(k + 1, right);
        e[3] = poses.eastM(k, right);
        n[3] = poses.northM(k, right);
        centerE = (e[0] + e[1] + e[2] + e[3]) / 4;
        centerN = (n[0] + n[1] + n[2] + n[3]) / 4;
        if (local == null) {
            return 1;
        }
        double areaM2 = strips.signedAreaM2(k, left, right);
        if (Math.abs(areaM2) <= POINT_M2) {
            return local.holds(centerE, centerN) ? 1 : 0;
        }
        double insideM2 = local.inside(e, n);
        if (Math.abs(insideM2) <= POINT_M2) {
            return 0;
        }
        centerE = local.centerEastM(insideM2);
        centerN = local.centerNorthM(insideM2);
        return Math.max(0, Math.min(1, insideM2 / areaM2));
    }

    /** Returns the area inside on which outlets delivered, each place once, m². */
    private double coveredM2(Geometry ground, PreparedGeometry prepared) {
        List<Geometry> inside = new ArrayList<>();
        for (StripPolygon strip : covered) {
            if (strip.delivering()
                    && strip.polygon().getEnvelopeInternal().intersects(ground.getEnvelopeInternal())
                    && prepared.intersects(strip.polygon())) {
                inside.add(
                        prepared.covers(strip.polygon()) ? strip.polygon() : Jts.intersection(strip.polygon(), ground));
            }
        }
        return inside.isEmpty() ? 0 : Unions.union(inside, 1).getArea();
    }

    private Worst worst() {
        int worstPass = 0;
        double worstL = -1;
        for (int from = 0; from < touches.size(); ) {
            int pass = pass(from);
            int to = from;
            double sumL = 0;
            while (to < touches.size() && pass(to) == pass) {
                sumL += touches.get(to++).volumeL();
            }
            if (sumL > worstL) {
                worstL = sumL;
                worstPass = pass;
            }
            from = to;
        }
        double sumL = 0;
        for (Touch touch : touches) {
            sumL += poses.pass(touch.step()) == worstPass ? touch.volumeL() : 0;
            if (sumL >= worstL / 2) {
                return new Worst(
                        worstPass, touch.row(), poses.timeS(touch.step()), worstL, touch.eastM(), touch.northM());
            }
        }
        throw new IllegalStateException("a sum that never reaches its half");
    }

    private int pass(int touch) {
        return poses.pass(touches.get(touch).step());
    }
}
