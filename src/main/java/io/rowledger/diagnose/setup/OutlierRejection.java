package io.rowledger.diagnose.setup;

import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.List;

/** Rejects contrasts of another kind: a pass cut short, one driven around a tree. */
final class OutlierRejection {
    private static final double MAX_SIGMAS = 4.5;

    private OutlierRejection() {}

    /** Keeps contrasts with a residual within max(minM, 4.5 sigma_MAD) of the median; the error is the median's. */
    static List<Contrast> of(List<Contrast> contrasts, double minM) {
        if (contrasts.size() < 4) {
            return contrasts;
        }
        double errorM = RobustStatistics.median(
                contrasts.stream().mapToDouble(c -> c.valueM() / c.effect()).toArray());
        return of(contrasts, errorM, 0, minM);
    }

    /** The same for a known error (m) and habit (s); contrasts that the error does not move may be among them. */
    static List<Contrast> of(List<Contrast> contrasts, double errorM, double habitS, double minM) {
        double[] residualM = contrasts.stream()
                .mapToDouble(c -> c.valueM() - errorM * c.effect() - habitS * c.habitEffect())
                .toArray();
        double maxM = Math.max(minM, MAX_SIGMAS * RobustStatistics.sigma(residualM));
        double median = RobustStatistics.median(residualM);
        List<Contrast> kept = new ArrayList<>();
        for (int i = 0; i < residualM.length; i++) {
            if (Math.abs(residualM[i] - median) <= maxM) {
                kept.add(contrasts.get(i));
            }
        }
        return kept;
    }
}
