package io.rowledger.diagnose.signal;

import io.rowledger.log.LogTable;
import io.rowledger.parallel.Lazy;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import java.util.BitSet;

/**
 * In which working records a row's flow says something about the row.
 *
 * <p>Not evaluated is a row just after it came on and just before it goes off, while a valve moves; a row commanded off; a
 * row that is off over ground covered before; and, in a log without commands, a row that is off at the end of a pass but comes
 * back, as at a slanting headland, unless the rows on both sides of it deliver. A row that is off for none of these reasons is
 * evaluated: it should have delivered.
 */
public final class EvaluationMask {
    /** Time cut from both ends of an evaluated stretch while a valve moves, s; as for the remaining turn error. */
    static final double VALVE_S = 2.0;

    /** An off stretch at the end of a pass up to this long is the valve's, s. */
    private static final double EDGE_S = 4.0;

    /** The longest a row may be off at the end of a pass for the shape of the headland, s. */
    private static final double HEADLAND_S = 30;

    /** Share of prior coverage from which a stretch counts as over covered ground (1). */
    private static final double COVERED = 0.5;

    private final LogTable log;
    private final WorkingSamples work;
    private final Delivery delivery;
    private final Strips strips;
    private final double settlingS;
    private final BitSet[] evaluated;
    private final BitSet[] shut;
    private final boolean commandLogged;
    /** Ground covered before: clean straight fields never need it. */
    private final Lazy<PriorCoverageGrid> covered;

    private EvaluationMask(LogTable log, WorkingSamples work, Strips strips, Delivery delivery, double smearS) {
        this.log = log;
        this.work = work;
        this.strips = strips;
        settlingS = VALVE_S + smearS;
        this.delivery = delivery;
        evaluated = new BitSet[work.rows()];
        shut = new BitSet[work.rows()];
        covered = new Lazy<>(() -> new PriorCoverageGrid(strips, delivery, work));
        commandLogged = work.rows() > 0 && log.records() > 0 && log.on(0, 0) >= 0;
        for (int r = 0; r < work.rows(); r++) {
            evaluated[r] = new BitSet(work.n);
            shut[r] = new BitSet(work.n);
            row(r);
        }
    }

    /**
     * The mask of a job.
     *
     * @param smearS time within which a change of the flow shows in the log, s
     */
    public static EvaluationMask of(
            LogTable log, WorkingSamples work, Strips strips, Delivery delivery, double smearS) {
        return new EvaluationMask(log, work, strips, delivery, smearS);
    }

    /** Records in which row r is evaluated. Shared, read only. */
    public BitSet records(int r) {
        return evaluated[r];
    }

    /** Records in which row r was rightly off, or is taken to have been. Shared, read only. */
    public BitSet shut(int r) {
        return shut[r];
    }

    private boolean delivers(int r, int j) {
        return delivery.delivering(r, work.step[j]);
    }

    private void row(int r) {
        for (int q = 0; q < work.passes(); q++) {
            int from = work.passFrom[q];
            int end = work.passFrom[q + 1];
            int j = from;
            while (j < end) {
                boolean on = delivers(r, j);
                int to = j;
                while (to < end && delivers(r, to) == on) {
                    to++;
                }
                if (!on && shutOffCredit(r, j, to, from, end)) {
                    shut[r].set(j, to);
                } else {
                    evaluated[r].set(j, to);
                }
                j = to;
            }
            trim(r, from, end);
        }
    }

    private boolean shutOffCredit(int r, int j, int to, int from, int end) {
        double seconds = work.timeS[to - 1] - work.timeS[j];
        boolean atEdge = j == from || to == end;
        if (atEdge && seconds < EDGE_S) {
            return true;
        }
        if (commandLogged && commandedOff(r, j, to)) {
            return true;
        }
        // Where commands are logged, the shape of a headland shows in them.
        boolean headland = !commandLogged && atEdge && seconds < HEADLAND_S && !betweenDelivering(r, j, to);
        if (headland && comesBack(r, j == from ? j - 1 : to, j == from ? -1 : 1)) {
            return true;
        }
        return covered().share(r, work.step[j], work.endStep[to - 1]) >= COVERED;
    }

    PriorCoverageGrid covered() {
        return covered.get();
    }

    /** True if row r is commanded off, or runs over covered ground, in entry j. */
    public boolean rightlyOff(int r, int j) {
        return (commandLogged && log.on(r, strips.poses().record(work.step[j])) == 0)
                || (!delivers(r, j) && shut[r].get(j) && overCovered(r, j));
    }

    /** True if row r runs over covered ground in entry j. */
    public boolean overCovered(int r, int j) {
        return covered().share(r, work.step[j], work.endStep[j]) >= COVERED;
    }

    private boolean commandedOff(int r, int j, int to) {
        int off = 0;
        for (int i = j; i < to; i++) {
            off += log.on(r, strips.poses().record(work.step[i])) == 0 ? 1 : 0;
        }
        return 2 * off >= to - j;
    }

    /** True if both neighbors of row r deliver in most entries from j to to (exclusive): a field's edge shuts rows off from one side on. */
    private boolean betweenDelivering(int r, int j, int to) {
        if (r == 0 || r == work.rows() - 1) {
            return false;
        }
        int on = 0;
        for (int i = j; i < to; i++) {
            on += delivers(r - 1, i) && delivers(r + 1, i) ? 1 : 0;
        }
        return 2 * on > to - j;
    }

    /** True where the row delivers again within the next (or did in the previous) half minute of work. */
    private boolean comesBack(int r, int start, int way) {
        double worked = 0;
        for (int j = start; j >= 0 && j < work.n && worked < HEADLAND_S; j += way) {
            if (delivers(r, j)) {
                return true;
            }
            worked += work.durationS[j];
        }
        return false;
    }

    /** Takes the valve's time off both ends of every evaluated stretch of a pass. */
    private void trim(int r, int from, int end) {
        int a = evaluated[r].nextSetBit(from);
        while (a >= 0 && a < end) {
            int b = Math.min(end, evaluated[r].nextClearBit(a));
            int low = a;
            while (low < b && work.timeS[low] < work.timeS[a] + settlingS) {
                low++;
            }
            int high = b;
            while (high > low && work.timeS[high - 1] > work.timeS[b - 1] - settlingS) {
                high--;
            }
            evaluated[r].clear(a, low);
            evaluated[r].clear(high, b);
            a = evaluated[r].nextSetBit(b);
        }
    }
}
