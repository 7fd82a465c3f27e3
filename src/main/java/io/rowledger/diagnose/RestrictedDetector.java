package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** A row that gives a lasting fraction of its siblings, often sliding there. */
final class RestrictedDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<Levels.Episode> low = e.unexplained().stream()
                .filter(x -> x.level() < 1 && Math.abs(x.level() - x.before()) > 0.04)
                .toList();
        e.explain(low);
        List<Case> cases = new ArrayList<>();
        for (List<Levels.Episode> group : Together.grouped(e, low)) {
            cases.add(caseOf(e, group));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, List<Levels.Episode> group) {
        Levels.Episode first = group.get(0);
        List<Integer> rows = Together.rows(group);
        double mismatch = e.meterAgainstTotal(first.row(), first.fromS(), first.toS());
        double pressure = e.pressureAgainstSiblings(first.row(), first.fromS(), first.toS());
        boolean meterOnly = mismatch < 0.5 * first.deviation();
        double how = -first.deviation();
        double confidence = meterOnly ? 0.55 : how < 0.10 ? 0.75 : first.judgedS() < 2 * Levels.LEAST_S ? 0.85 : 0.95;
        String course = first.slideS() > 0
                ? " slid to " + Said.pct(first.level()) + " of the siblings over " + Said.time(first.slideS())
                : first.fromStart()
                        ? " gave " + Said.pct(first.level()) + " of the siblings from the first minute on"
                        : " fell from " + Said.pct(first.before()) + " to " + Said.pct(first.level())
                                + " of the siblings at once";
        String evidence = Said.capital(Said.rows(rows)) + course + " and ran so for " + Said.time(first.judgedS())
                + " of work" + Said.meterAgainstTotal(mismatch, first.deviation()) + Said.pressure(pressure)
                + Said.group(e, rows) + ".";
        String rival = "A meter that reads low would show a constant ratio from the first minute on; this one "
                + (first.fromStart() ? "did begin with the log but changed later." : "changed during the job.");
        String check =
                "Catch nothing yet: read the row's pressure if it has a gauge, and compare the tank's loss with the"
                        + " meters' sum; swap the meter's plug with a neighbor's; then, " + Said.SAFE
                        + "clean the row's strainer and orifice and look for a kinked hose.";
        double toS = group.stream().mapToDouble(Levels.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.RESTRICTED,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, rival, check),
                List.of(new Figure("share of the siblings' flow", first.level(), "1")));
    }
}
