package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** A meter that reads a constant ratio from the first minute to the last, at all speeds. */
public final class MeterScaleDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> constant = new ArrayList<>();
        List<Case> cases = new ArrayList<>();
        for (LevelShifts.Episode episode : e.unexplained()) {
            if (!episode.fromStart() || !episode.toEnd() || !episode.steady() || episode.comesAndGoes()) {
                continue;
            }
            double mismatch = e.meterAgainstTotal(episode.row(), episode.fromS(), episode.toS());
            if (Math.abs(mismatch) < 0.3 * Math.abs(episode.deviation())) {
                continue;
            }
            constant.add(episode);
            cases.add(caseOf(episode, mismatch));
        }
        e.explain(constant);
        return cases;
    }

    private static Case caseOf(LevelShifts.Episode x, double mismatch) {
        double size = Math.abs(x.deviation());
        double confidence = !Double.isNaN(mismatch) ? 0.97 : size < 0.05 ? 0.6 : size > 0.25 ? 0.8 : 0.9;
        List<Integer> rows = List.of(x.row());
        Message evidence = Message.of(
                "findings.meter_scale.evidence",
                FindingMessages.rows(rows),
                FindingMessages.percent(x.level()),
                Message.duration(x.evaluatedS()),
                FindingMessages.total(mismatch, x.deviation()));
        Message alternative = Message.of(
                x.level() < 1 ? "findings.meter_scale.alternative.low" : "findings.meter_scale.alternative.high");
        Message check = Message.of("findings.meter_scale.check");
        return new Case(
                FindingKind.METER_SCALE,
                rows,
                x.fromS(),
                x.toS(),
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.meterShare", x.level(), "1")));
    }
}
