package io.rowledger.setback;

import io.rowledger.coverage.AppliedArea;
import io.rowledger.field.KeepOut;
import io.rowledger.field.KeepOuts;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.rig.Product;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * What was applied within setbacks, from areas that a map hands in: volume = Σ rate × (area inside). When, by which pass and by
 * which rows is unknown.
 */
public final class AreaSetbacks {
    private AreaSetbacks() {}

    /** Compares every place with every area. */
    public static Setbacks of(KeepOuts keepOuts, List<AppliedArea> areas, List<Product> products) {
        List<Setback> places = new ArrayList<>();
        for (KeepOut keepOut : keepOuts.places()) {
            places.add(of(keepOut, areas, products));
        }
        return new Setbacks(keepOuts.file(), places);
    }

    private static Setback of(KeepOut keepOut, List<AppliedArea> areas, List<Product> products) {
        double[] volumeL = new double[products.size()];
        double closestM = Double.NaN;
        List<Geometry> inside = new ArrayList<>();
        double mostL = 0;
        Geometry most = null;
        for (AppliedArea area : areas) {
            if (!area.applied()) {
                continue;
            }
            double awayM = area.ground().distance(keepOut.place());
            closestM = Double.isNaN(closestM) ? awayM : Math.min(closestM, awayM);
            Geometry part = keepOut.ground().isEmpty()
                            || !area.ground()
                                    .getEnvelopeInternal()
                                    .intersects(keepOut.ground().getEnvelopeInternal())
                    ? Jts.FACTORY.createPolygon()
                    : Jts.intersection(area.ground(), keepOut.ground());
            if (part.isEmpty()) {
                continue;
            }
            inside.add(part);
            double partL = 0;
            for (int p = 0; p < volumeL.length; p++) {
                double rate = area.rateLPerM2()[p];
                double ofProduct = Double.isNaN(rate) ? 0 : rate * part.getArea();
                volumeL[p] += ofProduct;
                partL += ofProduct;
            }
            if (most == null || partL > mostL) {
                most = part;
                mostL = partL;
            }
        }
        double[] nitrogenKg = new double[volumeL.length];
        double sumL = 0;
        for (int p = 0; p < volumeL.length; p++) {
            sumL += volumeL[p];
            nitrogenKg[p] = volumeL[p] == 0 ? 0 : volumeL[p] * products.get(p).nitrogenKgPerL();
        }
        Coordinate at =
                most == null ? new Coordinate() : most.getInteriorPoint().getCoordinate();
        return new Setback(
                keepOut,
                volumeL,
                nitrogenKg,
                inside.isEmpty() ? 0 : Unions.union(inside, 1).getArea(),
                Double.NaN,
                Double.NaN,
                List.of(),
                List.of(),
                most == null ? null : new Setback.Worst(0, 0, Double.NaN, sumL, at.x, at.y),
                closestM);
    }
}
