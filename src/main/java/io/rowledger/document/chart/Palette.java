package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Ink;

/**
 * Colors and inks of charts. Blue, orange and vermillion are those of M. Okabe and K. Ito, "Color Universal Design" (2008),
 * which color-blind people tell apart.
 */
public final class Palette {
    public static final int VERMILLION = 0xd55e00;
    public static final int BLUE = 0x0072b2;
    public static final int ORANGE = 0xe69f00;
    public static final int WHITE = 0xffffff;
    /** Background of the band around zero in a bar chart. */
    public static final int BAND = 0xedf2f2;

    public static final int INK = 0x22282b;
    public static final int SOFT = 0x667075;
    public static final int GRID = 0xd5dadc;
    /** The accent color of the reports, a dark green-blue. */
    public static final int ACCENT = 0x1f5c63;

    public static final int ACCENT_LIGHT = 0xa9c7ca;

    public static final Ink LABEL = new Ink(7, false, INK);
    public static final Ink SMALL = new Ink(6, false, SOFT);
    public static final Ink STRONG = new Ink(7, true, INK);

    private Palette() {}
}
