package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EpisodeClusters;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** A row with a lasting excess: a leak behind the meter, or an orifice too large. */
public final class LeakingDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> high = e.unexplained().stream()
                .filter(x -> x.level() > 1 && !x.comesAndGoes() && Math.abs(x.level() - x.before()) > 0.04)
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
        // Another meter that errs all along is in the difference before the onset as well.
        Evidence.TotalGap left = e.leftTotal(first.row(), first.fromS(), first.toS());
        double all = group.size() * first.deviation();
        double mismatch = left.toldFrom(all) / group.size();
        boolean meterOnly = left.shows(all);
        double confidence = meterOnly
                ? 0.55
                : first.deviation() < 0.08 ? 0.75 : first.evaluatedS() < 2 * LevelShifts.MIN_S ? 0.85 : 0.95;
        Message evidence = Message.of(
                "findings.leaking.evidence",
                FindingMessages.rows(rows),
                FindingMessages.percent(first.before()),
                FindingMessages.percent(first.level()),
                Message.duration(first.evaluatedS()),
                FindingMessages.total(mismatch, first.deviation()),
                FindingMessages.shared(e, rows));
        Message alternative = Message.of("findings.leaking.alternative");
        Message check = Message.of("findings.leaking.check");
        double toS = group.stream().mapToDouble(LevelShifts.Episode::toS).max().orElse(first.toS());
        return new Case(
                FindingKind.LEAKING,
                rows,
                first.fromS(),
                toS,
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.peerShare", first.level(), "1")));
    }
}
