package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Ink;

/**
 * The colours of charts and maps.
 *
 * <p>Received against target: PuOr in seven classes, C. Brewer and M. Harrower, ColorBrewer 2.0 (colour-blind safe,
 * print friendly). Marks: blue, orange and vermillion of M. Okabe and K. Ito, "Color Universal Design" (2008).
 */
public final class Palette {
    /** Far under to far over, PuOr. */
    private static final int[] DEVIATION = {0xb35806, 0xf1a340, 0xfee0b6, 0xf7f7f7, 0xd8daeb, 0x998ec3, 0x542788};
    /** Upper bounds of the classes but the last, as fractions of the target. */
    static final double[] BOUNDS = {-0.20, -0.10, -0.05, 0.05, 0.10, 0.20};

    private static final String[] NAMES = {
        "more than 20% under",
        "10 to 20% under",
        "5 to 10% under",
        "within 5% of target",
        "5 to 10% over",
        "10 to 20% over",
        "more than 20% over"
    };

    /** Skipped: vermillion. */
    public static final int SKIP = 0xd55e00;
    /** Doubled: blue. */
    public static final int DOUBLE = 0x0072b2;
    /** Bare ground under the rate map: darker than every class near the target. */
    public static final int BARE = 0x8f8f8f;
    /** Ground that was covered, where only places matter. */
    public static final int COVERED = 0xe9ece6;

    /** Time in which a row was off or could not be judged: darker than the middle classes, without a hue. */
    public static final int NOT_EVALUATED = 0xb9bdbf;

    public static final int INK = 0x22282b;
    public static final int SOFT = 0x667075;
    public static final int GRID = 0xd5dadc;
    /** The report's one accent, a dark green-blue. */
    public static final int ACCENT = 0x1f5c63;

    public static final int ACCENT_LIGHT = 0xa9c7ca;

    public static final Ink LABEL = new Ink(7, false, INK);
    public static final Ink SMALL = new Ink(6, false, SOFT);
    public static final Ink STRONG = new Ink(7, true, INK);

    private Palette() {}

    /** Number of classes of deviation, odd; the middle one is on target. */
    public static int classes() {
        return DEVIATION.length;
    }

    /** Color of a class of deviation, RGB. */
    public static int deviation(int i) {
        return DEVIATION[i];
    }

    /** Name of a class of deviation, for a legend. */
    public static String name(int i) {
        return NAMES[i];
    }

    /** Class of a deviation given as a fraction of the target, 0 to 6. */
    public static int classOf(double deviation) {
        int i = 0;
        while (i < BOUNDS.length && deviation > BOUNDS[i]) {
            i++;
        }
        return i;
    }
}
