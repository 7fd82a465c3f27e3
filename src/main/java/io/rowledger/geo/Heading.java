package io.rowledger.geo;

/**
 * The one convention for directions: headings are radians clockwise from north, lateral offsets metres positive to the
 * right. Forward f(ψ) = (sin ψ, cos ψ), right r(ψ) = (cos ψ, −sin ψ), both as (east, north).
 */
public final class Heading {
    private Heading() {}

    /** Heading of the displacement (east, north), rad in (−π, π]. */
    public static double of(double eastM, double northM) {
        return Math.atan2(eastM, northM);
    }

    /** The same angle in (−π, π]. */
    public static double wrap(double angleRad) {
        double a = Math.IEEEremainder(angleRad, 2 * Math.PI);
        return a <= -Math.PI ? a + 2 * Math.PI : a;
    }
}
