package io.rowledger.diagnose.signal;

import io.rowledger.stats.MaxSumRange;
import org.jspecify.annotations.Nullable;

/**
 * Whose place, or whose command where one is logged, each row's shut-off follows. Where rows shut off by themselves over ground covered before, a row is off while
 * its own place is covered and on while it is bare; a row whose command is crossed with another's does so by the other's
 * place: it is on over covered ground and off over bare ground wherever the two places differ.
 *
 * <p>Only records in which some rows are on and others off are looked at, so a job without point rows, slanted headlands
 * or overlaps costs one look at each record.
 */
public final class ShutOffPlaces {
    /** Both probes of a record must lie on covered ground, or neither, for a place to be known. */
    private static final double KNOWN = 0.01;

    /** A row slower than this share of the bar stays on ground it has just covered itself: the inside of a corner. */
    private static final double MIN_SPEED_SHARE = 0.6;

    /** Valves and the covered ground's half meters differ by parts of a second at an edge: less says nothing, s. */
    private static final double MIN_S = 8;

    /** In a single pass a driver may have shut rows by hand. */
    private static final int MIN_PASSES = 2;

    private static final double MIN_IN_A_PASS_S = 1;

    /** Crossed rows do what their own place asks, or neither place, only at edges. */
    private static final double OTHERWISE = 0.4;

    private final Evidence e;
    private final int rows;

    /** Per pass, null without mixed records; [row · rows + other], s: both rows did what only the other's place asks. */
    private final double[] @Nullable [] followsS;

    /** The row did what only its own place asks. */
    private final double[] @Nullable [] ownS;

    /** The row did what neither asks, or what the other's place asks while that row did not, as a plugged row or a stuck meter does. */
    private final double[] @Nullable [] neitherS;

    /** Per row, s: off over covered ground and on over covered ground, over the job. */
    private final double[] offCoveredS;

    private final double[] onCoveredS;

    /**
     * Two rows crossed.
     *
     * @param a from 0
     * @param b from 0, above a
     * @param passes from 0
     * @param crossedS time in which a row did what only the other's place asked, both rows' together
     * @param otherwiseS time in which a row did what its own place asked, or neither
     */
    public record Crossed(int a, int b, MaxSumRange passes, double crossedS, double otherwiseS) {}

    public ShutOffPlaces(Evidence e) {
        this.e = e;
        rows = e.rows();
        followsS = new double[e.work.passes()][];
        ownS = new double[e.work.passes()][];
        neitherS = new double[e.work.passes()][];
        offCoveredS = new double[rows];
        onCoveredS = new double[rows];
        boolean[] on = new boolean[rows];
        for (int j = 0; j < e.work.n; j++) {
            int count = 0;
            for (int r = 0; r < rows; r++) {
                on[r] = e.delivery.delivering(r, e.work.step[j]);
                count += on[r] ? 1 : 0;
            }
            if (count > 0 && count < rows) {
                add(j, on);
            }
        }
    }

    private void add(int j, boolean[] on) {
        int q = e.work.pass[j] - 1;
        if (followsS[q] == null) {
            followsS[q] = new double[rows * rows];
            ownS[q] = new double[rows * rows];
            neitherS[q] = new double[rows * rows];
        }
        boolean[] known = new boolean[rows];
        boolean[] bare = new boolean[rows];
        double seconds = e.work.durationS[j];
        for (int r = 0; r < rows; r++) {
            if (e.limits.commandLogged()) {
                // What a row should do is known from its command.
                bare[r] = !e.offByCommand(r, j);
                known[r] = true;
            } else {
                double share = e.ratios.evaluated.covered().share(r, e.work.step[j], e.work.endStep[j]);
                bare[r] = share < KNOWN;
                boolean forward = e.ratios.rowSpeedShare(r, j) > MIN_SPEED_SHARE;
                known[r] = forward && (bare[r] || share > 1 - KNOWN);
            }
            if (known[r] && !bare[r]) {
                onCoveredS[r] += on[r] ? seconds : 0;
                offCoveredS[r] += on[r] ? 0 : seconds;
            }
        }
        for (int a = 0; a < rows; a++) {
            for (int b = 0; b < rows; b++) {
                if (known[a] && known[b] && a != b && (bare[a] != bare[b] || on[a] != bare[a])) {
                    // Crossed rows change places at once: one that is off by itself follows nobody.
                    boolean both = on[a] == bare[b] && on[b] == bare[a];
                    boolean own = bare[a] != bare[b] && on[a] == bare[a];
                    double[][] which = bare[a] != bare[b] && both ? followsS : own ? ownS : neitherS;
                    which[q][a * rows + b] += seconds;
                }
            }
        }
    }

    private double sum(double[][] seconds, int row, int other, int from, int end) {
        double sum = 0;
        for (int q = from; q < end; q++) {
            sum += seconds[q] == null ? 0 : seconds[q][row * rows + other];
        }
        return sum;
    }

    private double otherwiseS(int row, int other, int from, int end) {
        return sum(ownS, row, other, from, end) + sum(neitherS, row, other, from, end);
    }

    /** The pair where each follows the other's place, or null. */
    @Nullable
    public Crossed crossed(int a, int b) {
        double[] gains = new double[followsS.length];
        for (int q = 0; q < gains.length; q++) {
            gains[q] = sum(followsS, a, b, q, q + 1)
                    + sum(followsS, b, a, q, q + 1)
                    - otherwiseS(a, b, q, q + 1)
                    - otherwiseS(b, a, q, q + 1);
        }
        MaxSumRange range = MaxSumRange.of(gains);
        int seen = 0;
        for (int q = range.from(); q < range.end(); q++) {
            seen += gains[q] >= MIN_IN_A_PASS_S ? 1 : 0;
        }
        if (seen < MIN_PASSES || !follows(a, b, range) || !follows(b, a, range) || !peersShutOff(a, b)) {
            return null;
        }
        double crossed =
                sum(followsS, a, b, range.from(), range.end()) + sum(followsS, b, a, range.from(), range.end());
        double otherwise = otherwiseS(a, b, range.from(), range.end()) + otherwiseS(b, a, range.from(), range.end());
        return new Crossed(a, b, range.widened(gains, MIN_IN_A_PASS_S), crossed, otherwise);
    }

    private boolean follows(int row, int other, MaxSumRange range) {
        double follows = sum(followsS, row, other, range.from(), range.end());
        return follows >= MIN_S && otherwiseS(row, other, range.from(), range.end()) <= OTHERWISE * follows;
    }

    /** True where the other rows do shut off over covered ground, or go by their commands: else there is nothing to follow. */
    private boolean peersShutOff(int a, int b) {
        double on = 0;
        double off = 0;
        for (int r = 0; r < rows; r++) {
            on += r == a || r == b ? 0 : onCoveredS[r];
            off += r == a || r == b ? 0 : offCoveredS[r];
        }
        return off > on || (e.limits.commandLogged() && on == 0);
    }
}
