package io.rowledger.sim;

/** Everything about one step of the integrator, shared by metering, truth and log. Rows from 0 at the left. */
final class StepState {
    final SimRig rig;
    final int rows;
    final int products;
    /** Time at the start of the step and its length, s. */
    double timeS;

    double dtS;
    boolean lowered;
    boolean working;
    /** Counts working stretches from 1; 0 before the first. */
    int pass;
    /** Way left to where the bar will be lifted, m. */
    double toLiftM = Double.POSITIVE_INFINITY;

    double barHeadingRad;
    double centerX;
    /** How far off the place the shut-off believes the bar to be, m. */
    double senseX;

    double senseY;
    double centerY;
    double centerStepM;
    /** Edges of the bands: left edges first, then right ones; at the start and the end of the step. */
    final double[] startX;

    final double[] startY;
    final double[] endX;
    final double[] endY;
    /** Signed forward area of each band, m². */
    final double[] areaM2;
    /** Forward speed of each band, m/s. */
    final double[] rowSpeedMps;
    /** Band-width-weighted mean of the rows' forward speeds, m/s. */
    double barSpeedMps;

    final boolean[] commandedOn;
    final double[] targetLPerM2;
    final double[][] trueLPerS;
    /** What the meters show of this instant, before their lag. */
    final double[][] meterLPerS;

    StepState(SimRig rig, int products) {
        this.rig = rig;
        this.rows = rig.rows();
        this.products = products;
        startX = new double[2 * rows];
        startY = new double[2 * rows];
        endX = new double[2 * rows];
        endY = new double[2 * rows];
        areaM2 = new double[rows];
        rowSpeedMps = new double[rows];
        commandedOn = new boolean[rows];
        targetLPerM2 = new double[products];
        trueLPerS = new double[products][rows];
        meterLPerS = new double[products][rows];
    }

    /** Takes the present end as the next start. */
    void advance() {
        System.arraycopy(endX, 0, startX, 0, endX.length);
        System.arraycopy(endY, 0, startY, 0, endY.length);
    }

    /** Puts the band edges of the present pose at the end of the step. */
    void edges(Motion motion) {
        double cx = motion.barX(rig.hitchToDropM(), rig.barRightM());
        double cy = motion.barY(rig.hitchToDropM(), rig.barRightM());
        double rx = Math.cos(motion.theta());
        double ry = -Math.sin(motion.theta());
        for (int i = 0; i < rows; i++) {
            double l = rig.leftM()[i];
            double r = rig.rightM()[i];
            endX[i] = cx + l * rx;
            endY[i] = cy + l * ry;
            endX[rows + i] = cx + r * rx;
            endY[rows + i] = cy + r * ry;
        }
        centerStepM = Math.hypot(cx - centerX, cy - centerY);
        centerX = cx;
        centerY = cy;
        barHeadingRad = motion.theta();
    }

    /** Areas and speeds of the step, by the shoelace of left start, left end, right end, right start. */
    void areas() {
        double sum = 0;
        double width = 0;
        for (int i = 0; i < rows; i++) {
            double[] px = {startX[i], endX[i], endX[rows + i], startX[rows + i]};
            double[] py = {startY[i], endY[i], endY[rows + i], startY[rows + i]};
            double twice = 0;
            for (int a = 0; a < 4; a++) {
                int b = (a + 1) & 3;
                // About the first corner, so that large coordinates cost no digits.
                twice += (px[b] - px[0]) * (py[a] - py[0]) - (px[a] - px[0]) * (py[b] - py[0]);
            }
            areaM2[i] = twice / 2;
            double band = rig.bandM(i);
            rowSpeedMps[i] = areaM2[i] / (band * dtS);
            sum += areaM2[i];
            width += band;
        }
        barSpeedMps = sum / (width * dtS);
    }

    /** True where row i gives more than 5 % of what some product's target asks. */
    boolean delivering(int i) {
        for (int p = 0; p < products; p++) {
            double asked = targetLPerM2[p] * rig.bandM(i) * Math.max(0, rowSpeedMps[i]);
            if (trueLPerS[p][i] > 0.05 * asked && trueLPerS[p][i] > 0) {
                return working;
            }
        }
        return false;
    }
}
