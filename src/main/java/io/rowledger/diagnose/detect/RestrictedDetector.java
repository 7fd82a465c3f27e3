package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EpisodeClusters;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * A row that gives a lasting fraction of its other rows, often sliding there. One that keeps coming back to what it gave before has none:
 * averaged dropouts and short spells leave such a mean.
 */
public final class RestrictedDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> low = e.unexplained().stream()
                .filter(x -> x.level() < 1 && !x.comesAndGoes() && Math.abs(x.level() - x.before()) > 0.04)
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
        // Another meter that errs all along is in the difference before the onset as well.
        Evidence.TotalGap left = e.leftTotal(first.row(), first.fromS(), first.toS());
        double all = group.size() * first.deviation();
        double mismatch = left.toldFrom(all) / group.size();
        double pressure = e.pressureAgainstPeers(first.row(), first.fromS(), first.toS());
        boolean meterOnly = left.shows(all);
        double how = -first.deviation();
        double confidence =
                meterOnly ? 0.55 : how < 0.10 ? 0.75 : first.evaluatedS() < 2 * LevelShifts.MIN_S ? 0.85 : 0.95;
        Message named = FindingMessages.rows(rows);
        Argument level = FindingMessages.percent(first.level());
        Argument worked = Message.duration(first.evaluatedS());
        Message total = FindingMessages.total(mismatch, first.deviation());
        Message pressed = FindingMessages.pressure(pressure);
        Message shared = FindingMessages.shared(e, rows);
        Message evidence = first.slideS() > 0
                ? Message.of(
                        "findings.restricted.evidence.slid",
                        named,
                        level,
                        Message.duration(first.slideS()),
                        worked,
                        total,
                        pressed,
                        shared)
                : first.fromStart()
                        ? Message.of(
                                "findings.restricted.evidence.started", named, level, worked, total, pressed, shared)
                        : Message.of(
                                "findings.restricted.evidence.fell",
                                named,
                                FindingMessages.percent(first.before()),
                                level,
                                worked,
                                total,
                                pressed,
                                shared);
        Message alternative = Message.of(
                first.fromStart()
                        ? "findings.restricted.alternative.started"
                        : "findings.restricted.alternative.changed");
        Message check = Message.of("findings.restricted.check");
        double toS = group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.RESTRICTED,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.peerShare", first.level(), "1")));
    }
}
