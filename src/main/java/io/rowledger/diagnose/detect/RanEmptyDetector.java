package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.BarShare;
import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * All rows fall to nothing within seconds inside a pass and driving with the bar down goes on. A main valve shut by hand stops
 * at once and usually opens again in the same pass, as across a waterway; a tank that runs empty stays empty to the end of the
 * pass. Where the bar delivered before a stop or a lift and gives nothing after it, the tank ran empty meanwhile, or nobody
 * switched the flow on. Rows that stop one after another, each at once, are shut off by section control at a slanting line.
 */
public final class RanEmptyDetector implements Detector {
    /** Share of the usual flow below which the bar gives nothing, and above which it delivers (1). */
    private static final double NOTHING = 0.12;

    private static final double DELIVERS = 0.6;

    /** Share of the usual flow above which the bar counts as at full flow (1); the fall starts at the last such record. */
    private static final double FULL = 0.9;

    /** Rounding counts up to this (1). */
    private static final double MAX_ROUNDING = 0.25;

    /** Time with nothing from which the tank is empty, s of driving. */
    private static final double MIN_S = 15;

    /** Delivery before the fall, s. */
    private static final double MIN_BEFORE_S = 10;

    /** The longest fall; a slower one is a failing supply's, s. */
    private static final double MAX_FALL_S = 25;

    /** Shortest drive without flow after a stop or a lift, s. */
    private static final double MIN_AFTER_STOP_S = 40;

    /** Faster falls may be a valve shut by hand, s. */
    private static final double FAST_S = 1.2;

    /** Rows whose flow is above the first and below the second share of what it was before have begun and ended to fall (1). */
    private static final double BEGUN = 0.8;

    private static final double ENDED = 0.2;

    /** Times that a row's own fall must go into the time from the first row's stop to the last one's for them to stop in turn. */
    private static final double IN_TURN = 2;

    /** Fewer rows that delivered tell no order, and of so many the first and the last to stop are left out. */
    private static final int MIN_IN_TURN = 3;

    private static final int MIN_ASIDE = 6;

    @Override
    public List<Case> find(Evidence e) {
        if (!e.log.hasDown()) {
            // A bar without flow that drives on writes what a lifted one writes.
            return List.of();
        }
        List<Case> cases = new ArrayList<>();
        BarShare bar = e.barShare();
        double usual = bar.usualShare();
        // Rounding may put the readings of a full bar this low.
        double full = FULL - Math.min(MAX_ROUNDING, e.limits.resolution());
        WorkingSamples work = e.work;
        double deliveredS = 0;
        int delivering = -1;
        boolean shutOff = false;
        int j = 0;
        while (j < work.n) {
            double share = bar.share(j) / usual;
            if (share > DELIVERS) {
                deliveredS += work.durationS[j];
                delivering = share > full || delivering < 0 ? j : delivering;
                shutOff = false;
            } else if (share < NOTHING && delivering >= 0 && deliveredS >= MIN_BEFORE_S) {
                int end = end(bar, usual, work, j);
                int passEnd = work.passFrom[work.pass[j]];
                boolean inside = work.pass[delivering] == work.pass[j];
                boolean off = (inside && oneByOne(e, delivering, j)) || coveredOrCommandedOff(e, j, end);
                if (off && end > passEnd) {
                    // The tank may have run empty meanwhile: the next pass tells.
                    shutOff = true;
                    j = passEnd;
                    continue;
                }
                Case found = off ? null : empty(e, delivering, j, end, shutOff);
                if (found != null) {
                    cases.add(found);
                }
                deliveredS = 0;
                delivering = -1;
                shutOff = false;
                j = end;
                continue;
            }
            j++;
        }
        return cases;
    }

    /**
     * A tank that ran empty between the last entry in which the bar delivered and entry j, from which on it gives nothing until entry end;
     * null if nothing shows that.
     *
     * @param shutOff true if rows were shut off in the passes between
     */
    private static @Nullable Case empty(Evidence e, int delivering, int j, int end, boolean shutOff) {
        WorkingSamples work = e.work;
        double nothingS = nothingS(e, j, end);
        double fallS = work.timeS[j] - work.timeS[delivering];
        boolean samePass = work.pass[delivering] == work.pass[j];
        // The bar stood or was lifted at the end of the fall, or between it and now.
        boolean meanwhile = !samePass && (shutOff || !lowBefore(e, delivering, work.passFrom[work.pass[j] - 1]));
        boolean fast = meanwhile || fallS < FAST_S + e.limits.smearS() + work.intervalS;
        boolean toPassEnd = end >= work.passFrom[work.pass[j]];
        boolean lasts = nothingS >= (meanwhile ? MIN_AFTER_STOP_S : MIN_S) && (toPassEnd || !fast);
        boolean falls = meanwhile || (samePass && fallS < MAX_FALL_S);
        return lasts && falls ? caseOf(e, delivering, end, fallS, nothingS, fast) : null;
    }

