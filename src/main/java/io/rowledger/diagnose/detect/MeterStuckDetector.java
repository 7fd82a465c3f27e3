package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** A meter that shows one value whatever speed, target and shut-off do. */
public final class MeterStuckDetector implements Detector {
    /** As many changes must have been missed, s and changes of a other-row's reading. */
    private static final double MIN_S = 15;

    private static final double MIN_PEER_CHANGES = 14;

    /** Below this share of what the other rows imply a value is as good as zero: a plugged row, not a stuck meter. */
    private static final double ZERO = 0.1;

    /** A stretch of one value. */
    private record Run(int from, int end, double value) {}

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        float[] changes = peerChanges(e);
        for (int r = 0; r < e.rows(); r++) {
            Run longest = null;
            for (Run run : runs(e, r)) {
                double seconds = e.log.timeS(run.end - 1) - e.log.timeS(run.from);
                double skips = changes[run.end - 1] - changes[run.from];
                if (seconds >= MIN_S && skips >= MIN_PEER_CHANGES && worked(e, r, run)) {
                    longest = longest == null ? run : joined(longest, run);
                }
            }
            if (longest != null) {
                cases.add(caseOf(e, r, longest, changes));
                e.exclude(r, e.log.timeS(longest.from), e.log.timeS(longest.end - 1));
            }
        }
        return cases;
    }

    private static Run joined(Run a, Run b) {
        return a.value == b.value ? new Run(a.from, b.end, a.value) : b.end - b.from > a.end - a.from ? b : a;
    }

    /** True where the bar worked long enough under it, and the value is no zero by another name. */
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

    private static List<Run> runs(Evidence e, int r) {
        double[] flow = e.log.flowColumn(e.ratios.product, r);
        List<Run> runs = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= flow.length; i++) {
            if (i == flow.length || flow[i] != flow[from]) {
                if (flow[from] > 0 && i - from >= MIN_PEER_CHANGES) {
                    runs.add(new Run(from, i, flow[from]));
                }
                from = i;
            }
        }
        return runs;
    }

    /** Up to each record, how often a row's reading changed from record to record: the median over rows is near it. */
    private static float[] peerChanges(Evidence e) {
        int n = e.log.records();
        int[] changed = new int[n];
        for (int r = 0; r < e.rows(); r++) {
            double[] flow = e.log.flowColumn(e.ratios.product, r);
            for (int i = 1; i < n; i++) {
                changed[i] += flow[i] != flow[i - 1] ? 1 : 0;
            }
        }
        float[] sum = new float[n];
        for (int i = 1; i < n; i++) {
            sum[i] = sum[i - 1] + (float) changed[i] / e.rows();
        }
        return sum;
    }

    private static Case caseOf(Evidence e, int r, Run run, float[] changes) {
        double seconds = e.log.timeS(run.end - 1) - e.log.timeS(run.from);
        double skips = changes[run.end - 1] - changes[run.from];
        double confidence = skips > 60 ? 0.98 : skips > 25 ? 0.93 : 0.8;
        List<Integer> rows = List.of(r);
        Message evidence = Message.of(
                "findings.meter_stuck.evidence.same",
                FindingMessages.rows(rows),
                Message.duration(seconds),
                Math.round(skips));
        Message alternative = Message.of("findings.meter_stuck.alternative");
        Message check = Message.of("findings.meter_stuck.check");
        return new Case(
                FindingKind.METER_STUCK,
                rows,
                e.log.timeS(run.from),
                e.log.timeS(run.end - 1),
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of());
    }
}
