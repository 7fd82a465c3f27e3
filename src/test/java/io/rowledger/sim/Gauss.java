package io.rowledger.sim;

import java.util.SplittableRandom;

/** Standard normal numbers by Box and Muller's polar-free form: the same on every JDK. */
final class Gauss {
    private final SplittableRandom random;
    private double spare = Double.NaN;

    Gauss(SplittableRandom random) {
        this.random = random;
    }

    double next() {
        if (!Double.isNaN(spare)) {
            double kept = spare;
            spare = Double.NaN;
            return kept;
        }
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
        double angle = 2 * Math.PI * random.nextDouble();
        spare = radius * StrictMath.sin(angle);
        return radius * StrictMath.cos(angle);
    }
}
