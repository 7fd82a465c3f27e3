package io.rowledger.document.chart;

import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * An axis: its ends and its marks. Values grow upward and to the right, or downward where {@code down} is set.
 *
 * @param low value at the lower or left end
 * @param high value at the other end, above low
 * @param ticks marks with their labels, rising
 * @param grid true if a line runs across the chart at every mark
 * @param down true if the low end is on top
 */
public record Scale(double low, double high, List<Tick> ticks, boolean grid, boolean down) {
    /** A mark and its label, which may be empty. */
    public record Tick(double value, String label) {}

    /** Copies the marks. */
    public Scale {
        if (!(high > low)) {
            throw new IllegalArgumentException("an axis from " + low + " to " + high);
        }
        ticks = List.copyOf(ticks);
    }

    /** A scale with about {@code n} round marks whose ends are marks too. */
    public static Scale round(double low, double high, int n, boolean signed, UnitFormat f) {
        double step = Axis.step(high - low, n);
        return marked(Math.floor(low / step) * step, Math.ceil(high / step) * step, step, signed, f);
    }

    /** A scale from 0 to somewhat above {@code max} with about {@code n} round marks; to 1 if max is unknown or 0. */
    public static Scale fromZero(double max, int n, UnitFormat f) {
        double high = 1.12 * (Double.isFinite(max) && max > 0 ? max : 1);
        return marked(0, high, Axis.step(high, n), false, f);
    }

    private static Scale marked(double low, double high, double step, boolean signed, UnitFormat f) {
        List<Tick> ticks = new ArrayList<>();
        for (int i = 0; low + i * step <= high + step * 1e-6; i++) {
            double value = low + i * step;
            String sign = signed && value > step / 2 ? "+" : "";
            ticks.add(new Tick(value, sign + f.fixed(value, Axis.decimals(step))));
        }
        return new Scale(low, high, ticks, true, false);
    }

    /** Slots numbered from {@code first}; the middle of slot i is at i. */
    public static Scale slots(int first, int count) {
        return slots(IntStream.range(first, first + count)
                .mapToObj(Integer::toString)
                .toList());
    }

    /** Slots with these labels from the left. */
    public static Scale slots(List<String> labels) {
        List<Tick> ticks = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            ticks.add(new Tick(i, labels.get(i)));
        }
        return new Scale(-0.5, labels.size() - 0.5, ticks, false, false);
    }

    /** The same scale with its low end on top. */
    public Scale downward() {
        return new Scale(low, high, ticks, grid, true);
    }
}
