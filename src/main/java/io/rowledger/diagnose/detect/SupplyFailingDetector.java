package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.BarShare;
import io.rowledger.diagnose.signal.Bins;
import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Demand;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.Arrays;
import java.util.List;

/**
 * All rows slide below target together, whatever the speed: a pump, a strainer, a tank running low. A supply at its limit keeps
 * its sum and comes back when the bar slows; here the sum itself falls. A wrong target or a step of the calibration does not
 * slide.
 */
public final class SupplyFailingDetector implements Detector {
    /** Shortfall against the usual share from which the bar is short (1). */
    private static final double SHORT = 0.05;

    /** Shortfall of the last third at least (1). */
    private static final double MIN_SHORTFALL = 0.12;

    /** Bins that show the level: a single one is noise. */
    private static final int LEVEL_BINS = 5;

    private static final double MIN_S = 30;

    /**
     * A slide takes at least this long to all but {@link #ARRIVED} of its shortfall, s of work; or goes on by a third of the
     * shortfall within the short time.
     */
    private static final double MIN_SLIDE_S = 10;

    private static final double ARRIVED = 0.2;

    /** Share of the time before the slide in which a bar whose rate changes runs as low (1). */
    private static final double CAME_BACK = 0.1;

    /** The bar's sum must fall to this share of what it was (1), or else a supply at its limit explains it. */
    private static final double MAX_SUM = 0.9;

    @Override
    public List<Case> find(Evidence e) {
        float[] share = e.barShare().ofUsual(e.bins);
        for (Case found : e.cases()) {
            if (found.kind() == FindingKind.RAN_EMPTY) {
                for (int b = 0; b < share.length; b++) {
                    boolean within = e.bins.endS(b) > found.fromS() && e.bins.startS(b) < found.toS();
                    share[b] = within ? Float.NaN : share[b];
                }
            }
        }
        int n = 0;
        int[] at = new int[share.length];
        float[] known = new float[share.length];
        for (int b = 0; b < share.length; b++) {
            if (!Float.isNaN(share[b])) {
                at[n] = b;
                known[n++] = share[b];
            }
        }
        known = Arrays.copyOf(known, n);
        int from = onset(known);
        if ((n - from) * Bins.BIN_S < MIN_S || from < LEVEL_BINS) {
            return List.of();
        }
        double end = BarShare.median(known, n - (n - from) / 3, n);
        double first = BarShare.median(known, from, from + (n - from) / 3);
        double slideS = slideS(known, from, end + ARRIVED * (1 - end));
        boolean slides = slideS >= MIN_SLIDE_S + e.limits.smearS() || first - end > (1 - end) / 3;
        if (end > 1 - MIN_SHORTFALL || !slides || cameBackBefore(known, from, end) || sumHeld(e, at, from, n)) {
            return List.of();
        }
        return List.of(caseOf(e, at[from], at[n - 1], end, (n - from) * Bins.BIN_S));
    }

    /** The first known bin after which the level never comes back; n if it ends on target. */
    private static int onset(float[] known) {
        int from = known.length;
        for (int b = known.length - LEVEL_BINS; b >= 0; b--) {
            if (BarShare.median(known, b, b + LEVEL_BINS) >= 1 - SHORT) {
                break;
            }
            from = b;
        }
        return from == known.length ? from : Math.min(known.length, from + LEVEL_BINS / 2);
    }

    /** True if the bar had run as low before and came back: the log doesn't tell of a rate that changes. */
    private static boolean cameBackBefore(float[] known, int from, double end) {
        int low = 0;
        for (int b = 0; b < from - LEVEL_BINS; b++) {
            low += known[b] < end + SHORT ? 1 : 0;
        }
        return low >= LEVEL_BINS && low > CAME_BACK * from;
    }

    private static double slideS(float[] known, int from, double level) {
        for (int b = from; b < known.length; b++) {
            if (BarShare.median(known, b - 1, b + 2) < level) {
                return (b - from) * Bins.BIN_S;
            }
        }
        return 0;
    }

    /** True if the bar's sum in the last third is what it was before: a supply at its limit. */
    private static boolean sumHeld(Evidence e, int[] at, int from, int n) {
        float[] sum = new float[n];
        float[] perM = e.demand().demandPerM[Demand.PROMPT];
        for (int i = 0; i < n; i++) {
            double of = 0;
            int first = e.bins.from[at[i]];
            int end = e.bins.from[at[i] + 1];
            for (int j = first; j < end; j++) {
                of += e.barShare().share(j) * perM[j];
            }
            sum[i] = (float) (of / (end - first));
        }
        double before = BarShare.median(sum, 0, from);
        double last = BarShare.median(sum, n - (n - from) / 3, n);
        return !(last < MAX_SUM * before);
    }

    private static Case caseOf(Evidence e, int firstBin, int lastBin, double end, double seconds) {
        double usual = e.barShare().usualShare();
        Message evidence = Message.of(
                "findings.supply_failing.evidence",
                FindingMessages.percent(usual),
                FindingMessages.percent(usual * end),
                Message.duration(e.bins.endS(lastBin) - e.bins.startS(firstBin)),
                Message.duration(seconds));
        return new Case(
                FindingKind.SUPPLY_FAILING,
                List.of(),
                e.bins.startS(firstBin),
                e.bins.endS(lastBin),
                1 - end > 0.25 && seconds > 60 ? 0.96 : 1 - end > 0.18 ? 0.92 : 0.8,
                new Case.Words(
                        evidence,
                        Message.of("findings.supply_failing.alternative"),
                        Message.of("findings.supply_failing.check")),
                List.of(Figure.of("findings.figure.finalShare", end, "1")));
    }
}
