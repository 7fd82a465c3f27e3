package io.rowledger.sim;

/** A convex field in its own axes {u, w}, corners in driving order, and lines inside it. */
final class ConvexField {
    private final double[][] corners;
    private final double side;

    ConvexField(double[][] corners) {
        this.corners = corners;
        double[] a = corners[0];
        double[] b = corners[1];
        double[] c = corners[2];
        side = Math.signum((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]));
    }

    /** Turn at the corners: 1 to the right (u ahead, w right), -1 to the left. */
    double side() {
        return side;
    }

    int size() {
        return corners.length;
    }

    double[][] corners() {
        return corners;
    }

    /** The corners of the field shrunk by a margin. */
    double[][] inset(double marginM) {
        int n = corners.length;
        double[][] inner = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] e = edge((i + n - 1) % n, marginM);
            double[] f = edge(i, marginM);
            double det = e[0] * f[1] - e[1] * f[0];
            inner[i] = new double[] {(e[2] * f[1] - e[1] * f[2]) / det, (e[0] * f[2] - e[2] * f[0]) / det};
        }
        return inner;
    }

    /** Edge i moved inward as {a, b, c} of a·u + b·w = c, with a·u + b·w ≥ c inside. */
    private double[] edge(int i, double marginM) {
        double[] p = corners[i];
        double[] q = corners[(i + 1) % corners.length];
        double length = Math.hypot(q[0] - p[0], q[1] - p[1]);
        double a = -side * (q[1] - p[1]) / length;
        double b = side * (q[0] - p[0]) / length;
        return new double[] {a, b, a * p[0] + b * p[1] + marginM};
    }

    /** {least, greatest} u on the line w inside the field shrunk by a margin; least above greatest where it is outside. */
    double[] span(double w, double marginM) {
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (int i = 0; i < corners.length; i++) {
            double[] e = edge(i, marginM);
            double rest = e[2] - e[1] * w;
            if (e[0] > 1e-12) {
                low = Math.max(low, rest / e[0]);
            } else if (e[0] < -1e-12) {
                high = Math.min(high, rest / e[0]);
            } else if (rest > 1e-9) {
                return new double[] {1, -1};
            }
        }
        return new double[] {low, high};
    }
}
