package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Demand;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.Responses;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.MaxSumRange;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Flow that follows speed and target seconds late. */
public final class SlowResponseDetector implements Detector {
    /**
     * From this time constant on a response is slow, s: the usual is under 1.6. More in a log of long intervals or averages,
     * whose readings lag by a part of them.
     */
    static final double SLOW_S = 2.6;

    private static final double PART_OF_SMEAR = 0.25;

    /** Records that come more seldom don't show the response, s. */
    private static final double MAX_INTERVAL_S = 2.5;

    /** The error must fall by this share of what is left. */
    private static final double MIN_EXPLAINED = 0.1;

    /** And by so many variances of a reading, against chance. */
    private static final double MIN_GAIN = 60;

    /** One pass alone may have had a bad start. */
    private static final int MIN_PASSES = 2;

    /** More for a coarse track, whose speed is noisy. */
    private static final double MIN_EXPLAINED_IF_COARSE = 0.45;

    private static final double MIN_OF_ROW = 0.12;

    /** Slow ratios hardly reach beyond these; wilder ones are something else. */
    private static final double MIN_RATIO = 0.5;

    private static final double MAX_RATIO = 1.8;

    /** In a coarser log a bar's, or a row's, steps are the rounding's (1). */
    private static final double COARSE = 0.08;

    private static final double COARSE_OF_ROW = 0.05;

    /** Rows with these faults follow nothing, promptly or not. */
    private static final Set<FindingKind> NOT_FOLLOWING = EnumSet.of(
            FindingKind.METER_STUCK,
            FindingKind.METER_DROPOUT,
            FindingKind.INTERMITTENT,
            FindingKind.VALVE_STUCK_OPEN,
            FindingKind.CHANNELS_SWAPPED);

    /** Changes of level are no response. */
    private static final Set<FindingKind> OF_LEVEL =
            EnumSet.of(FindingKind.PLUGGED, FindingKind.RESTRICTED, FindingKind.LEAKING);

    /** Slow from pass (inclusive) to pass (exclusive), the time constant, how much of the error it explains. */
    private record Slow(int from, int end, int tau, double explained) {}

    @Override
    public List<Case> find(Evidence e) {
        if (e.limits.resolution() > COARSE || e.limits.intervalS() > MAX_INTERVAL_S) {
            return List.of();
        }
        double slowS = SLOW_S + PART_OF_SMEAR * (e.limits.smearS() + e.limits.intervalS() + e.log.evenedS());
        if (e.work.coarse && !e.speedLogged()) {
            // The speed is too noisy for a demand on the bar; a row is held against the others' flow.
            return ofRows(e, e.peerDemand(), e.ratios.peerFlux, Demand.PROMPT, slowS);
        }
        Responses bar = e.barResponses();
        Slow whole = slow(bar, Demand.SLOWEST_PROMPT, slowS);
        boolean ofBar = whole != null && whole.explained > (e.work.coarse ? MIN_EXPLAINED_IF_COARSE : MIN_EXPLAINED);
        if (whole != null && ofBar) {
            // Where the whole bar is slow, outside rows lag in turns as well: that is the same fault again.
            return List.of(caseOf(e, List.of(), whole));
        }
        int usual = Math.max(Demand.SLOWEST_PROMPT, bar.best());
        return ofRows(e, e.demand(), e.demand().demandPerM[usual], usual, slowS);
    }

    /**
     * Returns the rows that follow a demand with more than the usual time constant.
     *
     * @param reference flow that the rows' ratios are relative to, by entry, L/s a meter of band
     * @param usual index of the usual time constant, see {@link Demand#tauS}
     * @param slowS time constant from which a row is slow, s
     */
    private static List<Case> ofRows(Evidence e, Demand demand, float[] reference, int usual, double slowS) {
        List<Case> cases = new ArrayList<>();
        for (int r = 0; r < e.rows() && e.limits.resolution() < COARSE_OF_ROW; r++) {
            if (otherwiseFaulty(e, r)) {
                continue;
            }
            // A row that is written late lags by so much for no fault of its own.
            double ofRowS = slowS + 2 * Math.max(0, e.limits.skewS(r));
            Slow of = slow(new Responses(e.work, demand, ratio(e, r, demand), reference), usual, ofRowS);
            if (of != null && of.explained > MIN_OF_ROW) {
                cases.add(caseOf(e, List.of(r), of));
            }
        }
        return cases;
    }

