package io.rowledger.diagnose;

import java.util.ArrayList;
import java.util.List;

/**
 * How much of a turn the machine takes out: the share c with which the rows' fluxes follow their own speeds, 1 with turn
 * compensation and 0 without.
 *
 * <p>In a turn a row at y runs at v·(1 − κ·y). The slope of flux over y is the median of the slopes of pairs of rows on
 * either side of the bar's middle, so that a few faulty rows don't move it (after H. Theil, A rank-invariant method of
 * linear and polynomial regression analysis, 1950, and P. K. Sen, J. Am. Stat. Assoc. 63, 1968, 1379-1389), and c the
 * least-squares share of −κ in it, block by block of turning.
 */
final class TurnShares {
    /** Rows must differ by this share in speed, or by this many σ of the track's own noise, before a turn is a turn. */
    static final double LEAST_TURN = 0.03;

    private static final double NOISE_SIGMAS = 5;

    /** In tighter corners the flow's lag hides the share. */
    private static final double LARGEST_TURN = 0.6;

    /** Turning is taken together until it weighs as much as this many seconds of a turn of {@link #LEAST_TURN}. */
    private static final double BLOCK = 12;

    /** Between these the machine does something of its own; beyond them it either compensates or doesn't. */
    private static final double LITTLE = 0.35;

    private static final double MUCH = 0.65;

    /**
     * A stretch of turning.
     *
     * @param from first entry
     * @param end one past the last
     * @param share c
     * @param weight how much turning it rests on: seconds × (speed difference of the rows)²
     */
    record Block(int from, int end, double share, double weight) {}

    private final Signals s;
    private final Work work;
    private final double leastPerM;

    private TurnShares(Signals s) {
        this.s = s;
        this.work = s.work;
        leastPerM = Math.max(LEAST_TURN / work.halfWidthM, NOISE_SIGMAS * work.curvatureNoisePerM);
    }

    /** Estimates the shares and writes them into the signals; returns the blocks they rest on. */
    static List<Block> fill(Signals s) {
        TurnShares shares = new TurnShares(s);
        List<Block> blocks = shares.blocks();
        shares.write(blocks);
        return blocks;
    }

    boolean turns(int j) {
        double turn = Math.abs(work.curvaturePerM[j]);
        return turn > leastPerM && turn * work.halfWidthM < LARGEST_TURN;
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        double slopes = 0;
        double squares = 0;
        int from = -1;
        double full = BLOCK * LEAST_TURN * LEAST_TURN;
        double[] pairs = new double[s.rows() / 2 + 1];
        for (int j = 0; j < work.n; j++) {
            if (!turns(j)) {
                continue;
            }
            double slope = slope(j, pairs);
            if (Double.isNaN(slope)) {
                continue;
            }
            from = from < 0 ? j : from;
            double turn = work.curvaturePerM[j] * work.halfWidthM;
            slopes += -slope * work.halfWidthM * turn * work.durationS[j];
            squares += turn * turn * work.durationS[j];
            if (squares >= full) {
                blocks.add(new Block(from, j + 1, slopes / squares, squares));
                from = -1;
                slopes = 0;
                squares = 0;
            }
        }
        if (from >= 0 && squares > full / 4) {
            blocks.add(new Block(from, work.n, slopes / squares, squares));
        }
        return blocks;
    }

    /** Slope of relative flux over y, 1/m; NaN where too few pairs deliver. */
    private double slope(int j, double[] pairs) {
        int rows = s.rows();
        int count = 0;
        for (int r = 0; r < rows / 2; r++) {
            int other = rows - 1 - r;
            double apart = work.atM[other] - work.atM[r];
            if (3 * apart < 2 * work.halfWidthM
                    || !s.judged.records(r).get(j)
                    || !s.judged.records(other).get(j)) {
                continue;
            }
            double left = s.flowLPerS[r][j] / work.bandM[r];
            double right = s.flowLPerS[other][j] / work.bandM[other];
            if (left > 0 && right > 0) {
                pairs[count++] = (right - left) / ((right + left) / 2) / apart;
            }
        }
        return count < 2 ? Double.NaN : Robust.median(pairs, count);
    }

    /** Blocks near 0 or 1 are taken as 0 or 1; between blocks the nearer one holds; without any, 1. */
    private void write(List<Block> blocks) {
        int block = 0;
        for (int j = 0; j < work.n; j++) {
            while (block + 1 < blocks.size()
                    && Math.abs(blocks.get(block + 1).from - j) < Math.abs(j - blocks.get(block).end)
                    && j >= blocks.get(block).end) {
                block++;
            }
            double share = blocks.isEmpty() ? 1 : smoothed(blocks, block);
            s.turnShare[j] = turnsAtAll(j) ? (float) share : 0;
        }
    }

    private boolean turnsAtAll(int j) {
        return Math.abs(work.curvaturePerM[j]) > leastPerM;
    }

    /** Median of a block and its neighbours, snapped. */
    private static double smoothed(List<Block> blocks, int at) {
        double[] near = blocks.subList(Math.max(0, at - 2), Math.min(blocks.size(), at + 3)).stream()
                .mapToDouble(Block::share)
                .toArray();
        double share = Robust.median(near, near.length);
        return share < LITTLE ? 0 : share > MUCH ? 1 : share;
    }
}
