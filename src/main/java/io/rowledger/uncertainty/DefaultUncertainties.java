package io.rowledger.uncertainty;

import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.units.Factor;

/**
 * Default limits and standard uncertainties, used if the log and the rig file state none; each with its source.
 *
 * <p>Drift is what shifts one pass against the next and cannot be seen from record to record. It is taken as a first-order
 * Gauss-Markov process per axis with time constant τ. Makers state a pass-to-pass accuracy instead: the cross-track
 * difference of two passes within 15 minutes (the window of ISO 12188; EGNOS user support, "Pass to pass") that 95 % stay
 * below. Two passes Δ apart differ by σ√(2(1 − e^(−Δ/τ))), on average over the window T by σ√(2m),
 * m = 1 − τ/T·(1 − e^(−T/τ)), so σ = p₉₅ ÷ (1.96·√(2m)).
 */
public final class DefaultUncertainties {
    /** Limits of a row meter's error. Meters of the kind are sold with 0.5 to 2 %; common practice, no source. */
    public static final double METER_ACCURACY = 0.02;

    /**
     * Limits of the density's error. Printed densities of UAN 28 differ by 0.7 % (10.60, 10.65 and 10.67 lb/gal: Purdue
     * Extension 2023, University of Nebraska CropWatch 2016, a fact sheet of fertilizer materials), and 40 °F change it by
     * 1.3 % (the same fact sheet: 10.74 lb/gal at 40 °F, 10.60 at 80 °F): half of each together.
     */
    public static final double DENSITY_ACCURACY = 0.01;

    /** Limits of the error of a length taken with a tape, or of a knife's place on the bar, m: common practice, no source. */
    public static final double TOLERANCE_M = Factor.METRES_PER_INCH;

    /**
     * Time constant of the drift, s: errors of corrections and of reflections near the antenna change over minutes; a third
     * of the 15-minute window, so that passes a window apart are uncorrelated. From memory.
     */
    public static final double DRIFT_TAU_S = 300;

    /**
     * Share of the noise from record to record that the smoother leaves (1): an assumption, not measured. At 1 Hz a stiff
     * smoother averages about six fixes between two vertices, and 1/√6 is 0.4; at 5 or 10 Hz it leaves less.
     */
    static final double SMOOTHED_SHARE = 0.4;

    /** Scatter of a meter from reading to reading, 1 sigma, as a share: common practice, no source. */
    static final double REPEATABILITY = 0.01;

    /** Window of a pass-to-pass accuracy, s. */
    private static final double WINDOW_S = 900;

    /**
     * Pass-to-pass accuracy, 95 %, per NMEA 0183 quality digit, 9 if the log has none. RTK fixed 1 in, RTK float 5 in
     * ("decimeter"), differential 12 in (the coarser end of 6 to 12 in of a trade glossary), autonomous 5 m: extension
     * tables from memory.
     */
    private static final double[] PASS_TO_PASS_95_M = {
        5,
        5,
        12 * Factor.METRES_PER_INCH,
        12 * Factor.METRES_PER_INCH,
        Factor.METRES_PER_INCH,
        5 * Factor.METRES_PER_INCH,
        5,
        5,
        Factor.METRES_PER_INCH,
        12 * Factor.METRES_PER_INCH
    };

    private DefaultUncertainties() {}

    /** Returns the slow drift of one axis, 1 sigma, m, by NMEA 0183 quality digit (9 unknown). */
    public static double driftM(int digit) {
        double m = 1 - DRIFT_TAU_S / WINDOW_S * (1 - Math.exp(-WINDOW_S / DRIFT_TAU_S));
        return PASS_TO_PASS_95_M[digit] / (1.959963984540054 * Math.sqrt(2 * m));
    }

    /** Returns the index of a fix digit: 0 to 8, or 9 if the log has none. */
    static int slot(int fix) {
        return fix >= 0 && fix <= 8 ? fix : 9;
    }

    static double toleranceM(Rig rig) {
        return Double.isNaN(rig.toleranceM()) ? TOLERANCE_M : rig.toleranceM();
    }

    static double meterAccuracy(Product product) {
        return Double.isNaN(product.meterAccuracy()) ? METER_ACCURACY : product.meterAccuracy();
    }

    static double densityAccuracy(Product product) {
        return Double.isNaN(product.densityAccuracy()) ? DENSITY_ACCURACY : product.densityAccuracy();
    }
}
