package io.rowledger.coverage;

import java.util.Random;

/** A simulated field for tests of coverage. */
final class GuidedField {
    private GuidedField() {}

    /** Back-and-forth passes over a square and two headland laps, with the position noise of a smoothed RTK track. */
    static Drive of(double sideM, int rows, double spacingM, double stepM, double noiseM, long seed) {
        Random random = new Random(seed);
        Drive d = new Drive(rows, spacingM);
        double width = rows * spacingM;
        int n = (int) Math.floor((sideM - 4 * width) / width);
        for (int i = 0; i < n; i++) {
            boolean up = i % 2 == 0;
            double x = 2 * width + (i + 0.5) * width;
            double from = up ? 2 * width : sideM - 2 * width;
            double heading = up ? 0 : Math.PI;
            double lengthM = sideM - 4 * width;
            d.lift(x, from, heading).lower();
            int steps = (int) (lengthM / stepM);
            double phase = 2 * Math.PI * random.nextDouble();
            int shutOffUntil = 0;
            for (int k = 1; k <= steps; k++) {
                if (k == shutOffUntil) {
                    for (int r = 1; r <= rows; r++) {
                        d.rows(true, r);
                    }
                }
                if (random.nextInt(4000) == 0) {
                    d.rows(false, 1 + random.nextInt(rows));
                    shutOffUntil = k + 40;
                }
                d.rate(0.02 * (1 + 0.02 * random.nextGaussian()));
                // A steered line deviates by a centimeter or two over some tens of meters.
                double y = lengthM * k / steps;
                double aside = 0.015 * Math.sin(y / 7 + phase) + 0.01 * Math.sin(y / 3 + 2 * phase);
                double slope = 0.015 / 7 * Math.cos(y / 7 + phase) + 0.01 / 3 * Math.cos(y / 3 + 2 * phase);
                aside += noiseM * random.nextGaussian();
                d.pose(x + aside, from + (up ? y : -y), up ? heading + slope : heading - slope);
            }
            for (int r = 1; r <= rows; r++) {
                d.rows(true, r);
            }
        }
        for (int ring = 0; ring < 2; ring++) {
            double in = (ring + 0.5) * width;
            double r = 12;
            d.lift(in + r, in, Math.PI / 2).lower();
            for (int side = 0; side < 4; side++) {
                d.ahead(sideM - 2 * in - 2 * r).arc(r * Math.PI / 2, -Math.PI / 2);
            }
        }
        return d;
    }
}
