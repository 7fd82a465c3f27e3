package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingPhrases;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;

/** A meter that reads a constant ratio from the first minute to the last, at all speeds. */
public final class MeterScaleDetector implements Detector {
    @Override
    public List<Case> find(Evidence e) {
        List<LevelShifts.Episode> constant = new ArrayList<>();
        List<Case> cases = new ArrayList<>();
        for (LevelShifts.Episode episode : e.unexplained()) {
            if (!episode.fromStart() || !episode.toEnd() || !episode.steady()) {
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
        String evidence = FindingPhrases.capital(FindingPhrases.rows(rows)) + " read " + FindingPhrases.pct(x.level())
                + " of the siblings from the first minute to the last (" + FindingPhrases.time(x.evaluatedS())
                + " of work), at every speed" + FindingPhrases.meterAgainstTotal(mismatch, x.deviation()) + ".";
        String alternative = (x.level() < 1 ? "A restriction" : "A wrong orifice or a leak")
                + " that was there before the job began reads the same; those usually begin or slide during the work.";
        String check =
                "Compare the meter's calibration number in the setup with its plate and with a neighbor's; swap the"
                        + " meter's plug with a neighbor's and see whether the ratio moves along; then, "
                        + FindingPhrases.SAFE
                        + "set up a timed catch of water from the row and a neighbor and compare.";
        return new Case(
                FindingKind.METER_SCALE,
                rows,
                x.fromS(),
                x.toS(),
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(new Figure("meter reads this share", x.level(), "1")));
    }
}
