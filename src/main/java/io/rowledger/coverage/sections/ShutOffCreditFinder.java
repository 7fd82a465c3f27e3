package io.rowledger.coverage.sections;

import io.rowledger.coverage.strips.StripEdges;
import io.rowledger.coverage.strips.StripOutline;
import io.rowledger.coverage.strips.StripOutline.Sides;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Computes, per product, pass and row, the target volume that a shut-off row rightly did not apply because an earlier visit had
 * covered the ground.
 */
public final class ShutOffCreditFinder {
    private final VisitIndex index;
    private final Strips strips;
    private final Delivery delivery;

    private ShutOffCreditFinder(VisitIndex index, Strips strips, Delivery delivery) {
        this.index = index;
        this.strips = strips;
        this.delivery = delivery;
    }

    /** Returns the credit of every row in every pass. */
    public static ShutOffCredit find(VisitIndex index, Strips strips, Delivery delivery, int passes, int threads) {
        ShutOffCreditFinder finder = new ShutOffCreditFinder(index, strips, delivery);
        double[][][] targetL = new double[delivery.products()][passes][strips.rows()];
        List<double[]> areas = ParallelTasks.map(index.size(), threads, finder::areaByRow);
        for (int i = 0; i < index.size(); i++) {
            StripPolygon strip = index.get(i).strip();
            for (int j = 0; j < areas.get(i).length; j++) {
                for (int p = 0; p < delivery.products() && areas.get(i)[j] > 0; p++) {
                    targetL[p][strip.pass() - 1][strip.firstRow() - 1 + j] +=
                            areas.get(i)[j] * finder.meanTargetLPerM2(p, strip.firstRow() - 1 + j, strip);
                }
            }
        }
        return new ShutOffCredit(targetL);
    }

    /**
     * Returns for each row of a visit without delivery its area that earlier visits covered, m²; an empty array if
     * there is none.
     */
    private double[] areaByRow(int i) {
        Visit visit = index.get(i);
        if (visit.kind() != Kind.NOT_DELIVERING) {
            return new double[0];
        }
        List<Geometry> done = new ArrayList<>();
        for (int j : index.near(visit.polygon().getEnvelopeInternal())) {
            Visit other = index.get(j);
            if (other.delivers() && other.strip().endStep() <= visit.strip().firstStep()) {
                done.addAll(Jts.polygons(Jts.intersection(visit.polygon(), other.polygon())));
            }
        }
        Geometry before = Unions.union(done, 1);
        if (before.isEmpty()) {
            return new double[0];
        }
        StripPolygon strip = visit.strip();
        double[] area = new double[strip.lastRow() - strip.firstRow() + 1];
        if (area.length == 1) {
            area[0] = before.getArea();
            return area;
        }
        StripEdges edges = new StripEdges(strips.poses(), visit.poses());
        Sides sides = new Sides(visit.poses(), visit.poses(), visit.poses());
        for (int j = 0; j < area.length; j++) {
            int r = strip.firstRow() - 1 + j;
            for (Polygon row : StripOutline.polygons(edges, sides, strips.leftM(r), strips.rightM(r))) {
                area[j] += Jts.intersection(before, row).getArea();
            }
        }
        return area;
    }

    private double meanTargetLPerM2(int p, int r, StripPolygon strip) {
        double sum = 0;
        double timeS = 0;
        for (int k = strip.firstStep(); k < strip.endStep(); k++) {
            sum += delivery.targetLPerM2(p, r, k) * strips.poses().durationS(k);
            timeS += strips.poses().durationS(k);
        }
        return sum / timeS;
    }
}
