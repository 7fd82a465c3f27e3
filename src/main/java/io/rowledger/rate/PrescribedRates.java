package io.rowledger.rate;

/**
 * Prescribed target rates along the drive: a zone index per step and row, and a rate per product and zone. Two bytes per
 * strip; exists only with a prescription.
 */
public final class PrescribedRates {
    /** Index that stands for no zone. */
    public static final int NO_ZONE = -1;

    /** Largest number of zones: the index has two bytes. */
    public static final int MAX_ZONES = Short.MAX_VALUE;

    private final int rows;
    private final short[] zone;
    private final double[][] rateLPerM2;

    /**
     * Takes over the arrays; they are not copied.
     *
     * @param rows number of outlets
     * @param zone zone from 0 at {@code step · rows + row}, {@link #NO_ZONE} outside all
     * @param rateLPerM2 by product and zone; NaN if a zone has no rate for a product
     */
    public PrescribedRates(int rows, short[] zone, double[][] rateLPerM2) {
        this.rows = rows;
        this.zone = zone;
        this.rateLPerM2 = rateLPerM2;
    }

    /** Returns the zone that outlet r was in during step k, from 0, or {@link #NO_ZONE}. */
    public int zone(int r, int k) {
        return zone[k * rows + r];
    }

    /** Returns the prescribed rate of product p where outlet r was in step k, L/m²; NaN if there is none. */
    public double rateLPerM2(int p, int r, int k) {
        int at = zone(r, k);
        return at == NO_ZONE ? Double.NaN : rateLPerM2[p][at];
    }
}
