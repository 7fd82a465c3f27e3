package io.rowledger.sim;

/** A field's own axes: u along the main heading, w to its right, from an origin. */
record Frame(double originX, double originY, double headingRad) {
    double x(double u, double w) {
        return originX + u * Math.sin(headingRad) + w * Math.cos(headingRad);
    }

    double y(double u, double w) {
        return originY + u * Math.cos(headingRad) - w * Math.sin(headingRad);
    }

    double[][] ring(double[][] uw) {
        double[][] ring = new double[uw.length][];
        for (int i = 0; i < uw.length; i++) {
            ring[i] = new double[] {x(uw[i][0], uw[i][1]), y(uw[i][0], uw[i][1])};
        }
        return ring;
    }
}
