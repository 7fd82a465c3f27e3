package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A meter whose reading follows neither speed, target nor shut-off.
 *
 * <p>Two signs. In a finely resolved log one and the same value while the other rows' readings keep changing. In any log a
 * reading that stays within a narrow band while what it should show, from the other rows or, lifted, zero, moves by clearly
 * more: that holds for a last digit that jitters and for readings rounded to 0.1 gal/min, where two equal readings mean
 * little.
 */
public final class MeterStuckDetector implements Detector {
    /** Shortest time in one value or band, s. */
    private static final double MIN_S = 15;

    /** Number of changes that at least three quarters of the other rows' readings must show while this row's stands still. */
    private static final int MIN_PEER_CHANGES = 14;

    /** One rounding step, with what figures read back err (1). */
    private static final double ONE_STEP = 1.01;

    /** In a coarser log equal values are no sign (1). */
    private static final double FINE = 0.02;

    /** Share of what the other rows imply below which a value counts as zero: a plugged row, not a stuck meter (1). */
    private static final double ZERO = 0.1;

    /** Width of the band, as a share of its value (1): the last digit may jitter; at least one quantum. */
    private static final double BAND = 0.02;

    /** Change of the expected value that the reading must show, as a share of it (1); plus the band and one quantum. */
    private static final double OUTSIDE = 0.06;

    /** Time with the expected value changed by more, s. */
    private static final double MIN_OUTSIDE_S = 10;

    /** Of it, with the bar working, s. */
    private static final double MIN_WORKING_S = 3;

    /** Rounding, as a share of the value, above which an open valve may show the same reading lifted as working (1). */
    private static final double COARSE = 0.05;

    /** Confidence where only the flow with the bar lifted tells. */
    private static final double MAX_LIFTED_ONLY = 0.8;

    /** After a lift flow runs out for so long, s. */
    private static final double RUN_OUT_S = 5;

    /** Records from (inclusive) to end (exclusive) of the log with one value, or within a band about it. */
    private record Run(int from, int end, double value) {}

