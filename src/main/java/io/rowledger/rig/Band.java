package io.rowledger.rig;

import org.jspecify.annotations.Nullable;

/**
 * The strip of ground an outlet serves, in m right of the bar's center (left is negative).
 *
 * @param row the outlet, from 1 at the left
 * @param atM where the liquid meets the ground, m right of center
 * @param leftM left edge, m right of center
 * @param rightM right edge, m right of center; greater than {@code leftM}
 * @param share share of a full row's width: 1 inside, 0.5, 1 or 1.5 outside; custom bars: width over the median width
 * @param section name of the shut-off section it belongs to, or null
 */
public record Band(
        int row,
        double atM,
        double leftM,
        double rightM,
        double share,
        @Nullable String section) {
    /** Most rows of a bar. */
    public static final int MAX_ROWS = 200;
    /** Widest plausible bar, m (197 ft): beyond it a unit is wrong. One outlet may stand for the whole bar. */
    public static final double MAX_WIDTH_M = 60;
    /** Narrowest plausible row or band, m (2 in): below it a unit is wrong. */
    public static final double MIN_WIDTH_M = 0.05;

    /** Checks that the band has a width and the row a number. */
    public Band {
        if (row < 1) {
            throw new IllegalArgumentException("rows are numbered from 1: " + row);
        }
        if (!(rightM > leftM)) {
            throw new IllegalArgumentException("row " + row + " has no width: " + leftM + " to " + rightM);
        }
    }

    /** Width of the band, m. */
    public double widthM() {
        return rightM - leftM;
    }
}
