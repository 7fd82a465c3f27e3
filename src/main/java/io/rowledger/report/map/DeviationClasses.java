package io.rowledger.report.map;

import io.rowledger.rate.DeviationLimits;
import io.rowledger.text.Message;

/**
 * Classes of deviation from a target, from far under to far over, with bounds at {@link DeviationLimits}.
 *
 * <p>Colors: PuOr in seven classes, C. Brewer and M. Harrower, ColorBrewer 2.0 (color-blind safe, print friendly).
 */
public final class DeviationClasses {
    private static final int[] COLORS = {0xb35806, 0xf1a340, 0xfee0b6, 0xf7f7f7, 0xd8daeb, 0x998ec3, 0x542788};
    /** Upper bounds of the classes but the last, as fractions of the target. */
    private static final double[] BOUNDS = {
        -DeviationLimits.FAR,
        -DeviationLimits.ACT,
        -DeviationLimits.WATCH,
        DeviationLimits.WATCH,
        DeviationLimits.ACT,
        DeviationLimits.FAR
    };
    /** The class on target. */
    public static final int ON_TARGET = BOUNDS.length / 2;

    private DeviationClasses() {}

    /** Number of classes. */
    public static int count() {
        return COLORS.length;
    }

    /** Color of a class, RGB. */
    public static int color(int i) {
        return COLORS[i];
    }

    /** Upper bound of a class as a fraction of the target; infinity for the last. */
    public static double upTo(int i) {
        return i < BOUNDS.length ? BOUNDS[i] : Double.POSITIVE_INFINITY;
    }

    /** Class of a deviation given as a fraction of the target; a deviation on a bound belongs to the class below. */
    public static int of(double deviation) {
        int i = 0;
        while (i < BOUNDS.length && deviation > BOUNDS[i]) {
            i++;
        }
        return i;
    }

    /**
     * Name of a class.
     *
     * @param hasTarget false where the deviation is from the mean
     */
    public static Message name(int i, boolean hasTarget) {
        if (i == ON_TARGET) {
            return Message.of(hasTarget ? "words.deviation.onTarget" : "words.deviation.onMean", pct(BOUNDS[i]));
        }
        if (i == 0) {
            return Message.of("words.deviation.farUnder", pct(BOUNDS[0]));
        }
        if (i == BOUNDS.length) {
            return Message.of("words.deviation.farOver", pct(BOUNDS[i - 1]));
        }
        return i < ON_TARGET
                ? Message.of("words.deviation.under", pct(BOUNDS[i]), pct(BOUNDS[i - 1]))
                : Message.of("words.deviation.over", pct(BOUNDS[i - 1]), pct(BOUNDS[i]));
    }

    /** Name of a class where room is short and the reader knows from what the deviation is. */
    public static Message shortName(int i) {
        if (i == ON_TARGET) {
            return Message.of("words.deviation.onShort", pct(BOUNDS[i]));
        }
        if (i == 0) {
            return Message.of("words.deviation.farUnderShort", pct(BOUNDS[0]));
        }
        return i == BOUNDS.length ? Message.of("words.deviation.farOverShort", pct(BOUNDS[i - 1])) : name(i, true);
    }

    private static long pct(double fraction) {
        return Math.round(Math.abs(fraction) * 100);
    }
}
