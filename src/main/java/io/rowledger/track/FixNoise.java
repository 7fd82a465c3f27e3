package io.rowledger.track;

import io.rowledger.log.LogTable;
import java.util.Arrays;

/**
 * How noisy the fixes are, by fix type, as the part that jumps from record to record (slow drift cannot be smoothed
 * away and is not meant here).
 *
 * <p>Nominal values per NMEA 0183 quality digit are common practice, no source. Where a log has enough fixes of a type
 * they are replaced by what the log itself shows: the third difference of an axis has a variance of 20 σ² from white
 * noise (1 + 9 + 9 + 1) and next to nothing from a tractor's motion at a steady course, so
 * σ = 1.4826 · median|Δ³| / √20. The estimate is held within a factor of {@value #TRUST} of the nominal value, so that
 * a log of turns alone cannot talk the smoother into stiffness or slackness.
 */
final class FixNoise {
    /** The farthest an estimate may leave the nominal value, as a factor. */
    static final double TRUST = 5.0;

    /** Fixes of one type needed before the log's own noise is believed. */
    private static final int ENOUGH = 200;

    /** Differences looked at are every n-th, about this many: the median of so many is good to half a percent. */
    private static final int SAMPLE = 20_000;

    /** No receiver repeats itself better than this, m: log resolution and antenna sway. */
    private static final double FLOOR_M = 0.002;

    private static final double MAD_TO_SIGMA = 1.482602218505602;
    private static final double[] NOMINAL_M = {0.5, 0.4, 0.10, 0.10, 0.012, 0.06, 0.5, 0.5, 0.02};
    private static final double UNKNOWN_M = 0.10;

    private final double[] sigmaM;

    private FixNoise(double[] sigmaM) {
        this.sigmaM = sigmaM;
    }

    /** Sigma per axis for a fix digit, m; −1 is an unknown fix type. */
    double sigmaM(int fix) {
        return sigmaM[slot(fix)];
    }

    static int slot(int fix) {
        return fix >= 0 && fix <= 8 ? fix : 9;
    }

    static double nominalM(int slot) {
        return slot == 9 ? UNKNOWN_M : NOMINAL_M[slot];
    }

    /** Estimates from a log's projected path; {@code segmentStart[i]} breaks the differences before record i. */
    static FixNoise of(LogTable log, double[] eastM, double[] northM, boolean[] segmentStart, double medianS) {
        int n = log.records();
        double[] sigma = new double[10];
        int stride = Math.max(1, n / SAMPLE);
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
            if (count >= 2 * ENOUGH) {
                Arrays.sort(differences, 0, count);
                estimate = MAD_TO_SIGMA * differences[count / 2] / Math.sqrt(20);
            }
            sigma[slot] = Math.max(FLOOR_M, Math.min(nominal * TRUST, Math.max(nominal / TRUST, estimate)));
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
