package io.rowledger.geo;

/**
 * Headings, rad clockwise from north. Forward f(ψ) = (sin ψ, cos ψ), right r(ψ) = (cos ψ, −sin ψ), both as (east, north);
 * lateral offsets are in m, positive right.
 */
public final class Heading {
    private Heading() {}

    /** Returns the heading of the displacement (east, north), rad in (−π, π]. */
    public static double of(double eastM, double northM) {
        return Math.atan2(eastM, northM);
    }

    /** Returns the same angle in (−π, π]. */
    public static double wrap(double angleRad) {
        double a = Math.IEEEremainder(angleRad, 2 * Math.PI);
        return a <= -Math.PI ? a + 2 * Math.PI : a;
    }
}
