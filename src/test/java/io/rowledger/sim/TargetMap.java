package io.rowledger.sim;

/** The target rate as the controller is told it. */
@FunctionalInterface
public interface TargetMap {
    /** Target as a multiple of the product's own target, at (x, y) meters and time t seconds. */
    double factor(int product, double xM, double yM, double timeS);

    /** The product's own target everywhere. */
    static TargetMap constant() {
        return (product, x, y, t) -> 1;
    }

    /** Strips of {@code stepM} across a heading, each with the next factor in turn. */
    static TargetMap steps(double headingRad, double stepM, double... factors) {
        return (product, x, y, t) -> {
            double u = x * Math.sin(headingRad) + y * Math.cos(headingRad);
            return factors[Math.floorMod((long) Math.floor(u / stepM), factors.length)];
        };
    }
}
