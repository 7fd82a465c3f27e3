package io.rowledger.sim;

/**
 * Shortest forward-only way between two poses with a least turning radius: L. E. Dubins, "On curves of minimal length",
 * American Journal of Mathematics 79 (1957); words after Shkel and Lumelsky, Robotics and Autonomous Systems 34 (2001).
 *
 * <p>Formulas written from memory, so every word is driven and only one that truly arrives is taken.
 */
final class Dubins {
    private static final double ARRIVED = 1e-6;

    private Dubins() {}

    /** Three pieces: curvature (1/m, positive right) and length (m). */
    record Way(double[] curvatures, double[] lengths) {
        double lengthM() {
            return lengths[0] + lengths[1] + lengths[2];
        }
    }

    /** From {x, y, heading} to {x, y, heading}. */
    static Way shortest(double[] from, double[] to, double radiusM) {
        double dx = to[0] - from[0];
        double dy = to[1] - from[1];
        double d = Math.hypot(dx, dy) / radiusM;
        double bearing = Math.atan2(dy, dx);
        // Mathematical angles (counter-clockwise from east) inside.
        double a = mod(Math.PI / 2 - from[2] - bearing);
        double b = mod(Math.PI / 2 - to[2] - bearing);
        Way best = null;
        for (double[] word : words(d, a, b)) {
            Way way = way(word, radiusM);
            if (Double.isFinite(way.lengthM())
                    && (best == null || way.lengthM() < best.lengthM())
                    && arrives(from, to, way)) {
                best = way;
            }
        }
        if (best == null) {
            throw new IllegalStateException("no way found");
        }
        return best;
    }

    /** Rows of {turn, length, turn, length, turn, length} with turn -1 left, 0 straight, 1 right, lengths in radii. */
    private static double[][] words(double d, double a, double b) {
        double sa = Math.sin(a);
        double sb = Math.sin(b);
        double ca = Math.cos(a);
        double cb = Math.cos(b);
        double cab = Math.cos(a - b);
        double lslP = Math.sqrt(2 + d * d - 2 * cab + 2 * d * (sa - sb));
        double lslT = Math.atan2(cb - ca, d + sa - sb);
        double rsrP = Math.sqrt(2 + d * d - 2 * cab + 2 * d * (sb - sa));
        double rsrT = Math.atan2(ca - cb, d - sa + sb);
        double lsrP = Math.sqrt(-2 + d * d + 2 * cab + 2 * d * (sa + sb));
        double lsrT = Math.atan2(-ca - cb, d + sa + sb) - Math.atan2(-2, lsrP);
        double rslP = Math.sqrt(-2 + d * d + 2 * cab - 2 * d * (sa + sb));
        double rslT = Math.atan2(ca + cb, d - sa - sb) - Math.atan2(2, rslP);
        double rlrP = mod(2 * Math.PI - Math.acos((6 - d * d + 2 * cab + 2 * d * (sa - sb)) / 8));
        double rlrT = mod(a - Math.atan2(ca - cb, d - sa + sb) + rlrP / 2);
        double lrlP = mod(2 * Math.PI - Math.acos((6 - d * d + 2 * cab + 2 * d * (sb - sa)) / 8));
        double lrlT = mod(-a - Math.atan2(ca - cb, d + sa - sb) + lrlP / 2);
        return new double[][] {
            {-1, mod(-a + lslT), 0, lslP, -1, mod(b - lslT)},
            {1, mod(a - rsrT), 0, rsrP, 1, mod(-b + rsrT)},
            {-1, mod(-a + lsrT), 0, lsrP, 1, mod(-b + lsrT)},
            {1, mod(a - rslT), 0, rslP, -1, mod(b - rslT)},
            {1, rlrT, -1, rlrP, 1, mod(a - b - rlrT + rlrP)},
            {-1, lrlT, 1, lrlP, -1, mod(b - a - lrlT + lrlP)},
        };
    }

    private static Way way(double[] w, double radiusM) {
        return new Way(
                new double[] {w[0] / radiusM, w[2] / radiusM, w[4] / radiusM},
                new double[] {w[1] * radiusM, w[3] * radiusM, w[5] * radiusM});
    }

    private static boolean arrives(double[] from, double[] to, Way way) {
        double x = from[0];
        double y = from[1];
        double h = from[2];
        for (int i = 0; i < 3; i++) {
            double s = way.lengths()[i];
            double turn = way.curvatures()[i] * s;
            double chord = Math.abs(turn) < 1e-12 ? s : s * Math.sin(turn / 2) / (turn / 2);
            x += chord * Math.sin(h + turn / 2);
            y += chord * Math.cos(h + turn / 2);
            h += turn;
        }
        return Math.hypot(x - to[0], y - to[1]) < ARRIVED * Math.max(1, way.lengthM())
                && Math.abs(Math.sin((h - to[2]) / 2)) < ARRIVED;
    }

    private static double mod(double angle) {
        double m = angle % (2 * Math.PI);
        return m < 0 ? m + 2 * Math.PI : m;
    }
}
