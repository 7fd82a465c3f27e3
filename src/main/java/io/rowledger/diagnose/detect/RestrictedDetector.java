package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EpisodeClusters;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingPhrases;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** A row that gives a lasting fraction of its other rows, often sliding there. */
public final class RestrictedDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> low = e.unexplained().stream()
                .filter(x -> x.level() < 1 && Math.abs(x.level() - x.before()) > 0.04)
                .toList();
        e.explain(low);
        List<Case> cases = new ArrayList<>();
        for (List<LevelShifts.Episode> group : EpisodeClusters.grouped(e, low)) {
            cases.add(caseOf(e, group));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, List<LevelShifts.Episode> group) {
        LevelShifts.Episode first = group.get(0);
        List<Integer> rows = EpisodeClusters.rows(group);
        double mismatch = e.meterAgainstTotal(first.row(), first.fromS(), first.toS());
        double pressure = e.pressureAgainstPeers(first.row(), first.fromS(), first.toS());
        boolean meterOnly = mismatch < 0.5 * first.deviation();
        double how = -first.deviation();
        double confidence =
                meterOnly ? 0.55 : how < 0.10 ? 0.75 : first.evaluatedS() < 2 * LevelShifts.MIN_S ? 0.85 : 0.95;
        String course = first.slideS() > 0
                ? " slid to " + FindingPhrases.pct(first.level()) + " of the siblings over "
                        + FindingPhrases.time(first.slideS())
                : first.fromStart()
                        ? " gave " + FindingPhrases.pct(first.level()) + " of the siblings from the first minute on"
                        : " fell from " + FindingPhrases.pct(first.before()) + " to "
                                + FindingPhrases.pct(first.level()) + " of the siblings at once";
        String evidence = FindingPhrases.capital(FindingPhrases.rows(rows)) + course + " and ran so for "
                + FindingPhrases.time(first.evaluatedS())
                + " of work" + FindingPhrases.meterAgainstTotal(mismatch, first.deviation())
                + FindingPhrases.pressure(pressure)
                + FindingPhrases.group(e, rows) + ".";
        String alternative = "A meter that reads low would show a constant ratio from the first minute on; this one "
                + (first.fromStart() ? "did begin with the log but changed later." : "changed during the job.");
        String check =
                "Catch nothing yet: read the row's pressure if it has a gauge, and compare the tank's loss with the"
                        + " meters' sum; swap the meter's plug with a neighbor's; then, " + FindingPhrases.SAFE
                        + "clean the row's strainer and orifice and look for a kinked hose.";
        double toS = group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.RESTRICTED,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(new Figure("share of the siblings' flow", first.level(), "1")));
    }
}
