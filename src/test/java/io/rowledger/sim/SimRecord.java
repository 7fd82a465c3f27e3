package io.rowledger.sim;

/** One record of the log in SI, before units and columns. NaN where the log has nothing to say. */
final class SimRecord {
    /** Since the first record, s. */
    double timeS;

    double latDeg;
    double lonDeg;
    double speedMps;
    double courseRad;
    double yawRateRadPerS;
    int fix;
    double hdop;
    boolean down;
    /** True where the tractor backs up; never logged. */
    boolean backward;

    boolean[] on;
    double pressurePa;
    double[] rowPressurePa;
    double[] targetLPerM2;
    double[][] flowLPerS;
    double[] totalLPerS;
}
