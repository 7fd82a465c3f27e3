package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.TurnShares;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.MaxSumRange;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import java.util.List;

/** Flows alike across the bar while the rows' speeds differ. */
public final class NoTurnCompensationDetector implements Detector {
    /** Below this share of the turn taken out, the machine doesn't compensate. */
    private static final double NONE = 0.3;

    /** Fewer stretches of turning may be the track's noise or a fault of rows. */
    private static final int MIN_BLOCKS = 3;

    /** A coarse track drifts as well, and drift looks like a gentle turn in which no machine compensates. */
    private static final double MIN_TURN_IF_COARSE = 0.035;

    /** What a pass with real turns swings its heading by, rad; scatter swings it to and fro by less. */
    private static final double MIN_SWING_RAD = 0.2;

    private static final double MIN_SHARE = 0.2;

    /** A machine that compensates in most stretches can: in the others its flows may just be late, or a rig's length be wrong. */
    private static final double SOME_CONFIDENCE = 0.6;

    /** In a rounded log rows look alike where the bar's end differs from its middle by less than this share of a quantum (1). */
    private static final double TURN_OF_RESOLUTION = 1;

    /** True where the heading of the pass a block begins in really changed. */
    private static boolean turned(WorkingSamples work, TurnShares.Block block) {
        int q = work.pass[block.from()] - 1;
        double heading = 0;
        double least = 0;
        double most = 0;
        for (int j = work.passFrom[q]; j < work.passFrom[q + 1]; j++) {
            heading += work.curvaturePerM[j] * work.speedMps[j] * work.durationS[j];
            least = Math.min(least, heading);
            most = Math.max(most, heading);
        }
        return most - least > MIN_SWING_RAD;
    }

    @Override
    public List<Case> find(Evidence e) {
        List<TurnShares.Block> blocks = e.turns.stream()
                .filter(b -> b.turn() > TURN_OF_RESOLUTION * e.limits.resolution())
                .filter(b -> (!e.work.coarse || b.turn() > MIN_TURN_IF_COARSE) && turned(e.work, b))
                .toList();
        double[] gains = blocks.stream()
                .mapToDouble(b -> Math.max(-1, Math.min(1, (NONE - b.share()) / NONE)) * b.weight())
                .toArray();
        MaxSumRange range = MaxSumRange.of(gains);
        if (range.isEmpty()) {
            return List.of();
        }
        List<TurnShares.Block> without = blocks.subList(range.from(), range.end());
        double[] shares = without.stream().mapToDouble(TurnShares.Block::share).toArray();
        double median = RobustStatistics.median(shares);
        if (median > NONE || without.size() < MIN_BLOCKS || without.size() < MIN_SHARE * blocks.size()) {
            return List.of();
        }
        int from = without.get(0).from();
        int end = without.get(without.size() - 1).end();
        boolean throughout = range.from() == 0 && range.end() == blocks.size();
        boolean mostly = 2 * without.size() >= blocks.size();
        double confidence = !mostly ? SOME_CONFIDENCE : without.size() >= 4 && median < 0.2 ? 0.97 : 0.9;
        Message evidence = Message.of(
                "findings.no_turn_compensation.evidence",
                FindingMessages.percent(Math.max(0, median)),
                without.size(),
                throughout
                        ? Message.of("findings.no_turn_compensation.all")
                        : Message.of("findings.no_turn_compensation.some", blocks.size()));
        Message alternative = Message.of("findings.no_turn_compensation.alternative");
        Message check = Message.of("findings.no_turn_compensation.check");
        Case found = new Case(
                FindingKind.NO_TURN_COMPENSATION,
                List.of(),
                throughout ? e.work.timeS[0] : e.work.timeS[from],
                throughout ? e.work.timeS[e.work.n - 1] : e.work.timeS[end - 1],
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(Figure.of("findings.figure.turnShare", median, "1")));
        return List.of(found);
    }
}
