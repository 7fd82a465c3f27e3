package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Bins;
import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Demand;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.MaxSumRange;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.Arrays;
import java.util.List;

/** All rows fall together above a speed, because the pump gives no more: the sum stays where it is while speed goes on. */
public final class SupplyLimitedDetector implements Detector {
    /** A bar short of its target by this share is short. */
    private static final double SHORT = 0.035;

    /** A bin says no more than this. */
    private static final double MOST = 0.1;

    private static final double MIN_S = 30;

    /** Limited is a sum that varies by less than this share of what flow over target does. */
    private static final double FLAT = 0.55;

    /** Speed must vary by this (robust σ of its logarithm) before flat means anything. */
    private static final double MIN_VARIATION = 0.008;

    /** Below this share of the target the bar does not deliver (1). */
    private static final double MIN_SHARE = 0.05;

    /** Share of a rounding step by which the rows' median may be off while flows stand (1). */
    private static final double MAX_BIAS = 0.3;

    /**
     * Share of a rounding step that readings may rest below the flow (1): where the bar lacks most, in one of ten bins, it must lack
     * more, or every row may just read the step below.
     */
    private static final double MAX_REST = 0.5;

    private static final double LACKS_MOST = 0.1;

    /** In a coarser log every sum is flat (1). */
    private static final double COARSE = 0.2;

    private static final double SETTLED_S = 4;

    /** Label of the figure that the what-if reads: the speed at which the supply would hold the target. */
    public static final Message HOLDING_SPEED = Message.of("findings.figure.holdingSpeed");

    @Override
    public List<Case> find(Evidence e) {
        // Evened out over as long as a shortage must last, every sum is flat while speed goes on.
        if (e.log.evenedS() >= MIN_S) {
            return List.of();
        }
        int bins = e.bins.bins();
        double[] sum = new double[bins];
        double[] asked = new double[bins];
        double[] gains = new double[bins];
        // Rounding of many rows partly cancels in their median.
        double shortBy = SHORT + e.limits.resolutionOfMean() / Math.sqrt(Math.max(1, e.rows()));
        for (int b = 0; b < bins; b++) {
            fill(e, b, sum, asked);
            double q = supplied(e, b) ? Double.NaN : sum[b] / asked[b];
            gains[b] = Double.isNaN(q) ? 0 : Math.max(-MOST, Math.min(MOST, 1 - shortBy - q));
        }
        MaxSumRange range = MaxSumRange.of(gains);
        double[] logSum = new double[bins];
        double[] logShare = new double[bins];
        double[] limit = new double[bins];
        double[] share = new double[bins];
        int n = 0;
        for (int b = range.from(); b < range.end(); b++) {
            double q = sum[b] / asked[b];
            if (q < 1 - shortBy && q > MIN_SHARE && !supplied(e, b)) {
                logSum[n] = Math.log(sum[b]);
                logShare[n] = Math.log(q);
                share[n] = q;
                limit[n++] = sum[b];
            }
        }
        if (n * Bins.BIN_S < MIN_S) {
            return List.of();
        }
        double ofSum = RobustStatistics.sigma(Arrays.copyOf(logSum, n));
        double ofShare = RobustStatistics.sigma(Arrays.copyOf(logShare, n));
        if (!(ofSum <= FLAT * ofShare && ofShare >= MIN_VARIATION) || e.limits.resolution() > COARSE) {
            return List.of();
        }
        double most = RobustStatistics.median(limit, n);
        double middle = RobustStatistics.median(share, n);
        double step = e.limits.resolution();
        double low = RobustStatistics.select(share, n, (int) (LACKS_MOST * n));
        if (1 - middle < SHORT / 2 + MAX_BIAS * step || 1 - low < SHORT / 2 + MAX_REST * step) {
            return List.of();
        }
        return List.of(caseOf(e, range, most, middle, ofSum / ofShare, n));
    }

    /** True if a failing supply or an empty tank explains what the bar lacks in a bin. */
    private static boolean supplied(Evidence e, int b) {
        return e.cases().stream()
                .anyMatch(x -> (x.kind() == FindingKind.SUPPLY_FAILING || x.kind() == FindingKind.RAN_EMPTY)
                        && x.fromS() < e.bins.endS(b)
                        && x.toS() > e.bins.startS(b));
    }

    /** Liquid of the delivering rows, from the other rows' median, and what the target asks of them. */
    private static void fill(Evidence e, int b, double[] sum, double[] asked) {
        double s = 0;
        double a = 0;
        int count = 0;
        int from = e.bins.from[b];
        int end = e.bins.from[b + 1];
        float[] perM = e.demand().demandPerM[Demand.PROMPT];
        for (int j = from; j < end; j++) {
            double flux = e.ratios.peerFlux[j];
            int start = e.work.passFrom[e.work.pass[j] - 1];
            if (Double.isNaN(flux)
                    || Double.isNaN(e.ratios.targetLPerM2[j])
                    || e.work.timeS[j] < e.work.timeS[start] + SETTLED_S
                    || e.work.timeS[j] < e.demand().targetChangedS[j] + SETTLED_S) {
                continue;
            }
            double band = 0;
            for (int r = 0; r < e.rows(); r++) {
                band += e.delivery.delivering(r, e.work.step[j]) ? e.work.bandM[r] : 0;
            }
            s += flux * band;
            a += perM[j] * band;
            count++;
        }
        sum[b] = 2 * count >= end - from && count > 0 ? s / count : Double.NaN;
        asked[b] = 2 * count >= end - from && count > 0 ? a / count : Double.NaN;
    }

    private static Case caseOf(Evidence e, MaxSumRange range, double most, double share, double flatness, int bins) {
        double width = Arrays.stream(e.work.bandM).sum();
        double[] targets = new double[range.end() - range.from()];
        for (int b = range.from(); b < range.end(); b++) {
            targets[b - range.from()] = e.ratios.targetLPerM2[e.bins.from[b]];
        }
        double target = RobustStatistics.median(targets);
        double limitMps = most / (target * width);
        double confidence = flatness < 0.3 && bins > 40 ? 0.96 : flatness < 0.4 ? 0.92 : 0.75;
        Message evidence = Message.of(
                "findings.supply_limited.evidence",
                FindingMessages.percent(share),
                Message.duration(bins * Bins.BIN_S),
                FindingMessages.percent(flatness),
                Message.value(QuantityKind.SPEED, limitMps));
        Message alternative = Message.of("findings.supply_limited.alternative");
        Message check = Message.of("findings.supply_limited.check");
        return new Case(
                FindingKind.SUPPLY_LIMITED,
                List.of(),
                e.bins.startS(range.from()),
                e.bins.endS(range.end() - 1),
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(
                        Figure.of("findings.figure.limitSpeed", limitMps, "m/s"),
                        new Figure(HOLDING_SPEED, 0.97 * limitMps, "m/s")));
    }
}