    /** Time in a run in which the expected value had changed by more than the reading shows, s. */
    private record Outside(double workingS, double liftedS, boolean severalLifts) {
        /** Lifted alone a valve stuck open shows as much; it needs work in which the reading should have moved. */
        double totalS() {
            return workingS < MIN_WORKING_S && !severalLifts ? 0 : workingS + liftedS;
        }
    }

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        List<Optional<Case>> ofRows = e.ofRows(r -> Optional.ofNullable(ofRow(e, r)));
        for (int r = 0; r < e.rows(); r++) {
            Case found = ofRows.get(r).orElse(null);
            if (found != null) {
                cases.add(found);
                e.exclude(r, found.fromS(), found.toS());
            }
        }
        return cases;
    }

    private static @Nullable Case ofRow(Evidence e, int r) {
        // A flow out of a total in coarse steps stands still between two steps: equal values are no sign.
        boolean fine = e.limits.resolution(r) < FINE && !(e.log.evenedS() > 0);
        Case found = fine ? sameValue(e, r) : null;
        return found == null ? band(e, r) : found;
    }

    /** Flows out of totals in coarse steps follow a change late, by up to two of the times over which they are even. */
    private static double minOutsideS(Evidence e) {
        return MIN_OUTSIDE_S + 2 * e.log.evenedS();
    }

    private static double seconds(Evidence e, Run run) {
        return e.log.timeS(run.end - 1) - e.log.timeS(run.from);
    }

    private static @Nullable Case sameValue(Evidence e, int r) {
        double[] flow = e.log.flowColumn(e.ratios.product, r);
        Run best = null;
        int bestChanges = 0;
        int from = 0;
        for (int i = 1; i <= flow.length; i++) {
            if (i == flow.length || flow[i] != flow[from]) {
                Run run = new Run(from, i, flow[from]);
                if (flow[from] > 0 && i - from >= MIN_PEER_CHANGES && seconds(e, run) >= MIN_S && worked(e, r, run)) {
                    int changes = peerChanges(e, r, run);
                    if (changes >= MIN_PEER_CHANGES && (best == null || seconds(e, run) > seconds(e, best))) {
                        best = run;
                        bestChanges = changes;
                    }
                }
                from = i;
            }
        }
        if (best == null) {
            return null;
        }
        Message evidence = Message.of(
                "findings.meter_stuck.evidence.same",
                FindingMessages.rows(List.of(r)),
                Message.duration(seconds(e, best)),
                bestChanges);
        return caseOf(e, r, best, bestChanges > 60 ? 0.98 : bestChanges > 25 ? 0.93 : 0.8, evidence);
    }

    /** True if the bar worked long enough in the run, and the value is clearly above zero. */
    private static boolean worked(Evidence e, int r, Run run) {
        int to = e.work.entryAt(e.log.timeS(run.end - 1));
        double worked = 0;
        double implied = 0;
        for (int j = e.work.entryAt(e.log.timeS(run.from)); j < to; j++) {
            worked += e.work.durationS[j];
            double now = e.ratios.impliedLPerS(r, j);
            implied = now > implied ? now : implied;
        }
        return worked >= MIN_S && run.value > ZERO * implied;
    }

    /**
     * Number of changes of reading in the run that three quarters of the other rows reach. A change counts from more than one rounding
     * step of either row on: a flow that hardly moves can read two neighboring steps in turn in one row while another row's rests.
     */
    private static int peerChanges(Evidence e, int r, Run run) {
        int[] changes = new int[e.rows() - 1];
        int n = 0;
        for (int i = 0; i < e.rows(); i++) {
            if (i != r) {
                changes[n++] = changes(e, i, run, e.limits.resolutionAt(r, run.value));
            }
        }
        Arrays.sort(changes);
        return n == 0 ? 0 : changes[n / 4];
    }

    /**
     * Number of times in the run that row i's reading came to differ by more than one step from the one it had when last counted.
     *
     * @param step of the row that stands still, over its value (1)
     */
    private static int changes(Evidence e, int i, Run run, double step) {
        double[] flow = e.log.flowColumn(e.ratios.product, i);
        double quantum = e.limits.quantumLPerS(i);
        double counted = flow[run.from];
        int changes = 0;
        for (int k = run.from + 1; k < run.end; k++) {
            if (Math.abs(flow[k] - counted) > ONE_STEP * Math.max(quantum, step * counted)) {
                counted = flow[k];
                changes++;
            }
        }
        return changes;
    }

    private static @Nullable Case band(Evidence e, int r) {
        double quantum = e.limits.quantumLPerS(r);
        double[] flow = e.log.flowColumn(e.ratios.product, r);
        Run best = null;
        Outside most = new Outside(0, 0, false);
        int from = 0;
        double low = Double.NaN;
        double high = Double.NaN;
        double width = Double.NaN;
        for (int i = 0; i <= flow.length; i++) {
            boolean inside = i < flow.length && flow[i] > 0 && i > from;
            if (inside) {
                width = i == from + 1 ? Math.max(ONE_STEP * quantum, BAND * flow[from]) : width;
                inside = Math.max(high, flow[i]) - Math.min(low, flow[i]) <= width;
            }
            if (inside) {
                low = Math.min(low, flow[i]);
                high = Math.max(high, flow[i]);
                continue;
            }
            if (i > from && flow[from] > 0) {
                Run run = new Run(from, i, (low + high) / 2);
                Outside outside = seconds(e, run) < MIN_S ? new Outside(0, 0, false) : outside(e, r, run, high - low);
                if (outside.totalS() >= minOutsideS(e) && outside.totalS() > most.totalS() && worked(e, r, run)) {
                    best = run;
                    most = outside;
                }
            }
            from = i;
            low = i < flow.length ? flow[i] : Double.NaN;
            high = low;
        }
        if (best == null) {
            return null;
        }
        Message evidence = Message.of(
                "findings.meter_stuck.evidence.band",
                FindingMessages.rows(List.of(r)),
                FindingMessages.percent(Math.max(quantum / best.value, BAND)),
                Message.duration(seconds(e, best)),
                Message.duration(most.totalS()),
                most.liftedS() >= 1
                        ? Message.of("findings.meter_stuck.lifted", Message.duration(most.liftedS()))
                        : FindingMessages.none());
        double s = most.totalS();
        double confidence = s > 60 ? 0.97 : s > 25 ? 0.93 : 0.8;
        boolean liftedOnly = most.workingS < MIN_WORKING_S && e.limits.resolutionAt(r, best.value) > COARSE;
        return caseOf(e, r, best, liftedOnly ? Math.min(MAX_LIFTED_ONLY, confidence) : confidence, evidence);
    }

    /** Median of what the other rows imply for row r in the run, L/s; the run's value if the bar never worked in it. */
    private static double usualImplied(Evidence e, int r, Run run) {
        int first = e.work.entryAt(e.log.timeS(run.from));
        int to = e.work.entryAt(e.log.timeS(run.end - 1));
        double[] implied = new double[Math.max(0, to - first)];
        int n = 0;
        for (int j = first; j < to; j++) {
            double now = e.ratios.impliedLPerS(r, j);
            if (!Double.isNaN(now)) {
                implied[n++] = now;
            }
        }
        return n == 0 ? run.value : RobustStatistics.median(implied, n);
    }

    /** Time in which what the row should show lay clearly outside what it should show in the middle of the run. */
    private static Outside outside(Evidence e, int r, Run run, double width) {
        double usual = usualImplied(e, r, run);
        double margin = OUTSIDE * usual + (width / 2 + e.limits.quantumLPerS(r)) * Math.max(1, usual / run.value);
        double settleS = 2 + e.limits.smearS();
        double workingS = 0;
        double sinceS = Double.NEGATIVE_INFINITY;
        int to = e.work.entryAt(e.log.timeS(run.end - 1));
        int first = e.work.entryAt(e.log.timeS(run.from));
        for (int j = first; j < to; j++) {
            double implied = e.ratios.impliedLPerS(r, j);
            boolean out =
                    !e.ratios.unsteady(j) && e.ratios.evaluated.records(r).get(j) && Math.abs(implied - usual) > margin;
            sinceS = out ? sinceS : e.work.timeS[j];
            workingS += out && e.work.timeS[j] - sinceS > settleS ? e.work.durationS[j] : 0;
        }
        double[] lifted = lifted(e, r, run, settleS + RUN_OUT_S);
        return new Outside(workingS, lifted[0], lifted[1] >= 2);
    }

    /** Time in the run with the bar lifted and most other rows at zero, beyond the first seconds of each lift, s; and lifts. */
    private static double[] lifted(Evidence e, int r, Run run, double runOutS) {
        double sum = 0;
        int lifts = 0;
        boolean counted = false;
        double sinceS = Double.NEGATIVE_INFINITY;
        for (int i = run.from + 1; i < run.end; i++) {
            double now = e.log.timeS(i);
            boolean lifted = (!e.log.hasDown() || e.log.down(i) == 0) && peersAtZero(e, r, i, ZERO * run.value);
            sinceS = lifted ? sinceS : now;
            double step = now - e.log.timeS(i - 1);
            boolean outside = lifted && now - sinceS > runOutS && step < 10 * e.limits.intervalS();
            sum += outside ? step : 0;
            lifts += outside && !counted ? 1 : 0;
            counted = lifted && (counted || outside);
        }
        return new double[] {sum, lifts};
    }

    private static boolean peersAtZero(Evidence e, int r, int i, double zeroLPerS) {
        int zero = 0;
        for (int other = 0; other < e.rows(); other++) {
            zero += other != r && e.log.flowLPerS(e.ratios.product, other, i) <= zeroLPerS ? 1 : 0;
        }
        // Without a work state row shut-off leaves some rows at zero as well.
        return e.log.hasDown() ? 2 * zero > e.rows() - 1 : zero >= e.rows() - 2;
    }

    private static Case caseOf(Evidence e, int r, Run run, double confidence, Message evidence) {
        return new Case(
                FindingKind.METER_STUCK,
                List.of(r),
                e.log.timeS(run.from),
                e.log.timeS(run.end - 1),
                confidence,
                new Case.Words(
                        evidence,
                        Message.of("findings.meter_stuck.alternative"),
                        Message.of("findings.meter_stuck.check")),
                List.of());
    }
}