    /** True if the bar was known to be low, before entry limit, for longer than a fall from entry delivering on takes. */
    private static boolean lowBefore(Evidence e, int delivering, int limit) {
        for (int k = delivering + 1; k < limit; k++) {
            boolean low = e.barShare().share(k) / e.barShare().usualShare() <= DELIVERS;
            if (low && e.work.timeS[k] - e.work.timeS[delivering] > MAX_FALL_S) {
                return true;
            }
        }
        return false;
    }

    /** True if rows stopped in turn about the fall of the bar between two entries, each much faster than all of them together. */
    private static boolean oneByOne(Evidence e, int delivering, int nothing) {
        WorkingSamples work = e.work;
        int q = work.pass[delivering] - 1;
        int from = delivering;
        while (from > work.passFrom[q] && work.timeS[delivering] - work.timeS[from] < MAX_FALL_S) {
            from--;
        }
        int to = nothing;
        while (to < work.passFrom[q + 1] - 1 && work.timeS[to] - work.timeS[nothing] < MAX_FALL_S) {
            to++;
        }
        double[] stopS = new double[e.rows()];
        double[] fallS = new double[e.rows()];
        int n = 0;
        for (int r = 0; r < e.rows(); r++) {
            float[] flow = e.ratios.flowLPerS[r];
            float[] before = Arrays.copyOfRange(flow, from, delivering + 1);
            Arrays.sort(before);
            // Rows that were off for a part of it as well: the upper quarter.
            double level = before[3 * before.length / 4];
            int last = to;
            while (last > from && !(flow[last] > ENDED * level)) {
                last--;
            }
            int first = last;
            while (first > from && !(flow[first] > BEGUN * level)) {
                first--;
            }
            boolean delivered = flow[delivering] > BEGUN * level;
            if (delivered && level > 0 && e.cases().stream().noneMatch(ofRow(r))) {
                stopS[n] = (work.timeS[first] + work.timeS[last]) / 2;
                fallS[n++] = work.timeS[last] - work.timeS[first];
            }
        }
        if (n < MIN_IN_TURN) {
            return false;
        }
        double[] ordered = Arrays.copyOf(stopS, n);
        Arrays.sort(ordered);
        // Of a row with a fault of its own, known or not, the end says nothing.
        int aside = Math.max(n < MIN_ASIDE ? 0 : 1, n / 8);
        double inTurnS = ordered[n - 1 - aside] - ordered[aside];
        double ownS = RobustStatistics.median(fallS, n) + work.intervalS;
        return inTurnS > IN_TURN * ownS + e.limits.skewS();
    }

    private static Predicate<Case> ofRow(int row) {
        return found -> found.rows().contains(row);
    }

    /** The first entry from j on in which the bar delivers again. */
    private static int end(BarShare bar, double usual, WorkingSamples work, int j) {
        int end = j;
        while (end < work.n && !(bar.share(end) / usual > DELIVERS / 2)) {
            end++;
        }
        return end;
    }

    /** Time from an entry to another in which the bar is known to give nothing, s: not while most of its rows are rightly off. */
    private static double nothingS(Evidence e, int from, int end) {
        double sum = 0;
        for (int j = from; j < end; j++) {
            sum += Double.isNaN(e.barShare().share(j)) ? 0 : e.work.durationS[j];
        }
        return sum;
    }

    /** True if most rows were commanded off, or ran over covered ground, in most of the entries of the first pass. */
    private static boolean coveredOrCommandedOff(Evidence e, int from, int end) {
        int right = 0;
        int all = 0;
        int stop = Math.min(end, e.work.passFrom[e.work.pass[from]]);
        for (int j = from; j < stop; j++) {
            for (int r = 0; r < e.rows(); r++) {
                all++;
                right += e.offByCommand(r, j) || e.ratios.evaluated.overCovered(r, j) ? 1 : 0;
            }
        }
        return 2 * right > all;
    }

    private static Case caseOf(Evidence e, int delivering, int end, double fallS, double nothingS, boolean fast) {
        boolean commanded = e.limits.commandLogged();
        int last = Math.min(end, e.work.n) - 1;
        Message evidence = Message.of(
                "findings.ran_empty.evidence",
                FindingMessages.percent(e.barShare().usualShare()),
                FindingMessages.percent(NOTHING),
                Message.duration(Math.max(1, fallS)),
                Message.duration(nothingS),
                commanded ? Message.of("findings.ran_empty.commanded") : FindingMessages.none());
        return new Case(
                FindingKind.RAN_EMPTY,
                List.of(),
                e.work.timeS[delivering],
                e.work.timeS[last],
                commanded ? 0.96 : fast ? 0.8 : 0.93,
                new Case.Words(
                        evidence, Message.of("findings.ran_empty.alternative"), Message.of("findings.ran_empty.check")),
                List.of());
    }
}
