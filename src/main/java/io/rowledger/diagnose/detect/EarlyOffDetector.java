package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Edges;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingPhrases;
import io.rowledger.diagnose.signal.SwitchingDelays;
import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** Rows that go off before the bar is lifted: bare ends. */
public final class EarlyOffDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        Edges edges = e.edges();
        for (SwitchingDelays.Ends ends :
                SwitchingDelays.find(edges.offLeadS, e.log.hasDown(), e.work.intervalS, SwitchingDelays.OFF)) {
            cases.add(caseOf(e, edges, ends));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, Edges edges, SwitchingDelays.Ends ends) {
        double speed = SwitchingDelays.speedMps(e, ends, false);
        int first = e.work.passFrom[ends.passes().from() + 1] - 1;
        int last = Math.min(e.work.n, e.work.passFrom[ends.passes().end()]) - 1;
        String evidence = FindingPhrases.capital(FindingPhrases.rows(ends.rows())) + " ("
                + SwitchingDelays.side(e, ends.rows()) + ") went off "
                + FindingPhrases.seconds(ends.delayS()) + " before the bar was lifted, in the middle of " + ends.seen()
                + " passes, over ground that had not been covered.";
        String alternative =
                "The driver may lift late on purpose, to empty the hoses: then the ends lie outside the field.";
        String check =
                "Watch at the next headland where the liquid stops, from a safe distance; look up the turn-off time"
                        + " and the distance from hitch to drop line in the controller; compare with where the bar is lifted.";
        return new Case(
                FindingKind.EARLY_OFF,
                ends.rows(),
                e.work.timeS[first],
                e.work.timeS[last],
                SwitchingDelays.confidence(ends),
                new Case.Words(evidence, alternative, check),
                List.of(
                        new Figure("bare length at the end of a pass", ends.delayS() * speed, "m"),
                        new Figure("lead", ends.delayS(), "s")),
                SwitchingDelays.cost(e, ends, edges.offLeadS, false));
    }
}
