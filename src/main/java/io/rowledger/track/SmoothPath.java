package io.rowledger.track;

/**
 * The smoothed antenna path of a job: state at every record, position at any time between two records.
 *
 * <p>Within a stretch the position is the quintic through position, velocity and acceleration of the records on both
 * sides; across a missing record or two it is the straight line, across a bridged gap ({@link GapBridging}) the cubic
 * through positions and velocities.
 */
final class SmoothPath {
    private final double[] t;
    private final boolean[] segmentStart;
    private final boolean[] bridged;
    final double[] pe;
    final double[] pn;
    final double[] ve;
    final double[] vn;
    final double[] ae;
    final double[] an;

    SmoothPath(double[] timeS, boolean[] segmentStart, boolean[] bridged) {
        int n = timeS.length;
        this.t = timeS;
        this.segmentStart = segmentStart;
        this.bridged = bridged;
        pe = new double[n];
        pn = new double[n];
        ve = new double[n];
        vn = new double[n];
        ae = new double[n];
        an = new double[n];
    }

    /** Copies the states of a smoothed stretch that begins at record {@code from}. */
    void put(int from, PathSmoother s) {
        System.arraycopy(s.pe, 0, pe, from, s.pe.length);
        System.arraycopy(s.pn, 0, pn, from, s.pe.length);
        System.arraycopy(s.ve, 0, ve, from, s.pe.length);
        System.arraycopy(s.vn, 0, vn, from, s.pe.length);
        System.arraycopy(s.ae, 0, ae, from, s.pe.length);
        System.arraycopy(s.an, 0, an, from, s.pe.length);
    }

    /** Replaces the path of records [first, last] by uniform motion from the first to the last position. */
    void drift(int first, int last) {
        double durationS = t[last] - t[first];
        double driftEMps = durationS > 0 ? (pe[last] - pe[first]) / durationS : 0;
        double driftNMps = durationS > 0 ? (pn[last] - pn[first]) / durationS : 0;
        for (int i = first; i <= last; i++) {
            pe[i] = pe[first] + driftEMps * (t[i] - t[first]);
            pn[i] = pn[first] + driftNMps * (t[i] - t[first]);
            ve[i] = driftEMps;
            vn[i] = driftNMps;
            ae[i] = 0;
            an[i] = 0;
        }
    }

    double timeS(int i) {
        return t[i];
    }

    /** Returns the ground speed at record i, m/s. */
    double speedMps(int i) {
        return Math.hypot(ve[i], vn[i]);
    }

    /** Returns the path's curvature at record i, 1/m, positive to the right; 0 below 0.2 m/s. */
    double curvaturePerM(int i) {
        double v2 = ve[i] * ve[i] + vn[i] * vn[i];
        return v2 < 0.04 ? 0 : (vn[i] * ae[i] - ve[i] * an[i]) / (v2 * Math.sqrt(v2));
    }

    /** Returns east at time s between records i and i + 1, m. */
    double eastM(int i, double s) {
        return segmentStart[i + 1] ? across(pe, ve, i, s) : quintic(pe, ve, ae, i, s);
    }

    /** Returns north at time s between records i and i + 1, m. */
    double northM(int i, double s) {
        return segmentStart[i + 1] ? across(pn, vn, i, s) : quintic(pn, vn, an, i, s);
    }

    private double across(double[] p, double[] v, int i, double s) {
        double h = t[i + 1] - t[i];
        double u = (s - t[i]) / h;
        if (!bridged[i + 1]) {
            return p[i] + u * (p[i + 1] - p[i]);
        }
        double toP1 = u * u * (3 - 2 * u);
        return p[i] + toP1 * (p[i + 1] - p[i]) + h * (u * (1 - u) * (1 - u) * v[i] - u * u * (1 - u) * v[i + 1]);
    }

    private double quintic(double[] p, double[] v, double[] a, int i, double s) {
        double h = t[i + 1] - t[i];
        double u = (s - t[i]) / h;
        double u2 = u * u;
        double u3 = u2 * u;
        double u4 = u3 * u;
        double u5 = u4 * u;
        double toP1 = 10 * u3 - 15 * u4 + 6 * u5;
        double toV0 = u - 6 * u3 + 8 * u4 - 3 * u5;
        double toV1 = -4 * u3 + 7 * u4 - 3 * u5;
        double toA0 = 0.5 * (u2 - 3 * u3 + 3 * u4 - u5);
        double toA1 = 0.5 * (u3 - 2 * u4 + u5);
        return p[i]
                + toP1 * (p[i + 1] - p[i])
                + h * (toV0 * v[i] + toV1 * v[i + 1])
                + h * h * (toA0 * a[i] + toA1 * a[i + 1]);
    }
}
