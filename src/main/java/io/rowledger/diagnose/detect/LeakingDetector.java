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

/** A row with a lasting excess: a leak behind the meter, or an orifice too large. */
public final class LeakingDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> high = e.unexplained().stream()
                .filter(x -> x.level() > 1 && Math.abs(x.level() - x.before()) > 0.04)
                .toList();
        e.explain(high);
        List<Case> cases = new ArrayList<>();
        for (List<LevelShifts.Episode> group : EpisodeClusters.grouped(e, high)) {
            cases.add(caseOf(e, group));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, List<LevelShifts.Episode> group) {
        LevelShifts.Episode first = group.get(0);
        List<Integer> rows = EpisodeClusters.rows(group);
        double mismatch = e.meterAgainstTotal(first.row(), first.fromS(), first.toS());
        boolean meterOnly = mismatch > 0.5 * first.deviation();
        double confidence = meterOnly
                ? 0.55
                : first.deviation() < 0.08 ? 0.75 : first.evaluatedS() < 2 * LevelShifts.MIN_S ? 0.85 : 0.95;
        String evidence = FindingPhrases.capital(FindingPhrases.rows(rows)) + " rose from "
                + FindingPhrases.pct(first.before()) + " to "
                + FindingPhrases.pct(first.level()) + " of the siblings and ran so for "
                + FindingPhrases.time(first.evaluatedS())
                + " of work" + FindingPhrases.meterAgainstTotal(mismatch, first.deviation())
                + FindingPhrases.group(e, rows) + ".";
        String alternative =
                "Swapped channels would make another row run low by as much and follow another place in turns;"
                        + " no row does. A meter that reads high would have done so from the first minute on.";
        String check = "Look from a safe distance, upwind, for a wet hose or fitting on the row; compare the tank's"
                + " loss with the meters' sum; then, " + FindingPhrases.SAFE
                + "compare the row's orifice with a neighbor's and tighten or replace what leaks.";
        double toS = group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.LEAKING,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(new Figure("share of the siblings' flow", first.level(), "1")));
    }
}
