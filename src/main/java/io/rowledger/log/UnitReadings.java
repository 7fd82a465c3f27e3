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
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * What the values of a column without a unit come to in each unit: rate = flow ÷ (width · speed), in gal/ac. One of the
 * readings usually is the rate that the job was planned with.
 */
final class UnitReadings {
    /** Speed where the log has none that can be read, m/s: 5.5 mph, common practice, no source. */
    private static final double DEFAULT_MPS = 5.5 * Factor.METRES_PER_SECOND_PER_MPH;

    /** Slowest speed that counts as moving, m/s. */
    private static final double MIN_MOVING_MPS = 0.5;

    private static final List<String> FLOWS = List.of("gal/min", "L/min", "oz/min");
    private static final List<String> RATES = List.of("gal/ac", "L/ha");

    private UnitReadings() {}

    /**
     * Returns what each unit makes of a column's usual value while the bar moves; empty if it holds no positive numbers.
     *
     * @param values as written
     * @param speedMps of the same lines, m/s; NaN where unknown
     * @param widthM ground that the column serves, m
     */
    static List<LogSurvey.UnitReading> of(double[] values, double[] speedMps, double widthM) {
        double value = usual(values, speedMps);
        if (Double.isNaN(value)) {
            return List.of();
        }
        double gpsMps = usualMps(speedMps);
        double usualMps = Double.isNaN(gpsMps) ? DEFAULT_MPS : gpsMps;
        List<LogSurvey.UnitReading> readings = new ArrayList<>();
        for (String symbol : FLOWS) {
            double flowLPerS =
                    value * Unit.find(symbol, Dimension.FLOW).orElseThrow().toSi();
            readings.add(new LogSurvey.UnitReading(symbol, flowLPerS / (widthM * usualMps), usualMps));
        }
        for (String symbol : RATES) {
            double rateLPerM2 =
                    value * Unit.find(symbol, Dimension.RATE).orElseThrow().toSi();
            readings.add(new LogSurvey.UnitReading(symbol, rateLPerM2, usualMps));
        }
        return readings;
    }

    /** Returns the median of a column's positive values while the machine moves; NaN if there are none. */
    static double usual(double[] values, double[] speedMps) {
        double[] positive = IntStream.range(0, Math.min(values.length, speedMps.length))
                .filter(i -> values[i] > 0 && !(speedMps[i] <= MIN_MOVING_MPS))
                .mapToDouble(i -> values[i])
                .sorted()
                .toArray();
        return positive.length == 0 ? Double.NaN : positive[positive.length / 2];
    }

    /** Returns the median speed while the machine moves, m/s; NaN if it is unknown. */
    static double usualMps(double[] speedMps) {
        double[] moving = Arrays.stream(speedMps)
                .filter(mps -> mps > MIN_MOVING_MPS)
                .sorted()
                .toArray();
        return moving.length == 0 ? Double.NaN : moving[moving.length / 2];
    }

    /** Pearson's correlation of a column with the speed over all samples that hold both; NaN if one of them is constant. */
    static double correlation(double[] values, double[] speedMps) {
        double n = 0;
        double x = 0;
        double y = 0;
        double xx = 0;
        double yy = 0;
        double xy = 0;
        for (int i = 0; i < Math.min(values.length, speedMps.length); i++) {
            if (!Double.isNaN(values[i]) && !Double.isNaN(speedMps[i])) {
                n++;
                x += values[i];
                y += speedMps[i];
                xx += values[i] * values[i];
                yy += speedMps[i] * speedMps[i];
                xy += values[i] * speedMps[i];
            }
        }
        double spread = (n * xx - x * x) * (n * yy - y * y);
        return spread > 0 ? (n * xy - x * y) / Math.sqrt(spread) : Double.NaN;
    }

    /** Returns the readings of a column, such as "gal/min gives 41 gal/ac at 5.5 mph"; empty if it holds no numbers. */
    static String of(LogPreview preview, int column, boolean mayBeFlow, boolean mayBeRate, boolean ofBar) {
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
        for (String symbol : mayBeFlow ? FLOWS : List.<String>of()) {
            double flowLPerS =
                    value * Unit.find(symbol, Dimension.FLOW).orElseThrow().toSi();
            readings.add(symbol + " gives " + gallonsPerAcre(flowLPerS / (widthM * speedMps)));
        }
        for (String symbol : mayBeRate ? RATES : List.<String>of()) {
            double rate =
                    value * Unit.find(symbol, Dimension.RATE).orElseThrow().toSi();
            readings.add(symbol + " gives " + gallonsPerAcre(rate));
        }
        if (!mayBeFlow) {
            return String.join(", ", readings);
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
                .filter(value -> value > MIN_MOVING_MPS)
                .sorted()
                .toArray();
        return moving.length == 0 ? DEFAULT_MPS : moving[moving.length / 2];
    }
}
