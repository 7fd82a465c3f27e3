package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Edges;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.SwitchingDelays;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** Rows that go off before the bar is lifted: bare ends. */
public final class EarlyOffDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        Edges edges = e.edges();
        for (SwitchingDelays.Ends ends : SwitchingDelays.find(
                edges.offLeadS,
                e.log.hasDown(),
                edges.commanded(),
                SwitchingDelays.Resolved.of(e.limits),
                SwitchingDelays.OFF)) {
            cases.add(caseOf(e, edges, ends));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, Edges edges, SwitchingDelays.Ends ends) {
        double speed = SwitchingDelays.speedMps(e, ends, false);
        int first = e.work.passFrom[ends.passes().from() + 1] - 1;
        int last = Math.min(e.work.n, e.work.passFrom[ends.passes().end()]) - 1;
        Message evidence = Message.of(
                ends.commanded() ? "findings.early_off.evidence.commanded" : "findings.early_off.evidence.lifted",
                FindingMessages.rows(ends.rows()),
                FindingMessages.side(e, ends.rows()),
                Message.decimal(ends.delayS(), 1),
                ends.seen());
        Message alternative = Message.of("findings.early_off.alternative");
        Message check = Message.of("findings.early_off.check");
        return new Case(
                FindingKind.EARLY_OFF,
                ends.rows(),
                e.work.timeS[first],
                e.work.timeS[last],
                SwitchingDelays.confidence(ends),
                new Case.Words(evidence, alternative, check),
                List.of(
                        Figure.of("findings.figure.endGap", ends.delayS() * speed, "m"),
                        Figure.of("findings.figure.lead", ends.delayS(), "s")),
                SwitchingDelays.cost(e, ends, edges.offLeadS, false));
    }
}
