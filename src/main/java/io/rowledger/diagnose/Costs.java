package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * What a case cost, where it began, and the window around its onset.
 *
 * <p>A row's deviation from its target has three parts, each charged to other cases: what the row metered less what the other
 * rows imply, to cases of single rows; in turns, what the rows' median implies less what the row's own speed calls for, to
 * missing turn compensation; and what the median gave the bar less the target, to cases of the whole bar. Each part of each
 * record is charged once, to the surest case, so that costs add up. Where only the meter errs, the cost is the error of the
 * record, not of the ground. Area: what the rows swept while working from the first to the last sign; for missing turn
 * compensation, the part of it that is off by more than 10 %.
 */
final class Costs {
    /** The window shows so much before and after the onset, s. */
    private static final double BEFORE_S = 60;

    private static final double AFTER_S = 120;

    /** Largest time between two entries of one pass, s; a turn takes longer. */
    private static final double MAX_STEP_S = 5;

    /** Shortest time for which a row or bar must be evaluated to be reported, s. */
    private static final double MIN_EVALUATED_S = 60;

    /** Shortest time over which the bar must be off to be reported where it is on target over the job, s. */
    private static final double MIN_SPELL_S = 300;

    /** How much farther off it must then be (1): of all spells of a job the worst is taken. */
    private static final double SPELL = 0.02;

    /** Share of the target below which the bar gives nothing (1). */
    private static final double NOTHING = 0.1;

    /**
     * Share of what its own speed calls for beyond which a row's ground in a turn is off (1): the class of 10 % in which the
     * reports count ground as on rate.
     */
    private static final double OFF_RATE = 0.1;

    /** Kinds that put the whole bar off its target. */
    private static final Set<FindingKind> BAR_OFF_TARGET = EnumSet.of(
            FindingKind.SUPPLY_LIMITED,
            FindingKind.SUPPLY_FAILING,
            FindingKind.RAN_EMPTY,
            FindingKind.SLOW_RESPONSE,
            FindingKind.HUNTING);

    /** Kinds in which a row stops by itself. */
    private static final Set<FindingKind> STOPS = EnumSet.of(FindingKind.PLUGGED, FindingKind.INTERMITTENT);

    private final Evidence e;
    private final Track track;
    private final double nitrogenKgPerL;

    /** Entries of each row whose deviation from the other rows is charged to a case. */
    private final BitSet[] claimedByRow;

    /** Entries in which the bar's deviation from its target is charged to a case. */
    private final BitSet claimedByBar = new BitSet();

