package io.rowledger.diagnose.setup;

import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.List;

/** Leaves out contrasts that are of another kind: a pass cut short, one driven round a tree. */
final class OutlierRejection {
    private static final double FAR_SIGMAS = 4.5;

    private OutlierRejection() {}

    /** Those that lie within four and a half robust sigmas of what their median says, but never closer than so far. */
    static List<Contrast> of(List<Contrast> contrasts, double leastM) {
        if (contrasts.size() < 4) {
            return contrasts;
        }
        double error = RobustStatistics.median(
                contrasts.stream().mapToDouble(c -> c.valueM() / c.effect()).toArray());
        return of(contrasts, error, leastM);
    }

    /** The same where the error is known roughly; contrasts that it doesn't move may be among them. */
    static List<Contrast> of(List<Contrast> contrasts, double error, double leastM) {
        double[] left = contrasts.stream()
                .mapToDouble(c -> c.valueM() - error * c.effect())
                .toArray();
        double farM = Math.max(leastM, FAR_SIGMAS * RobustStatistics.sigma(left));
        double middle = RobustStatistics.median(left);
        List<Contrast> kept = new ArrayList<>();
        for (int i = 0; i < left.length; i++) {
            if (Math.abs(left[i] - middle) <= farM) {
                kept.add(contrasts.get(i));
            }
        }
        return kept;
    }
}
