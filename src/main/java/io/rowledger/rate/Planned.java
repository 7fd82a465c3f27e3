package io.rowledger.rate;

/**
 * What a prescription asks for at the place of each row's strip: a zone's number by step and row, and a rate by product
 * and zone. Two bytes a strip, and only where a prescription was given.
 */
public final class Planned {
    /** No zone there. */
    public static final int NO_ZONE = -1;

    /** More zones than this do not fit the two bytes. */
    public static final int MAX_ZONES = Short.MAX_VALUE;

    private final int rows;
    private final short[] zone;
    private final double[][] rateLPerM2;

    /**
     * Takes over the columns.
     *
     * @param rows number of outlets
     * @param zone zone from 0 at {@code step · rows + row}, {@link #NO_ZONE} outside all
     * @param rateLPerM2 by product and zone; NaN where a zone says nothing of a product
     */
    public Planned(int rows, short[] zone, double[][] rateLPerM2) {
        this.rows = rows;
        this.zone = zone;
        this.rateLPerM2 = rateLPerM2;
    }

    /** The zone in which outlet r was in step k, from 0, or {@link #NO_ZONE}. */
    public int zone(int r, int k) {
        return zone[k * rows + r];
    }

    /** What the prescription asks of product p where outlet r was in step k, L/m²; NaN where it asks nothing. */
    public double rateLPerM2(int p, int r, int k) {
        int at = zone(r, k);
        return at == NO_ZONE ? Double.NaN : rateLPerM2[p][at];
    }
}