    Costs(Evidence e, Track track, double nitrogenKgPerL) {
        this.e = e;
        this.track = track;
        this.nitrogenKgPerL = nitrogenKgPerL;
        claimedByRow = new BitSet[e.rows()];
        Arrays.setAll(claimedByRow, r -> new BitSet());
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
                found.words().check(),
                List.of());
    }

    /** Claims a case's rows and times and sums what it cost there. */
    private Case.Cost sum(Case found) {
        return found.rows().isEmpty() ? ofBar(found) : ofRows(found);
    }

    /** What rows metered less what the other rows imply. */
    private Case.Cost ofRows(Case found) {
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
        for (int j = work.entryAt(found.fromS()); j < to; j++) {
            for (int r : found.rows()) {
                area += areaM2(r, j);
                double due = s.impliedLPerS(r, j);
                double target = s.targetLPerS(r, j);
                if (rightlyShut(found.kind(), r, j)
                        || claimedByRow[r].get(j)
                        || (Double.isNaN(due) && Double.isNaN(target))) {
                    continue;
                }
                claimedByRow[r].set(j);
                volume += s.flowLPerS[r][j] * work.durationS[j];
                if (Double.isNaN(due)) {
                    unknownTargetL += target * work.durationS[j];
                } else {
                    known += due * work.durationS[j];
                    knownTargetL += Double.isNaN(target) ? 0 : target * work.durationS[j];
                }
            }
        }
        double share = knownTargetL > 0 ? known / knownTargetL : 1;
        return new Case.Cost(area, volume - known - share * unknownTargetL);
    }

    /** True where row r was rightly off; a row known to stop by itself that stops alone at the end of a pass was not. */
    private boolean rightlyShut(FindingKind kind, int r, int j) {
        return e.ratios.evaluated.shut(r).get(j) && !(STOPS.contains(kind) && offAlone(r, j));
    }

    /** What the rows' median gave the bar less the target; in turns, what it gave rows less what their own speed calls for. */
    private Case.Cost ofBar(Case found) {
        double area = 0;
        double volume = 0;
        boolean turns = found.kind() == FindingKind.NO_TURN_COMPENSATION;
        WorkingSamples work = e.work;
        FlowRatios s = e.ratios;
        int to = work.entryAt(found.toS());
        for (int j = work.entryAt(found.fromS()); j < to; j++) {
            boolean claimed = !turns && claimedByBar.get(j);
            for (int r = 0; r < e.rows(); r++) {
                double own = s.peerFlux[j] * work.bandM[r] * s.rowSpeedShare(r, j);
                area += !turns || offRate(r, j, own) ? areaM2(r, j) : 0;
                double lacks = turns ? s.impliedLPerS(r, j) - own : have(r, j, own) - due(r, j);
                if (!s.evaluated.shut(r).get(j) && !claimed && !Double.isNaN(lacks)) {
                    volume += lacks * work.durationS[j];
                }
            }
            if (!turns) {
                claimedByBar.set(j);
            }
        }
        return new Case.Cost(area, volume);
    }

    /** True where what turns gave row r is off by more than a class from what its own speed calls for, L/s. */
    private boolean offRate(int r, int j, double ownLPerS) {
        return !e.ratios.evaluated.shut(r).get(j)
                && ownLPerS > 0
                && Math.abs(e.ratios.impliedLPerS(r, j) / ownLPerS - 1) > OFF_RATE;
    }

    /** What row r would have had without a fault of its own, L/s; its own flow if too few rows delivered. */
    private double have(int r, int j, double implied) {
        return Double.isNaN(implied) ? e.ratios.flowLPerS[r][j] : implied;
    }

    /** What row r was due, L/s: the target, or without one the bar's usual flow at its speed. */
    private double due(int r, int j) {
        double target = e.ratios.targetLPerS(r, j);
        return Double.isNaN(target)
                ? e.barShare().usualShare() * e.work.bandM[r] * e.work.speedMps[j] * e.ratios.rowSpeedShare(r, j)
                : target;
    }

    private double areaM2(int r, int j) {
        return Math.max(0, e.work.bandM[r] * e.work.speedMps[j] * e.ratios.rowSpeedShare(r, j)) * e.work.durationS[j];
    }

    /** Ground that all rows swept while working, m². */
    double totalM2() {
        double sum = 0;
        for (int r = 0; r < e.rows(); r++) {
            for (int j = 0; j < e.work.n; j++) {
                sum += areaM2(r, j);
            }
        }
        return sum;
    }

    /** Liquid that a case put on the wrong rows or at the wrong time, though the sum may be right, L. */
    double misplacedL(Case found) {
        double sum = 0;
        int to = e.work.entryAt(found.toS());
        for (int j = e.work.entryAt(found.fromS()); j < to; j++) {
            for (int r = 0; r < e.rows(); r++) {
                if (found.concerns(r) && !e.ratios.evaluated.shut(r).get(j)) {
                    double own = e.ratios.peerFlux[j] * e.work.bandM[r] * e.ratios.rowSpeedShare(r, j);
                    double due = found.rows().isEmpty() ? due(r, j) : own;
                    double off = Math.abs(e.ratios.flowLPerS[r][j] - due);
                    sum += Double.isNaN(off) ? 0 : off * e.work.durationS[j] / 2;
                }
            }
        }
        return sum;
    }

    /** Rows, or the bar, that were off by more than the log resolves where no case concerns them. */
    List<Deviation> unexplained(List<Case> cases) {
        List<Deviation> found = new ArrayList<>();
        BitSet unsteady = new BitSet(e.work.n);
        for (int j = 0; j < e.work.n; j++) {
            unsteady.set(j, e.ratios.unsteady(j));
        }
        List<Unconcerned> ofRows = e.ofRows(r -> unconcerned(r, cases, unsteady));
        for (int r = 0; r < e.rows(); r++) {
            Unconcerned of = ofRows.get(r);
            add(found, r + 1, of.ownL, of.impliedL, of.seconds, e.limits.resolutionOfMean(r));
        }
        addBar(found, cases, unsteady);
        return found;
    }

    /** What a row gave and what the other rows imply for it, where no case concerns it. */
    private record Unconcerned(double ownL, double impliedL, double seconds) {}

    private Unconcerned unconcerned(int r, List<Case> cases, BitSet unsteady) {
        BitSet left = (BitSet) unsteady.clone();
        concerned(cases, r, left);
        double own = 0;
        double implied = 0;
        double seconds = 0;
        for (int j = left.nextClearBit(0); j < e.work.n; j = left.nextClearBit(j + 1)) {
            double due = e.ratios.impliedLPerS(r, j);
            boolean counts = due > 0 && (!e.ratios.evaluated.shut(r).get(j) || offAlone(r, j));
            own += counts ? e.ratios.flowLPerS[r][j] * e.work.durationS[j] : 0;
            implied += counts ? due * e.work.durationS[j] : 0;
            seconds += counts ? e.work.durationS[j] : 0;
        }
        return new Unconcerned(own, implied, seconds);
    }

    /** Adds the bar if it was off over the whole job, or else the spell in which it was off most. */
    private void addBar(List<Deviation> found, List<Case> cases, BitSet unsteady) {
        BarSpell all = new BarSpell();
        // Too little and too much beyond a limit, each summed as long as the sum is not negative.
        BarSpell little = new BarSpell();
        BarSpell much = new BarSpell();
        BarSpell worst = new BarSpell();
        // Rounding of many rows partly cancels in their median.
        double rounding = e.limits.resolutionOfMean() / Math.sqrt(Math.max(1, e.rows()));
        double limit = Deviation.limit(rounding) + SPELL;
        List<Case> ofBar = cases.stream().filter(x -> x.rows().isEmpty()).toList();
        for (int j = 0; j < e.work.n; j++) {
            double target = e.ratios.targetLPerM2[j] * e.work.speedMps[j];
            // A bar that gives nothing has no median of delivering rows, but a share of its target.
            double share = e.barShare().share(j);
            double flux = share < NOTHING ? share * target : e.ratios.peerFlux[j];
            boolean counts = target > 0
                    && flux >= 0
                    && !unsteady.get(j)
                    && (ofBar.isEmpty() || ofBar.stream().noneMatch(of(e.work.timeS[j])));
            if (counts) {
                all.add(j, flux, target);
                little = little.beyond(-1, limit) < 0 ? new BarSpell() : little;
                much = much.beyond(1, limit) < 0 ? new BarSpell() : much;
                little.add(j, flux, target);
                much.add(j, flux, target);
                worst = little.beyond(-1, limit) > worst.most(limit) ? little.copy() : worst;
                worst = much.beyond(1, limit) > worst.most(limit) ? much.copy() : worst;
            }
        }
        double widthM = Arrays.stream(e.work.bandM).sum();
        int before = found.size();
        add(found, 0, all.own * widthM, all.due * widthM, all.seconds, rounding);
        if (found.size() == before && worst.seconds >= MIN_SPELL_S && Math.abs(worst.own / worst.due - 1) > limit) {
            found.add(new Deviation(
                            e.ratios.product,
                            0,
                            worst.own / worst.due - 1,
                            limit,
                            (worst.own - worst.due) * widthM,
                            worst.seconds)
                    .between(e.work.timeS[worst.from], e.work.timeS[worst.to]));
        }
    }

    /** Liquid per meter of width over entries one after the other, and its target, L/m. */
    private final class BarSpell {
        private int from = -1;
        private int to;
        private double own;
        private double due;
        private double seconds;

        void add(int j, double flux, double target) {
            from = from < 0 ? j : from;
            to = j;
            own += flux * e.work.durationS[j];
            due += target * e.work.durationS[j];
            seconds += e.work.durationS[j];
        }

        /** How much more (sign 1) or less (sign -1) than the target by more than a limit, L/m. */
        double beyond(int sign, double limit) {
            return sign * (own - due) - limit * due;
        }

        double most(double limit) {
            return Math.max(beyond(-1, limit), beyond(1, limit));
        }

        BarSpell copy() {
            BarSpell copy = new BarSpell();
            copy.from = from;
            copy.to = to;
            copy.own = own;
            copy.due = due;
            copy.seconds = seconds;
            return copy;
        }
    }

    /** True for a row that is off by itself: a sloped headland and covered ground shut its neighbors off as well. */
    private boolean offAlone(int r, int j) {
        return delivers(r - 1, j) && delivers(r + 1, j) && !e.ratios.evaluated.rightlyOff(r, j);
    }

    private boolean delivers(int r, int j) {
        return r < 0 || r >= e.rows() || e.delivery.delivering(r, e.work.step[j]);
    }

    private static Predicate<Case> of(double timeS) {
        return x -> x.rows().isEmpty() && BAR_OFF_TARGET.contains(x.kind()) && x.fromS() <= timeS && timeS <= x.toS();
    }

    /** Adds the entries in which a case concerns row r. */
    private void concerned(List<Case> cases, int r, BitSet entries) {
        for (Case found : cases) {
            if (found.rows().contains(r)) {
                int from = e.work.entryAt(found.fromS());
                entries.set(from, Math.max(from, e.work.entryAt(Math.nextUp(found.toS()))));
            }
        }
    }

    private void add(List<Deviation> found, int row, double own, double due, double seconds, double rounding) {
        double fraction = own / due - 1;
        double limit = Deviation.limit(rounding);
        if (seconds >= MIN_EVALUATED_S && Math.abs(fraction) > limit) {
            found.add(new Deviation(e.ratios.product, row, fraction, limit, own - due, seconds));
        }
    }

    /** All that the rows metered while working, L. */
    double totalL() {
        double sum = 0;
        for (int r = 0; r < e.rows(); r++) {
            for (int j = 0; j < e.work.n; j++) {
                sum += e.ratios.flowLPerS[r][j] * e.work.durationS[j];
            }
        }
        return sum;
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

    /** The entry that lies so many seconds of work before or after another: a night or a turn between passes takes no time. */
    private static int worked(WorkingSamples work, int entry, int direction, double seconds) {
        double sum = 0;
        int j = entry;
        while (j + direction >= 0 && j + direction <= work.n && sum < seconds) {
            int next = j + direction;
            if (next < work.n && j < work.n) {
                sum += Math.min(MAX_STEP_S, Math.abs(work.timeS[next] - work.timeS[j]));
            }
            j = next;
        }
        return j;
    }

    OnsetWindow window(Case found) {
        WorkingSamples work = e.work;
        FlowRatios s = e.ratios;
        int onset = work.entryAt(found.fromS());
        int from = worked(work, onset, -1, BEFORE_S);
        int end = Math.max(from, worked(work, onset, 1, AFTER_S));
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
