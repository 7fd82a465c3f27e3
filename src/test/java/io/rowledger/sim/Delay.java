package io.rowledger.sim;

import java.util.Arrays;

/** A pure delay of a whole number of steps, for an array of values. */
final class Delay {
    private final int width;
    private double[][] ring = new double[0][];
    private int at;

    Delay(int width) {
        this.width = width;
    }

    /** Takes the present values, gives those of {@code steps} steps ago (the first ones until there are older). */
    double[] next(double[] values, int steps) {
        if (steps <= 0) {
            return values;
        }
        if (ring.length != steps) {
            ring = new double[steps][];
            for (int i = 0; i < steps; i++) {
                ring[i] = Arrays.copyOf(values, width);
            }
            at = 0;
        }
        double[] old = ring[at];
        ring[at] = Arrays.copyOf(values, width);
        at = (at + 1) % steps;
        return old;
    }
}
