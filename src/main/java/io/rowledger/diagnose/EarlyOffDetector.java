package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** Rows that go off before the bar is lifted: bare ends. */
final class EarlyOffDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        Edges edges = e.edges();
        for (BareEnds.Ends ends : BareEnds.find(edges.offLeadS, e.log.hasDown(), e.work.intervalS, BareEnds.OFF)) {
            cases.add(caseOf(e, edges, ends));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, Edges edges, BareEnds.Ends ends) {
        double speed = BareEnds.speedMps(e, ends, false);
        int first = e.work.passFrom[ends.passes().from() + 1] - 1;
        int last = Math.min(e.work.n, e.work.passFrom[ends.passes().end()]) - 1;
        String evidence = Said.capital(Said.rows(ends.rows())) + " (" + BareEnds.side(e, ends.rows()) + ") went off "
                + Said.seconds(ends.delayS()) + " before the bar was lifted, in the middle of " + ends.seen()
                + " passes, over ground that had not been covered.";
        String rival = "The driver may lift late on purpose, to empty the hoses: then the ends lie outside the field.";
        String check =
                "Watch at the next headland where the liquid stops, from a safe distance; look up the turn-off time"
                        + " and the distance from hitch to drop line in the controller; compare with where the bar is lifted.";
        return new Case(
                FindingKind.EARLY_OFF,
                ends.rows(),
                e.work.timeS[first],
                e.work.timeS[last],
                BareEnds.confidence(ends),
                new Case.Words(evidence, rival, check),
                List.of(
                        new Figure("bare length at the end of a pass", ends.delayS() * speed, "m"),
                        new Figure("lead", ends.delayS(), "s")),
                BareEnds.cost(e, ends, edges.offLeadS, false));
    }
}
