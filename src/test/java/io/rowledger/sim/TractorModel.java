package io.rowledger.sim;

/**
 * How the tractor drives.
 *
 * @param maxCurvaturePerM steering lock: 1 / least turning radius
 * @param steerRatePerMS fastest change of curvature, 1/(m s)
 * @param steerLagS time constant of the steering
 * @param previewS how far ahead it looks, s
 * @param accelMps2 greatest acceleration and braking
 * @param wanderRmsM rms of the offset from the planned line
 * @param trackingLengthM length over which it steers an offset out
 * @param speedSwing slow swing of the working speed, as a fraction
 * @param workJitterM 1 sigma of where the bar is lowered and lifted, m along the line
 * @param lowerEarlyM lowered this much before the planned place (negative: late)
 * @param liftLateM lifted this much after the planned place (negative: early)
 */
public record TractorModel(
        double maxCurvaturePerM,
        double steerRatePerMS,
        double steerLagS,
        double previewS,
        double accelMps2,
        double wanderRmsM,
        double trackingLengthM,
        double speedSwing,
        double workJitterM,
        double lowerEarlyM,
        double liftLateM) {
    /** A guided tractor: 2 cm rms, bar lowered and lifted within about 15 cm of the line. */
    public static TractorModel guided() {
        return new TractorModel(1 / 5.5, 0.12, 0.2, 0.35, 0.6, 0.02, 3.5, 0.04, 0.15, 0, 0);
    }

    /** The same, straying by another rms. */
    public TractorModel withWander(double rmsM) {
        return new TractorModel(
                maxCurvaturePerM,
                steerRatePerMS,
                steerLagS,
                previewS,
                accelMps2,
                rmsM,
                trackingLengthM,
                speedSwing,
                workJitterM,
                lowerEarlyM,
                liftLateM);
    }

    /** The same, with other lift and lower habits. */
    public TractorModel withLift(double jitterM, double lowerEarly, double liftLate) {
        return new TractorModel(
                maxCurvaturePerM,
                steerRatePerMS,
                steerLagS,
                previewS,
                accelMps2,
                wanderRmsM,
                trackingLengthM,
                speedSwing,
                jitterM,
                lowerEarly,
                liftLate);
    }

    /** The same, swinging about its working speed by another fraction. */
    public TractorModel withSpeedSwing(double fraction) {
        return new TractorModel(
                maxCurvaturePerM,
                steerRatePerMS,
                steerLagS,
                previewS,
                accelMps2,
                wanderRmsM,
                trackingLengthM,
                fraction,
                workJitterM,
                lowerEarlyM,
                liftLateM);
    }
}