    /** True if another fault keeps the row from following. */
    private static boolean otherwiseFaulty(Evidence e, int r) {
        return e.cases().stream()
                .anyMatch(x -> NOT_FOLLOWING.contains(x.kind()) && x.rows().contains(r));
    }

    /** The row's ratio where nothing else explains it: what all rows share is out of it already. */
    private static float[] ratio(Evidence e, int r, Demand demand) {
        float[] ratio = e.ratios.ratio[r].clone();
        for (Case found : e.cases()) {
            if (!found.rows().isEmpty() && found.concerns(r) && OF_LEVEL.contains(found.kind())) {
                Arrays.fill(ratio, e.work.entryAt(found.fromS()), e.work.entryAt(found.toS()), Float.NaN);
            }
        }
        for (int j = 0; j < ratio.length; j++) {
            boolean known = ratio[j] > MIN_RATIO && ratio[j] < MAX_RATIO && demand.demandPerM[Demand.PROMPT][j] > 0;
            ratio[j] = known ? ratio[j] : Float.NaN;
        }
        return ratio;
    }

    private static @Nullable Slow slow(Responses responses, int usual, double slowS) {
        Slow best = null;
        double bestGain = 0;
        for (int t = usual + 1; t < Demand.taus(); t++) {
            if (Demand.tauS(t) < slowS) {
                continue;
            }
            double[] gains = new double[responses.passes()];
            for (int q = 0; q < gains.length; q++) {
                double prompt = responses.error(q, usual);
                // A time-reversed filter gains only by smoothing noise; subtract that gain, so that only lag counts.
                double smoothing = Math.max(0, prompt - responses.errorReversed(q, t));
                gains[q] = prompt - responses.error(q, t) - smoothing;
            }
            MaxSumRange range = MaxSumRange.of(gains);
            if (range.sum() > bestGain) {
                double left = 0;
                int n = 0;
                for (int q = range.from(); q < range.end(); q++) {
                    left += responses.error(q, t);
                    n += responses.count(q);
                }
                bestGain = range.sum();
                boolean often = range.end() - range.from() >= Math.min(MIN_PASSES, responses.passes());
                boolean clear =
                        often && range.sum() > MIN_EXPLAINED * left && range.sum() > MIN_GAIN * left / Math.max(1, n);
                best = clear ? new Slow(range.from(), range.end(), t, range.sum() / (range.sum() + left)) : null;
            }
        }
        return best;
    }

    private static Case caseOf(Evidence e, List<Integer> rows, Slow slow) {
        double tau = Demand.tauS(slow.tau);
        double fromS = e.work.timeS[Math.min(e.work.n - 1, e.work.passFrom[slow.from])];
        double toS = e.work.timeS[e.work.passFrom[slow.end] - 1];
        // Readings that are means, and speeds from positions, lag by up to a record against each other.
        double clearS = SLOW_S + e.limits.intervalS() + (e.limits.smearS() + e.log.evenedS()) / 2;
        double confidence = tau < clearS ? 0.65 : slow.explained > 0.5 ? 0.96 : slow.explained > 0.25 ? 0.9 : 0.75;
        Message evidence = Message.of(
                rows.isEmpty() ? "findings.slow_response.evidence.bar" : "findings.slow_response.evidence.row",
                FindingMessages.rows(rows),
                Message.decimal(tau, 1),
                FindingMessages.percent(slow.explained));
        Message alternative = Message.of(
                rows.isEmpty() ? "findings.slow_response.alternative.bar" : "findings.slow_response.alternative.row");
        Message check = Message.of("findings.slow_response.check");
        return new Case(
                FindingKind.SLOW_RESPONSE,
                rows,
                fromS,
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(
                        Figure.of("findings.figure.timeConstant", tau, "s"),
                        Figure.of("findings.figure.settlingTime", 3 * tau, "s")));
    }
}
