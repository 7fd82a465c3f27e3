package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Edges;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.SwitchingDelays;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** Rows that come on late at the start of passes: bare ends. */
public final class LateOnDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        Edges edges = e.edges();
        for (SwitchingDelays.Ends ends : SwitchingDelays.find(
                edges.onDelayS,
                e.log.hasDown(),
                edges.commanded(),
                SwitchingDelays.Resolved.of(e.limits),
                SwitchingDelays.ON)) {
            if (!laggingMeter(edges, ends)) {
                cases.add(caseOf(e, edges, ends));
            }
        }
        return cases;
    }

    /** A meter that shows everything late is as late at the end: that is a lag in the setup, not late liquid. */
    private static boolean laggingMeter(Edges edges, SwitchingDelays.Ends ends) {
        List<Double> leads = new ArrayList<>();
        for (int q = ends.passes().from(); q < ends.passes().end(); q++) {
            for (int r = 0; r < edges.offLeadS.length; r++) {
                if ((ends.rows().isEmpty() || ends.rows().contains(r)) && !Double.isNaN(edges.offLeadS[r][q])) {
                    leads.add(edges.offLeadS[r][q]);
                }
            }
        }
        double[] all = leads.stream().mapToDouble(Double::doubleValue).toArray();
        return all.length > 0 && -RobustStatistics.median(all, all.length) > 0.6 * ends.delayS();
    }

    private static Case caseOf(Evidence e, Edges edges, SwitchingDelays.Ends ends) {
        double speed = SwitchingDelays.speedMps(e, ends, true);
        int first = e.work.passFrom[ends.passes().from()];
        int last = Math.min(e.work.n, e.work.passFrom[ends.passes().end()]) - 1;
        Message evidence = Message.of(
                ends.commanded() ? "findings.late_on.evidence.commanded" : "findings.late_on.evidence.lowered",
                FindingMessages.rows(ends.rows()),
                FindingMessages.side(e, ends.rows()),
                Message.decimal(ends.delayS(), 1),
                ends.seen());
        Message alternative = Message.of("findings.late_on.alternative");
        Message check = Message.of("findings.late_on.check");
        return new Case(
                FindingKind.LATE_ON,
                ends.rows(),
                e.work.timeS[first],
                e.work.timeS[last],
                SwitchingDelays.confidence(ends),
                new Case.Words(evidence, alternative, check),
                List.of(
                        Figure.of("findings.figure.startGap", ends.delayS() * speed, "m"),
                        Figure.of("findings.figure.delay", ends.delayS(), "s")),
                SwitchingDelays.cost(e, ends, edges.onDelayS, true));
    }
}
