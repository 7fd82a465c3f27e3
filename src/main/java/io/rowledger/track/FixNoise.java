package io.rowledger.track;

import io.rowledger.log.LogTable;
import java.util.Arrays;

/**
 * Standard deviation of position noise by fix type: the white part of it, without slow drift, which no smoothing removes.
 *
 * <p>Nominal values per NMEA 0183 quality digit are common practice, no source. With at least {@value #MIN_FIXES} fixes of a
 * type σ is estimated from the log: the third difference of white noise has the variance 20 σ² per axis
 * (1 + 9 + 9 + 1), that of a tractor on a steady course is near 0, so σ = 1.4826 · median|Δ³| / √20. The estimate is
 * limited to within a factor of {@value #MAX_FACTOR} of the nominal value, in case the log consists of turns.
 */
final class FixNoise {
    /** Largest factor between estimate and nominal value. */
    static final double MAX_FACTOR = 5.0;

    /** Fewest fixes of a type for an estimate from the log. */
    private static final int MIN_FIXES = 200;

    /** About this many differences per axis are sampled, evenly; their median is known within half a percent. */
    private static final int MAX_SAMPLES = 20_000;

    /** Smallest σ, m: log resolution and antenna sway. */
    private static final double MIN_SIGMA_M = 0.002;

    private static final double MAD_TO_SIGMA = 1.482602218505602;
    private static final double[] NOMINAL_M = {0.5, 0.4, 0.10, 0.10, 0.012, 0.06, 0.5, 0.5, 0.02};
    private static final double NOMINAL_UNKNOWN_M = 0.10;

    private final double[] sigmaM;

    private FixNoise(double[] sigmaM) {
        this.sigmaM = sigmaM;
    }

    /** Returns σ per axis for an NMEA fix digit, m; −1 is an unknown fix type. */
    double sigmaM(int fix) {
        return sigmaM[slot(fix)];
    }

    static int slot(int fix) {
        return fix >= 0 && fix <= 8 ? fix : 9;
    }

    static double nominalM(int slot) {
        return slot == 9 ? NOMINAL_UNKNOWN_M : NOMINAL_M[slot];
    }

    /** Estimates σ from a log's projected path; no difference spans a record i with {@code segmentStart[i]}. */
    static FixNoise of(LogTable log, double[] eastM, double[] northM, boolean[] segmentStart, double medianS) {
        int n = log.records();
        double[] sigma = new double[10];
        int stride = Math.max(1, n / MAX_SAMPLES);
        double[] differences = new double[2 * (n / stride + 1)];
        for (int slot = 0; slot < 10; slot++) {
            double nominal = nominalM(slot);
            int count = 0;
            for (int i = 3; i < n; i += stride) {
                if (slot(log.fix(i)) == slot && usable(log, segmentStart, i, slot, medianS)) {
                    differences[count++] = Math.abs(third(eastM, i));
                    differences[count++] = Math.abs(third(northM, i));
                }
            }
            double estimate = nominal;
            if (count >= 2 * MIN_FIXES) {
                Arrays.sort(differences, 0, count);
                estimate = MAD_TO_SIGMA * differences[count / 2] / Math.sqrt(20);
            }
            sigma[slot] =
                    Math.max(MIN_SIGMA_M, Math.min(nominal * MAX_FACTOR, Math.max(nominal / MAX_FACTOR, estimate)));
        }
        return new FixNoise(sigma);
    }

    private static boolean usable(LogTable log, boolean[] segmentStart, int i, int slot, double medianS) {
        for (int j = i - 2; j <= i; j++) {
            double dt = log.timeS(j) - log.timeS(j - 1);
            if (segmentStart[j] || slot(log.fix(j)) != slot || Math.abs(dt - medianS) > 0.2 * medianS) {
                return false;
            }
        }
        return slot(log.fix(i - 3)) == slot;
    }

    private static double third(double[] x, int i) {
        return x[i] - 3 * x[i - 1] + 3 * x[i - 2] - x[i - 3];
    }
}
