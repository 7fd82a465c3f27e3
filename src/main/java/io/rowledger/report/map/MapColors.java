package io.rowledger.report.map;

import io.rowledger.document.chart.Palette;

/** What the colors of maps and pictures stand for. */
public final class MapColors {
    public static final int SKIP = Palette.VERMILLION;
    public static final int OVERLAP = Palette.BLUE;
    /** Covered ground where only places matter. */
    public static final int COVERED = 0xe9ece6;
    /** Time in which a row was off or not evaluated: darker than the middle classes, without a hue. */
    public static final int NOT_EVALUATED = 0xb9bdbf;

    private MapColors() {}
}
