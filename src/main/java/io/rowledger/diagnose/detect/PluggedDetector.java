package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EpisodeClusters;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingPhrases;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** A row that fell to a few percent of its other rows and stayed there. */
public final class PluggedDetector implements Detector {

    /** A pressure this far above the other rows' has moved. */
    private static final double MOVED = 1.05;

    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> plugged = e.unexplained().stream()
                .filter(x -> x.level() < FlowRatios.PLUGGED)
                .toList();
        e.explain(plugged);
        List<Case> cases = new ArrayList<>();
        for (List<LevelShifts.Episode> group : EpisodeClusters.grouped(e, plugged)) {
            cases.add(caseOf(e, group));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, List<LevelShifts.Episode> group) {
        LevelShifts.Episode first = group.get(0);
        List<Integer> rows = EpisodeClusters.rows(group);
        // Where the total meter did not move, the meter was found dead before this.
        double mismatch = e.meterLeftTotal(first.row(), first.fromS(), first.toS()) / group.size();
        double pressure = e.pressureAgainstPeers(first.row(), first.fromS(), first.toS());
        double confidence = first.evaluatedS() >= 2.5 * LevelShifts.MIN_S ? 0.97 : first.toEnd() ? 0.9 : 0.6;
        String began = first.fromStart()
                ? " from the first minute on"
                : ", having run at " + FindingPhrases.pct(first.before());
        String evidence = FindingPhrases.capital(FindingPhrases.rows(rows)) + " gave "
                + FindingPhrases.pct(first.level())
                + " of what the siblings gave for " + FindingPhrases.time(first.evaluatedS()) + " of work" + began
                + FindingPhrases.meterAgainstTotal(mismatch, first.deviation()) + FindingPhrases.pressure(pressure)
                + FindingPhrases.group(e, rows) + ".";
        String alternative = !Double.isNaN(mismatch)
                ? "A row shut by hand would look the same to this log; a dead meter would not: the total meter lost what the"
                        + " row lost."
                : pressure > MOVED
                        ? "A dead meter would not have raised the row's pressure; a row shut by hand would."
                        : "No total meter is logged, so a dead meter would look the same to this log, and so would a row shut"
                                + " by hand: the figures don't come and go as loose wiring does, and the ground was not"
                                + " covered before.";
        String check =
                "Look from a safe distance, upwind, whether the row leaves liquid; compare the row's reading with"
                        + " the bar standing and shut; swap the meter's plug with a neighbor's and see whether the zero moves"
                        + " along; only then, " + FindingPhrases.SAFE
                        + "look at the row's strainer, orifice, hose and knife.";
        double toS = group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.PLUGGED,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(new Figure("share of the siblings' flow", first.level(), "1")));
    }
}
