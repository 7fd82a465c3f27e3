package io.rowledger.report.review;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.rate.TurnShift;
import io.rowledger.rig.Price;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import java.util.LinkedHashMap;
import java.util.Map;

/** Nitrogen, money and uncertainty of the what-if alternatives. */
public final class WhatIfFigures {
    /** Smallest difference that shows without bounds, m²: polygons are rounded to a grid. */
    private static final double NONE_M2 = 0.5;

    /** Fraction of the turning from which a machine compensates; the rest is its delay (1). */
    private static final double COMPENSATES = 0.8;

    /** Fraction of worked ground off by 5 % or more below which turning is no gain a log can show; common practice, no source. */
    private static final double MIN_TURNED = 0.001;

    private final Rig rig;
    private final Coverage coverage;
    private final Intervals intervals;
    private final double sweptAreaM2;

    /**
     * The figures of a job.
     *
     * @param sweptAreaM2 swept ground of the job, m²
     */
    public WhatIfFigures(Rig rig, Coverage coverage, Intervals intervals, double sweptAreaM2) {
        this.rig = rig;
        this.coverage = coverage;
        this.intervals = intervals;
        this.sweptAreaM2 = sweptAreaM2;
    }

    /** The liquids' nitrogen, kg; NaN if it is not known for a product with volume. */
    public double nitrogenKg(double[] litres) {
        double sum = 0;
        for (int p = 0; p < litres.length; p++) {
            sum += litres[p] == 0 ? 0 : litres[p] * rig.products().get(p).nitrogenKgPerL();
        }
        return sum;
    }

    /** What the liters of product p cost; NaN without a price. */
    public double money(int p, double litres) {
        Product product = rig.products().get(p);
        Price price = rig.job().prices().get(product.key());
        return price == null ? Double.NaN : price.perLitreOf(product) * litres;
    }

    /** Money by currency, never added up across; empty where no product with any of the liters has a price. */
    public Map<String, Double> money(double[] litres) {
        Map<String, Double> sums = new LinkedHashMap<>();
        for (int p = 0; p < litres.length; p++) {
            Price price = rig.job().prices().get(rig.products().get(p).key());
            if (price != null && Double.isFinite(money(p, litres[p])) && litres[p] != 0) {
                sums.merge(price.currency(), money(p, litres[p]), Double::sum);
            }
        }
        return sums;
    }

    /** Half width of the overlap, m²: the smallest difference in it that shows. */
    public double halfM2() {
        Interval overlap = intervals.overlapAreaM2();
        return overlap.known() ? Math.max(NONE_M2, (overlap.high() - overlap.low()) / 2) : NONE_M2;
    }

    /** Half width of such a volume of product p, from the ground and the meters, L. */
    public double halfL(int p, double litres) {
        Interval volume = intervals.products().get(p).volumeL();
        double meters = volume.known() && volume.value() > 0 ? (volume.high() - volume.low()) / 2 / volume.value() : 0;
        double rate = coverage.received().get(p).meanRateLPerM2();
        return Math.hypot(Double.isFinite(rate) ? halfM2() * rate : 0, meters * litres);
    }

    /** True if the change of ground exceeds the uncertainty of the overlap. */
    public boolean shows(ShutOffCase one) {
        return Math.abs(one.overlapLessM2()) + one.outsideLessM2() > halfM2();
    }

    /** True if the machine did not compensate and enough ground was off by it. */
    public boolean shows(TurnShift turn) {
        return turn.known() && turn.takenOut() < COMPENSATES && turn.beyond5M2() > MIN_TURNED * sweptAreaM2;
    }
}
