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

    /** The same record with flows of its own. */
    SimRecord copy() {
        SimRecord copy = new SimRecord();
        copy.timeS = timeS;
        copy.latDeg = latDeg;
        copy.lonDeg = lonDeg;
        copy.speedMps = speedMps;
        copy.courseRad = courseRad;
        copy.yawRateRadPerS = yawRateRadPerS;
        copy.fix = fix;
        copy.hdop = hdop;
        copy.down = down;
        copy.backward = backward;
        copy.on = on;
        copy.pressurePa = pressurePa;
        copy.rowPressurePa = rowPressurePa;
        copy.targetLPerM2 = targetLPerM2;
        copy.flowLPerS = new double[flowLPerS.length][];
        for (int p = 0; p < flowLPerS.length; p++) {
            copy.flowLPerS[p] = flowLPerS[p].clone();
        }
        copy.totalLPerS = totalLPerS.clone();
        return copy;
    }
}
