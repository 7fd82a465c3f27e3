package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** A row that fell to a few percent of its siblings and stayed there. */
final class PluggedDetector implements Detector {

    /** A pressure this far above the other rows' has moved. */
    private static final double MOVED = 1.05;

    @Override
    public List<Case> find(Evidence e) {
        List<Levels.Episode> plugged =
                e.unexplained().stream().filter(x -> x.level() < Signals.PLUGGED).toList();
        e.explain(plugged);
        List<Case> cases = new ArrayList<>();
        for (List<Levels.Episode> group : Together.grouped(e, plugged)) {
            cases.add(caseOf(e, group));
        }
        return cases;
    }

    private static Case caseOf(Evidence e, List<Levels.Episode> group) {
        Levels.Episode first = group.get(0);
        List<Integer> rows = Together.rows(group);
        // Where the total meter did not move, the meter was found dead before this.
        double mismatch = e.meterLeftTotal(first.row(), first.fromS(), first.toS()) / group.size();
        double pressure = e.pressureAgainstSiblings(first.row(), first.fromS(), first.toS());
        double confidence = first.judgedS() >= 2.5 * Levels.LEAST_S ? 0.97 : first.toEnd() ? 0.9 : 0.6;
        String began = first.fromStart() ? " from the first minute on" : ", having run at " + Said.pct(first.before());
        String evidence = Said.capital(Said.rows(rows)) + " gave " + Said.pct(first.level())
                + " of what the siblings gave for " + Said.time(first.judgedS()) + " of work" + began
                + Said.meterAgainstTotal(mismatch, first.deviation()) + Said.pressure(pressure)
                + Said.group(e, rows) + ".";
        String rival = !Double.isNaN(mismatch)
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
                        + " along; only then, " + Said.SAFE + "look at the row's strainer, orifice, hose and knife.";
        double toS = group.stream().mapToDouble(Levels.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.PLUGGED,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, rival, check),
                List.of(new Figure("share of the siblings' flow", first.level(), "1")));
    }
}
