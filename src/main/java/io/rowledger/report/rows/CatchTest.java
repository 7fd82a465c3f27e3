package io.rowledger.report.rows;

import io.rowledger.document.text.Messages;
import io.rowledger.report.common.Fact;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.util.Arrays;
import java.util.List;

/**
 * What to check by symptom, and the timed catch: common practice, no source, but for its limit of 5 % of the average (Alberta
 * Agriculture, Agdex 606-1, p. 17; University of Idaho boom worksheet). What a row must give is target × speed × row width; in US
 * units gal/min = gal/ac × mph × in ÷ 5940. By hand: 47.7 gal/ac × 5 mph × 30 in ÷ 5940 = 1.205 gal/min, 77 fluid ounces in
 * 30 s.
 */
final class CatchTest {
    /** Farthest a row may be off the mean of the rows, percent. */
    private static final int LIMIT_PCT = 5;
    /** Length of the catch, s. */
    private static final int CATCH_S = 30;
    /** Fluid ounces in a liter: 128 in a US gallon of 3.785411784 L. */
    private static final double OUNCES_PER_L = 128 / 3.785411784;

    private final RowsInput in;
    private final Messages messages;

    CatchTest(RowsInput in, Messages messages) {
        this.in = in;
        this.messages = messages;
    }

    List<Fact> symptoms() {
        return in.oneMeter() ? ofTheBar() : ofRows();
    }

    /** What one meter for the bar can show. */
    private List<Fact> ofTheBar() {
        return List.of(
                symptom("rows.symptom.barLow", "rows.symptom.barLow.check"),
                symptom("rows.symptom.allFast", "rows.symptom.allFast.check"),
                symptom("rows.symptom.allSlide", "rows.symptom.allSlide.check"));
    }

    private List<Fact> ofRows() {
        return List.of(
                symptom("rows.symptom.low", "rows.symptom.low.check"),
                symptom("rows.symptom.spells", "rows.symptom.spells.check"),
                symptom("rows.symptom.share", "rows.symptom.share.check"),
                symptom("rows.symptom.sliding", "rows.symptom.sliding.check"),
                symptom("rows.symptom.lifted", "rows.symptom.lifted.check"),
                symptom("rows.symptom.allFast", "rows.symptom.allFast.check"),
                symptom("rows.symptom.allSlide", "rows.symptom.allSlide.check"));
    }

    private Fact symptom(String see, String check) {
        return new Fact(messages.text(see), messages.text(check));
    }

    List<String> steps() {
        return List.of(
                messages.text("rows.catch.ready"),
                messages.text("rows.catch.wear"),
                messages.text("rows.catch.water"),
                messages.text("rows.catch.place"),
                messages.text("rows.catch.run", CATCH_S),
                messages.text("rows.catch.compare", LIMIT_PCT),
                messages.text(in.oneMeter() ? "rows.catch.tellBar" : "rows.catch.tell"),
                messages.text("rows.catch.back"));
    }

    /** What a row must give at the job's target and usual speed; empty without a target or without times. */
    String figure() {
        if (in.traces().isEmpty() || !UnitFormat.isKnown(in.times().startS())) {
            return "";
        }
        double targetLPerM2 = median(in.traces().get(0).targetLPerM2);
        double speedMps = median(new double[][] {in.traces().get(0).speedMps});
        double widthM = median(new double[][] {
            in.rig().bands().stream()
                    .mapToDouble(band -> band.rightM() - band.leftM())
                    .toArray()
        });
        double flowLPerS = targetLPerM2 * speedMps * widthM;
        if (!(flowLPerS > 0)) {
            return "";
        }
        boolean us = messages.units().system() == UnitSystem.US;
        double caughtL = flowLPerS * CATCH_S;
        return messages.text(
                us ? "rows.catch.figureUs" : "rows.catch.figureMetric",
                Message.value(QuantityKind.RATE, targetLPerM2),
                Message.value(QuantityKind.SPEED, speedMps),
                Message.value(QuantityKind.SMALL_LENGTH, widthM),
                Message.value(QuantityKind.FLOW, flowLPerS),
                Message.decimal(us ? caughtL * OUNCES_PER_L : caughtL, us ? 0 : 2),
                CATCH_S);
    }

    private static double median(double[][] columns) {
        double[] all = Arrays.stream(columns)
                .flatMapToDouble(Arrays::stream)
                .filter(Double::isFinite)
                .toArray();
        return all.length == 0 ? Double.NaN : RobustStatistics.median(all, all.length);
    }
}
