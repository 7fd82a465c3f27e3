package io.rowledger.diagnose.signal;

import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How much of a turn the machine takes out: the share c with which the rows' fluxes follow their own speeds, 1 with turn
 * compensation and 0 without.
 *
 * <p>In a turn a row at y runs at v·(1 − κ·y). Block by block of turning, every row's relative flux is regressed on −κ·y;
 * c is the median of the rows' slopes, so that faulty rows, up to half of them, don't move it.
 */
public final class TurnShares {
    /** Relative difference in speed between bar end and center from which the bar turns (1); or six σ of curvature noise. */
    public static final double MIN_TURN = 0.012;

    /** The turn a block's weight is counted in. */
    private static final double COUNTED_TURN = 0.03;

    private static final double NOISE_SIGMAS = 6;

    /** Relative difference in speed below which the bar runs straight (1): track noise. */
    private static final double STRAIGHT = 0.01;

    /** Relative difference in speed above which the lag of the flow hides the share (1). */
    private static final double MAX_TURN = 0.6;

    /** Turning is taken together until it weighs as much as this many seconds of a turn of {@link #COUNTED_TURN}. */
    private static final double BLOCK = 12;

    /** Records looked at for the rows' levels, and how few are too few. */
    private static final int SAMPLES = 4000;

    private static final int MIN_SAMPLES = 20;
    private static final double MIN_LEVEL = 0.2;

    /** From this resolution on a row's own share says little (1). */
    private static final double COARSE = 0.03;

    /** Shares below the first are taken as 0, above the second as 1. */
    private static final double SNAP_TO_NONE = 0.35;

    private static final double SNAP_TO_FULL = 0.65;

    /**
     * A stretch of turning.
     *
     * @param from first entry
     * @param end one past the last
     * @param share c
     * @param turn mean difference in speed between the bar's middle and its end, as a fraction (rms)
     * @param weight how much turning it rests on: seconds × (speed difference of the rows)²
     */
    public record Block(int from, int end, double share, double turn, double weight) {}

    private final FlowRatios s;
    private final WorkingSamples work;
    private final double leastPerM;
    private final double usualMps;

    private final double[] level;

    private TurnShares(FlowRatios s) {
        this.s = s;
        this.work = s.work;
        leastPerM = Math.max(MIN_TURN / work.halfWidthM, NOISE_SIGMAS * work.curvatureNoisePerM);
        usualMps = work.usualSpeedMps();
        level = levels();
    }

    /**
     * Each row's usual flux over the bar's middle, so that a row that always runs high does not pass for a turn: from
     * straight ground, or as the mean of left and right turns; 1 where the bar only ever turned one way.
     */
    private double[] levels() {
        double[][] sides = {levels(0), levels(-1), levels(1)};
        double[] levels = new double[s.rows()];
        for (int r = 0; r < levels.length; r++) {
            double turning = (sides[1][r] + sides[2][r]) / 2;
            double level = Double.isNaN(sides[0][r]) ? turning : sides[0][r];
            levels[r] = level > MIN_LEVEL ? level : 1;
        }
        return levels;
    }

    /** Levels from straight ground (0), left (-1) or right turns (1), from some of the records; NaN for too few. */
    private double[] levels(int way) {
        int stride = Math.max(1, work.n / SAMPLES);
        double[][] values = new double[s.rows()][work.n / stride + 1];
        int[] counts = new int[s.rows()];
        double[] flux = new double[s.rows()];
        for (int j = 0; j < work.n; j += stride) {
            double turn = work.curvaturePerM[j];
            int side = Math.abs(turn) <= leastPerM ? 0 : turn > 0 ? 1 : -1;
            if (side != way || Math.abs(turn) * work.halfWidthM > MAX_TURN) {
                continue;
            }
            int count = 0;
            for (int r = 0; r < s.rows(); r++) {
                if (s.records(r).get(j)) {
                    flux[count++] = s.flowLPerS[r][j] / work.bandM[r];
                }
            }
            double middle = RobustStatistics.median(flux, count);
            for (int r = 0; r < s.rows() && count >= FlowRatios.MIN_PEERS && middle > 0; r++) {
                if (s.records(r).get(j)) {
                    values[r][counts[r]++] = s.flowLPerS[r][j] / work.bandM[r] / middle;
                }
            }
        }
        double[] levels = new double[s.rows()];
        for (int r = 0; r < levels.length; r++) {
            levels[r] = counts[r] < MIN_SAMPLES ? Double.NaN : RobustStatistics.median(values[r], counts[r]);
        }
        return levels;
    }

