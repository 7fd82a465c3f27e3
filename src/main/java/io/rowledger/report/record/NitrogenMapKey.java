package io.rowledger.report.record;

import io.rowledger.document.text.Messages;
import io.rowledger.report.record.NitrogenRecord.MapClass;
import io.rowledger.report.record.NitrogenRecord.MapKey;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Classes of the nitrogen map: amounts, with bounds where the total leaves the plan by 10, 20 and 50 %.
 *
 * <p>A bound is plan × k − earlier nitrogen; bounds at or below zero are left out with their colors.
 */
final class NitrogenMapKey {
    /** Bounds as multiples of the plan. */
    private static final double[] BOUNDS = {
        0.5, 0.8, 1 - NitrogenGrid.ON_PLAN_SHARE, 1 + NitrogenGrid.ON_PLAN_SHARE, 1.2, 1.5
    };
    /** Index of the class around the plan. */
    private static final int ON_PLAN = 3;
    /** Amounts below this, in the reader's unit, are labeled with a decimal. */
    private static final double MAX_DECIMAL = 20;

    private final Messages messages;
    private final NitrogenGrid ground;
    private final QuantityKind kind;

    NitrogenMapKey(NitrogenGrid ground, Messages messages) {
        this.messages = messages;
        this.ground = ground;
        this.kind = ground.isNitrogen() ? QuantityKind.NITROGEN_RATE : QuantityKind.RATE;
    }

    /**
     * The key.
     *
     * @param title what the map shows
     * @param middlePerM2 plan, mean target or mean rate: the classes lie around it
     * @param earlierPerM2 earlier applications and credits
     * @param middle names the middle
     */
    MapKey build(String title, double middlePerM2, double earlierPerM2, Message middle) {
        List<Double> bounds = new ArrayList<>();
        int left = 0;
        for (double multiple : BOUNDS) {
            double bound = middlePerM2 * multiple - earlierPerM2;
            if (bound > 0) {
                bounds.add(bound);
            } else {
                left++;
            }
        }
        double[] boundsPerM2 = bounds.stream().mapToDouble(Double::doubleValue).toArray();
        double[] areas = ground.areaPerClass(boundsPerM2);
        double total = 0;
        for (double areaM2 : areas) {
            total += areaM2;
        }
        List<MapClass> classes = new ArrayList<>();
        for (int k = 0; k < areas.length; k++) {
            classes.add(new MapClass(
                    messages.text(label(boundsPerM2, k)),
                    total > 0
                            ? messages.units().percent(areas[k] / total * 100)
                            : messages.units().unknown(),
                    k + left == ON_PLAN ? messages.text("record.map.onPlan", NitrogenGrid.ON_PLAN_PCT, middle) : ""));
        }
        return new MapKey(
                title, messages.units().unit(kind), classes, messages.text("record.map.skipped"), bounds, left);
    }

    private Message label(double[] boundsPerM2, int k) {
        if (boundsPerM2.length == 0) {
            return Message.of("record.map.any");
        }
        if (k == 0) {
            return Message.of("record.map.upTo", amount(boundsPerM2[0]));
        }
        return k == boundsPerM2.length
                ? Message.of("record.map.moreThan", amount(boundsPerM2[k - 1]))
                : Message.of("record.map.between", amount(boundsPerM2[k - 1]), amount(boundsPerM2[k]));
    }

    private Argument amount(double perM2) {
        double value = kind.from(perM2, messages.units().system());
        return Message.decimal(value, value < MAX_DECIMAL ? 1 : 0);
    }
}
