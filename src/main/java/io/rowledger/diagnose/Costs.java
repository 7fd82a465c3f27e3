package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.Finding;
import io.rowledger.track.Track;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What a case cost, where it began, and the window around its onset.
 *
 * <p>Area: what the rows swept while working from its first to its last sign. Volume: what they metered less what their
 * other rows imply, or, for the whole bar, less what the target asks; where only the meter errs this is what the record is
 * off by, not the ground.
 */
final class Costs {
    /** The window shows so much before and after the onset, s. */
    private static final double BEFORE_S = 60;

    private static final double AFTER_S = 120;

    private final Evidence e;
    private final Track track;
    private final double nitrogenKgPerL;

    Costs(Evidence e, Track track, double nitrogenKgPerL) {
        this.e = e;
        this.track = track;
        this.nitrogenKgPerL = nitrogenKgPerL;
    }

    private List<Integer> rows(Case found) {
        return found.rows().isEmpty() ? IntStream.range(0, e.rows()).boxed().toList() : found.rows();
    }

    Finding finding(Case found) {
        Case.Cost cost = found.cost() == null ? sum(found) : found.cost();
        double[] place = place(found);
        return new Finding(
                found.kind(),
                found.rows().stream().map(r -> r + 1).toList(),
                found.fromS(),
                found.toS(),
                found.confidence(),
                cost.areaM2(),
                cost.volumeL(),
                cost.volumeL() * nitrogenKgPerL,
                place[0],
                place[1],
                found.words().evidence(),
                found.words().alternative(),
                found.words().check());
    }

    private Case.Cost sum(Case found) {
        double area = 0;
        double volume = 0;
        // Where the other rows can't be evaluated, at the ends of passes, the target stands in at the share they run
        // on.
        double known = 0;
        double knownTargetL = 0;
        double unknownTargetL = 0;
        WorkingSamples work = e.work;
        FlowRatios s = e.ratios;
        int to = work.entryAt(found.toS());
        List<Integer> rows = rows(found);
        for (int j = work.entryAt(found.fromS()); j < to; j++) {
            for (int r : rows) {
                area += Math.max(0, work.bandM[r] * work.speedMps[j] * s.rowSpeedShare(r, j)) * work.durationS[j];
                double due = found.rows().isEmpty() ? s.targetLPerS(r, j) : s.impliedLPerS(r, j);
                double asked = s.targetLPerS(r, j);
                if (s.evaluated.shut(r).get(j) || (Double.isNaN(due) && Double.isNaN(asked))) {
                    continue;
                }
                volume += s.flowLPerS[r][j] * work.durationS[j];
                if (Double.isNaN(due)) {
                    unknownTargetL += asked * work.durationS[j];
                } else {
                    known += due * work.durationS[j];
                    knownTargetL += Double.isNaN(asked) ? 0 : asked * work.durationS[j];
                }
            }
        }
        double share = knownTargetL > 0 ? known / knownTargetL : 1;
        return new Case.Cost(area, volume - known - share * unknownTargetL);
    }

    /** Latitude and longitude of the rows' middle at the onset, degrees; NaN without a pose. */
    private double[] place(Case found) {
        double[] out = {Double.NaN, Double.NaN};
        if (e.work.n > 0) {
            int j = Math.min(e.work.n - 1, e.work.entryAt(found.fromS()));
            double y = rows(found).stream()
                    .mapToDouble(r -> e.work.atM[r])
                    .average()
                    .orElse(0);
            int pose = e.work.step[j];
            track.plane().inverse(track.poses().eastM(pose, y), track.poses().northM(pose, y), out);
        }
        return out;
    }

    OnsetWindow window(Case found) {
        WorkingSamples work = e.work;
        FlowRatios s = e.ratios;
        int from = work.entryAt(found.fromS() - BEFORE_S);
        int end = Math.max(from, work.entryAt(found.fromS() + AFTER_S));
        int row = found.rows().isEmpty() ? -1 : found.rows().get(0);
        double[][] columns = new double[5][end - from];
        for (int j = from; j < end; j++) {
            int i = j - from;
            columns[0][i] = work.timeS[j];
            columns[4][i] = work.speedMps[j];
            columns[2][i] = row < 0 ? Double.NaN : s.impliedLPerS(row, j);
            for (int r = row < 0 ? 0 : row; r < (row < 0 ? e.rows() : row + 1); r++) {
                columns[1][i] += s.flowLPerS[r][j];
                columns[3][i] += s.targetLPerS(r, j);
            }
        }
        return new OnsetWindow(
                s.product, row + 1, found.fromS(), columns[0], columns[1], columns[2], columns[3], columns[4]);
    }
}
