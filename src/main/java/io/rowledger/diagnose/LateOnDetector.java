package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** Rows that come on late at the start of passes: bare ends. */
final class LateOnDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        Edges edges = e.edges();
        for (BareEnds.Ends ends : BareEnds.find(edges.onDelayS, e.log.hasDown(), e.work.intervalS, BareEnds.ON)) {
            if (!laggingMeter(edges, ends)) {
                cases.add(caseOf(e, edges, ends));
            }
        }
        return cases;
    }

    /** A meter that shows everything late is as late at the end: that is a lag in the setup, not late liquid. */
    private static boolean laggingMeter(Edges edges, BareEnds.Ends ends) {
        List<Double> leads = new ArrayList<>();
        for (int q = ends.passes().from(); q < ends.passes().end(); q++) {
            for (int r = 0; r < edges.offLeadS.length; r++) {
                if ((ends.rows().isEmpty() || ends.rows().contains(r)) && !Double.isNaN(edges.offLeadS[r][q])) {
                    leads.add(edges.offLeadS[r][q]);
                }
            }
        }
        double[] all = leads.stream().mapToDouble(Double::doubleValue).toArray();
        return all.length > 0 && -Robust.median(all, all.length) > 0.6 * ends.delayS();
    }

    private static Case caseOf(Evidence e, Edges edges, BareEnds.Ends ends) {
        double speed = BareEnds.speedMps(e, ends, true);
        int first = e.work.passFrom[ends.passes().from()];
        int last = Math.min(e.work.n, e.work.passFrom[ends.passes().end()]) - 1;
        String evidence = Said.capital(Said.rows(ends.rows())) + " (" + BareEnds.side(e, ends.rows()) + ") came on "
                + Said.seconds(ends.delayS()) + " after the bar was lowered, in the middle of " + ends.seen()
                + " passes; the flow did not go on as long after the lift.";
        String rival =
                "A meter that shows everything late would go on as long after the lift; ground covered before would"
                        + " explain single passes, not all of them.";
        String check =
                "Watch at the next headland when the liquid starts, from a safe distance; look up the turn-on time in"
                        + " the controller; with the bar standing and shut, listen for the valve; then, " + Said.SAFE
                        + "look for a valve that opens slowly or a hose that runs empty in the turn.";
        return new Case(
                FindingKind.LATE_ON,
                ends.rows(),
                e.work.timeS[first],
                e.work.timeS[last],
                BareEnds.confidence(ends),
                new Case.Words(evidence, rival, check),
                List.of(
                        new Figure("bare length at the start of a pass", ends.delayS() * speed, "m"),
                        new Figure("delay", ends.delayS(), "s")),
                BareEnds.cost(e, ends, edges.onDelayS, true));
    }
}