    /** Estimates the shares and writes them into the ratios; returns the blocks they rest on. */
    public static List<Block> fill(FlowRatios s) {
        TurnShares shares = new TurnShares(s);
        List<Block> blocks = shares.blocks();
        shares.write(blocks);
        return blocks;
    }

    boolean turns(int j) {
        double turn = Math.abs(work.curvaturePerM[j]);
        // Noise of a position makes a curvature that grows with the inverse square of the distance driven.
        double slow = Math.max(1, usualMps / Math.max(1e-3, work.speedMps[j]));
        return !work.restarting[j] && turn > leastPerM * slow * slow && turn * work.halfWidthM < MAX_TURN;
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        double squares = 0;
        double seconds = 0;
        int from = -1;
        double full = BLOCK * COUNTED_TURN * COUNTED_TURN;
        double[] sums = new double[s.rows()];
        double[] weights = new double[s.rows()];
        double[] flux = new double[s.rows()];
        for (int j = 0; j < work.n; j++) {
            if (!turns(j) || !add(j, flux, sums, weights)) {
                continue;
            }
            from = from < 0 ? j : from;
            double turn = work.curvaturePerM[j] * work.halfWidthM;
            squares += turn * turn * work.durationS[j];
            seconds += work.durationS[j];
            if (squares >= full) {
                blocks.add(new Block(from, j + 1, share(sums, weights), Math.sqrt(squares / seconds), squares));
                from = -1;
                squares = 0;
                seconds = 0;
                Arrays.fill(sums, 0);
                Arrays.fill(weights, 0);
            }
        }
        if (from >= 0 && squares > full / 4) {
            blocks.add(new Block(from, work.n, share(sums, weights), Math.sqrt(squares / seconds), squares));
        }
        return blocks;
    }

    /** Adds a record to every row's regression of flux on place; false where too few rows deliver. */
    private boolean add(int j, double[] flux, double[] sums, double[] weights) {
        int count = 0;
        for (int r = 0; r < s.rows(); r++) {
            if (s.records(r).get(j)) {
                flux[count++] = s.flowLPerS[r][j] / work.bandM[r] / level[r];
            }
        }
        // Rows lie evenly on both sides of the middle, so the median flux is the middle's whatever the share is.
        double middle = RobustStatistics.median(flux, count);
        if (count < FlowRatios.MIN_PEERS || !(middle > 0)) {
            return false;
        }
        for (int r = 0; r < s.rows(); r++) {
            double turn = -work.curvaturePerM[j] * work.atM[r];
            if (s.records(r).get(j) && 4 * Math.abs(work.atM[r]) > work.halfWidthM) {
                double off = s.flowLPerS[r][j] / work.bandM[r] / level[r] / middle - 1;
                sums[r] += turn * Math.max(-1, Math.min(1, off));
                weights[r] += turn * turn;
            }
        }
        return true;
    }

    /**
     * Median over rows of each row's own least-squares share. Rounded readings step: single rows then show all of a turn or
     * none of it, and only their sums show how much.
     */
    private double share(double[] sums, double[] weights) {
        if (s.limits.resolution() > COARSE) {
            double sum = Arrays.stream(sums).sum();
            double weight = Arrays.stream(weights).sum();
            return weight > 0 ? sum / weight : 1;
        }
        double[] shares = new double[sums.length];
        int n = 0;
        for (int r = 0; r < sums.length; r++) {
            if (weights[r] > 0) {
                shares[n++] = sums[r] / weights[r];
            }
        }
        return n == 0 ? 1 : RobustStatistics.median(shares, n);
    }

    /** Blocks near 0 or 1 are taken as 0 or 1; between blocks the nearer one holds; without any, 0: noise. */
    private void write(List<Block> blocks) {
        int block = 0;
        for (int j = 0; j < work.n; j++) {
            while (block + 1 < blocks.size() && 2 * j >= blocks.get(block).end + blocks.get(block + 1).from) {
                block++;
            }
            s.turnShare[j] = blocks.isEmpty() || !curves(j) ? 0 : (float) smoothed(blocks, block);
        }
    }

    private boolean curves(int j) {
        return Math.abs(work.curvaturePerM[j]) * work.halfWidthM > STRAIGHT;
    }

    /** Median of a block and its neighbors, snapped. */
    private static double smoothed(List<Block> blocks, int at) {
        double[] near = blocks.subList(Math.max(0, at - 2), Math.min(blocks.size(), at + 3)).stream()
                .mapToDouble(Block::share)
                .toArray();
        double share = RobustStatistics.median(near, near.length);
        return share < SNAP_TO_NONE ? 0 : share > SNAP_TO_FULL ? 1 : share;
    }
}
