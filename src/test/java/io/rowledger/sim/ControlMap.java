package io.rowledger.sim;

/** What the simulated controller knows as covered: half-meter-fine memory for shutting rows off one by one. */
final class ControlMap {
    /** Cells and probes of a usual controller. */
    private static final double CELL_M = 0.25;

    private static final double[] PROBES = {0.2, 0.5, 0.8};

    /** Cells and probes of one as good as can be. */
    private static final double FINE_CELL_M = 0.1;

    private static final double[] FINE_PROBES = {0.03, 0.18, 0.34, 0.5, 0.66, 0.82, 0.97};
    private static final float FORGET_S = 5;

    private final double minX;
    private final double minY;
    private final int columns;
    private final int lines;
    private final float[] seenS;
    private final double cellM;
    private final double[] probes;
    /** Ring of {x, y} outside of which rows are shut off, m; empty for none. */
    private final double[][] ring;

    ControlMap(double[] bounds, boolean fine, double[][] ring) {
        this.ring = ring;
        cellM = fine ? FINE_CELL_M : CELL_M;
        probes = fine ? FINE_PROBES : PROBES;
        minX = bounds[0];
        minY = bounds[1];
        columns = (int) Math.ceil((bounds[2] - bounds[0]) / cellM) + 1;
        lines = (int) Math.ceil((bounds[3] - bounds[1]) / cellM) + 1;
        seenS = new float[columns * lines];
    }

    private int cell(double x, double y) {
        int c = (int) ((x - minX) / cellM);
        int l = (int) ((y - minY) / cellM);
        return c < 0 || l < 0 || c >= columns || l >= lines ? -1 : l * columns + c;
    }

    /** Remembers row i's band at the end of the step. */
    void mark(StepState s, int i) {
        int steps = (int) Math.ceil(s.rig.bandM(i) / (cellM / 2));
        for (int k = 0; k <= steps; k++) {
            double f = (k + 0.5) / (steps + 1);
            int cell = cell(
                    s.senseX + s.endX[i] + f * (s.endX[s.rows + i] - s.endX[i]),
                    s.senseY + s.endY[i] + f * (s.endY[s.rows + i] - s.endY[i]));
            if (cell >= 0) {
                seenS[cell] = (float) s.timeS + 1;
            }
        }
    }

    /** True where all of row i's band, so far ahead, was covered some seconds ago or lies outside of the ring. */
    boolean covered(StepState s, int i, double aheadM) {
        double ax = aheadM * Math.sin(s.barHeadingRad);
        double ay = aheadM * Math.cos(s.barHeadingRad);
        for (double f : probes) {
            double x = s.senseX + s.endX[i] + f * (s.endX[s.rows + i] - s.endX[i]) + ax;
            double y = s.senseY + s.endY[i] + f * (s.endY[s.rows + i] - s.endY[i]) + ay;
            if (outside(x, y)) {
                continue;
            }
            int cell = cell(x, y);
            if (cell < 0 || seenS[cell] == 0 || s.timeS + 1 - seenS[cell] < FORGET_S) {
                return false;
            }
        }
        return true;
    }

    /** True if an even number of the ring's sides lie to the right. */
    private boolean outside(double x, double y) {
        boolean outside = ring.length > 0;
        for (int i = 0, j = ring.length - 1; i < ring.length; j = i++) {
            double[] a = ring[i];
            double[] b = ring[j];
            if (a[1] > y != b[1] > y && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])) {
                outside = !outside;
            }
        }
        return outside;
    }
}
