package io.rowledger.report.record;

import io.rowledger.report.record.NitrogenRecord.MapClass;
import io.rowledger.report.record.NitrogenRecord.MapKey;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/**
 * Classes of the nitrogen map: absolute amounts, cut where the place's total leaves the plan by 10, 20 and 50 %.
 *
 * <p>A bound is plan × k − what came before; bounds at or below zero are left out with their colours.
 */
final class NitrogenMapKey {
    private static final double[] CUTS = {0.5, 0.8, 0.9, 1.1, 1.2, 1.5};
    /** Number of the class around the plan. */
    private static final int ON_PLAN = 3;
    /** Amounts from here on are labelled without a decimal. */
    private static final double COARSE_FROM = 20;

    private final UnitFormat f;
    private final NitrogenGrid ground;
    private final QuantityKind measure;

    NitrogenMapKey(NitrogenGrid ground, UnitFormat f) {
        this.f = f;
        this.ground = ground;
        this.measure = ground.isNitrogen() ? QuantityKind.NITROGEN_RATE : QuantityKind.RATE;
    }

    /**
     * The key.
     *
     * @param title what the map shows
     * @param middlePerM2 plan, mean target or mean rate the classes stand around
     * @param beforePerM2 what came before
     * @param middleName what the middle is, in words that follow "within 10% of"
     */
    MapKey build(String title, double middlePerM2, double beforePerM2, String middleName) {
        List<Double> bounds = new ArrayList<>();
        int left = 0;
        for (double cut : CUTS) {
            double bound = middlePerM2 * cut - beforePerM2;
            if (bound > 0) {
                bounds.add(bound);
            } else {
                left++;
            }
        }
        double[] cuts = bounds.stream().mapToDouble(Double::doubleValue).toArray();
        double[] areas = ground.areaPerClass(cuts);
        double total = 0;
        for (double areaM2 : areas) {
            total += areaM2;
        }
        List<MapClass> classes = new ArrayList<>();
        for (int k = 0; k < areas.length; k++) {
            classes.add(new MapClass(
                    label(cuts, k),
                    total > 0 ? f.percent(areas[k] / total * 100) : UnitFormat.UNKNOWN,
                    k + left == ON_PLAN ? "within 10% of " + middleName : ""));
        }
        return new MapKey(title, f.unit(measure), classes, "skipped: got none", bounds, left);
    }

    private String label(double[] cuts, int k) {
        if (cuts.length == 0) {
            return "any amount";
        }
        if (k == 0) {
            return "up to " + amount(cuts[0]);
        }
        return k == cuts.length ? "more than " + amount(cuts[k - 1]) : amount(cuts[k - 1]) + " to " + amount(cuts[k]);
    }

    private String amount(double perM2) {
        double value = measure.from(perM2, f.system());
        return f.fixed(value, value < COARSE_FROM ? 1 : 0);
    }
}
