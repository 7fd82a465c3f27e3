package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EpisodeClusters;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
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
        // A row that recovers by itself within minutes is more likely intermittent.
        boolean lasting = first.evaluatedS() >= 2.5 * LevelShifts.MIN_S;
        double confidence = lasting ? first.toEnd() ? 0.97 : 0.93 : first.toEnd() ? 0.75 : 0.55;
        Message began = first.fromStart()
                ? Message.of("findings.plugged.started")
                : Message.of("findings.plugged.before", FindingMessages.percent(first.before()));
        Message evidence = Message.of(
                "findings.plugged.evidence",
                FindingMessages.rows(rows),
                FindingMessages.percent(first.level()),
                Message.duration(first.evaluatedS()),
                began,
                FindingMessages.total(mismatch, first.deviation()),
                FindingMessages.pressure(pressure),
                FindingMessages.shared(e, rows));
        Message alternative = Message.of(
                !Double.isNaN(mismatch)
                        ? "findings.plugged.alternative.total"
                        : pressure > MOVED
                                ? "findings.plugged.alternative.pressure"
                                : "findings.plugged.alternative.alone");
        Message check = Message.of("findings.plugged.check");
        double toS = group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.PLUGGED,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.peerShare", first.level(), "1")));
    }
}
