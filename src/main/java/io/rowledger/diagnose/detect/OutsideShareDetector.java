package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.LevelShifts;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.List;

/** Both outside rows off by a half, one and a half or two: the setup's outside share is not the bar's. */
public final class OutsideShareDetector implements Detector {
    /** The factors a wrong share makes: ½, 1 and 1½ taken for one another. */
    private static final double[] FACTORS = {1.0 / 3, 0.5, 2.0 / 3, 1.5, 2, 3};

    private static final double NEAR = 0.08;
    private static final double ALIKE = 0.06;

    @Override
    public List<Case> find(Evidence e) {
        int last = e.rows() - 1;
        if (last < 3) {
            return List.of();
        }
        double rounding = Math.max(e.limits.resolutionOfMean(0), e.limits.resolutionOfMean(last))
                + e.limits.resolutionOfMean(e.rows() / 2);
        for (LevelShifts.Episode left : e.episodes(0)) {
            for (LevelShifts.Episode right : e.episodes(last)) {
                double mean = (left.level() + right.level()) / 2;
                double overlap = Math.min(left.toS(), right.toS()) - Math.max(left.fromS(), right.fromS());
                double longer = Math.max(left.toS() - left.fromS(), right.toS() - right.fromS());
                if (Math.abs(left.level() - right.level()) < ALIKE * mean
                        && near(mean, rounding)
                        && overlap > 0.8 * longer) {
                    e.explain(List.of(left, right));
                    return List.of(caseOf(left, right, mean));
                }
            }
        }
        return List.of();
    }

    /**
     * True for a level that a wrong share makes.
     *
     * @param rounding how far rounding may move an outside row's mean over the others', as a fraction; the middle row stands for them
     */
    private static boolean near(double level, double rounding) {
        for (double factor : FACTORS) {
            if (Math.abs(level / factor - 1) < NEAR + rounding) {
                return true;
            }
        }
        return false;
    }

    private static Case caseOf(LevelShifts.Episode left, LevelShifts.Episode right, double level) {
        double confidence = left.fromStart() && left.toEnd() ? 0.96 : 0.75;
        Message evidence = Message.of(
                "findings.outside_share.evidence",
                FindingMessages.percent(level),
                FindingMessages.percent(left.level()),
                FindingMessages.percent(right.level()),
                Message.duration(left.evaluatedS()));
        Message alternative = Message.of("findings.outside_share.alternative");
        Message check = Message.of("findings.outside_share.check");
        return new Case(
                FindingKind.OUTSIDE_SHARE,
                List.of(left.row(), right.row()),
                Math.min(left.fromS(), right.fromS()),
                Math.max(left.toS(), right.toS()),
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.outsideShare", level, "1")));
    }
}
