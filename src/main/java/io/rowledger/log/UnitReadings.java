package io.rowledger.log;

import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import io.rowledger.units.Dimension;
import io.rowledger.units.Factor;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.Unit;
import io.rowledger.units.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What the values of a column without a unit come to in each unit: rate = flow ÷ (width · speed), in gal/ac. One of the
 * readings usually is the rate that the job was planned with.
 */
final class UnitReadings {
    /** Speed where the log has none that can be read, m/s: 5.5 mph, common practice, no source. */
    private static final double DEFAULT_MPS = 5.5 * Factor.METRES_PER_SECOND_PER_MPH;

    private static final List<String> FLOWS = List.of("gal/min", "L/min", "oz/min");
    private static final List<String> RATES = List.of("gal/ac", "L/ha");

    private UnitReadings() {}

    /** Returns the readings of a column, such as "gal/min gives 41 gal/ac at 5.5 mph"; empty if it holds no numbers. */
    static String of(LogPreview preview, int column, boolean mayBeRate, boolean ofBar) {
        double[] values = preview.texts(column).stream()
                .mapToDouble(text -> NumberParser.parse(text, preview.mark()))
                .filter(value -> value > 0)
                .sorted()
                .toArray();
        if (values.length == 0) {
            return "";
        }
        double value = values[values.length / 2];
        double speedMps = speedMps(preview);
        BarLayout bar = preview.options().bar();
        int rows = Math.max(1, preview.plan().outlets());
        double widthM = ofBar ? rows * bar.widthM(1) : bar.widthM(1);
        List<String> readings = new ArrayList<>();
        for (String symbol : FLOWS) {
            double flowLPerS =
                    value * Unit.find(symbol, Dimension.FLOW).orElseThrow().toSi();
            readings.add(symbol + " gives " + gallonsPerAcre(flowLPerS / (widthM * speedMps)));
        }
        for (String symbol : mayBeRate ? RATES : List.<String>of()) {
            double rate =
                    value * Unit.find(symbol, Dimension.RATE).orElseThrow().toSi();
            readings.add(symbol + " gives " + gallonsPerAcre(rate));
        }
        return String.format(
                Locale.ROOT,
                "%s, at %.1f mph and %.0f in",
                String.join(", ", readings),
                speedMps / Factor.METRES_PER_SECOND_PER_MPH,
                QuantityKind.SMALL_LENGTH.from(widthM, UnitSystem.US));
    }

    private static String gallonsPerAcre(double lPerM2) {
        double galPerAc = QuantityKind.RATE.from(lPerM2, UnitSystem.US);
        return String.format(Locale.ROOT, galPerAc < 10 ? "%.1f gal/ac" : "%.0f gal/ac", galPerAc);
    }

    private static double speedMps(LogPreview preview) {
        ColumnPlan.Column speed = preview.plan().find(LogQuantity.SPEED);
        if (speed == null) {
            return DEFAULT_MPS;
        }
        double[] moving = preview.texts(speed.index()).stream()
                .mapToDouble(text -> NumberParser.parse(text, preview.mark()) * speed.toSi())
                .filter(value -> value > 0.5)
                .sorted()
                .toArray();
        return moving.length == 0 ? DEFAULT_MPS : moving[moving.length / 2];
    }
}
