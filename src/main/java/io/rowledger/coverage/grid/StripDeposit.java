package io.rowledger.coverage.grid;

import io.rowledger.coverage.strips.RowRuns;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Accumulates every row's amount in every working step by grid cell, over the quadrangle that its band sweeps.
 *
 * <p>Adjacent rows share an edge and successive steps share a bar line, so each such edge is added once, with the
 * difference of the weights on its two sides. Areas are signed, and so are weights: a row that goes backward has a
 * reversed outline and a negative area, which gives a positive amount.
 *
 * <p>If one end of a band goes forward and the other backward, the quadrangle folds at the pivot. It is divided there,
 * and each part receives the share of the amount of its width.
 *
 * <p>Measured by {@code CoverageBenchmark.gridDeposit}: about 3.5 million row steps for 64 ha. Arrays are reused
 * between steps.
 */
public final class StripDeposit {
    /** Amount of a row in a step. */
    interface Amount {
        /** Returns the amount of outlet r (from 0) in step k, which swept this signed area, m². */
        double of(int r, int k, double areaM2);
    }

    /** South-west corner of the grid and side of a cell, m. */
    public record Frame(double east0M, double north0M, double cellM) {}

    /** Area below which an amount is added at a point, m²: a square millimeter. */
    private static final double POINT_M2 = 1e-6;
    /** Distance that both ends of the bar must advance so that no pivot lies on it, m. */
    private static final double ADVANCE_M = 1e-4;

    private final Poses poses;
    private final Frame frame;
    private final AreaAccumulator grid;
    /** Distinct edges of the bands, ascending, m right of the bar's center. */
    private final double[] edgeM;
    /** Row r covers the intervals lowest[r] to highest[r] − 1 between the edges. */
    private final int[] lowest;

    private final int[] highest;

    private double[] backX;
    private double[] backY;
    private double[] frontX;
    private double[] frontY;
    private double[] backWeight;
    private double[] weight;

    StripDeposit(Strips strips, Frame frame, AreaAccumulator grid) {
        this.poses = strips.poses();
        this.frame = frame;
        this.grid = grid;
        int rows = strips.rows();
        double[] all = new double[2 * rows];
        for (int r = 0; r < rows; r++) {
            all[2 * r] = strips.leftM(r);
            all[2 * r + 1] = strips.rightM(r);
        }
        this.edgeM = Arrays.stream(all).sorted().distinct().toArray();
        this.lowest = new int[rows];
        this.highest = new int[rows];
        for (int r = 0; r < rows; r++) {
            lowest[r] = Arrays.binarySearch(edgeM, strips.leftM(r));
            highest[r] = Arrays.binarySearch(edgeM, strips.rightM(r));
        }
        int n = edgeM.length;
        this.backX = new double[n];
        this.backY = new double[n];
        this.frontX = new double[n];
        this.frontY = new double[n];
        this.backWeight = new double[n];
        this.weight = new double[n];
    }

    /** Adds the working steps of [from, to). */
    void deposit(int from, int to, Amount amount) {
        boolean open = false;
        for (int k = from; k < to; k++) {
            if (!poses.working(k)) {
                if (open) {
                    line(backWeight, null);
                }
                open = false;
                continue;
            }
            if (!open) {
                corners(k, backX, backY);
                Arrays.fill(backWeight, 0);
            }
            open = true;
            corners(k + 1, frontX, frontY);
            weights(k, amount);
            line(backWeight, weight);
            sides();
            advance();
        }
        if (open) {
            line(backWeight, null);
        }
    }

    private void corners(int pose, double[] x, double[] y) {
        double perCell = 1 / frame.cellM();
        for (int j = 0; j < edgeM.length; j++) {
            x[j] = (poses.eastM(pose, edgeM[j]) - frame.east0M()) * perCell;
            y[j] = (poses.northM(pose, edgeM[j]) - frame.north0M()) * perCell;
        }
    }

    private void weights(int k, Amount amount) {
        Arrays.fill(weight, 0);
        int last = edgeM.length - 1;
        boolean advances = advanceM(k, 0) > ADVANCE_M && advanceM(k, last) > ADVANCE_M;
        double cellM2 = frame.cellM() * frame.cellM();
        for (int r = 0; r < lowest.length; r++) {
            int a = lowest[r];
            int b = highest[r];
            double areaCells = signedArea(a, b);
            double amountHere = amount.of(r, k, areaCells * cellM2);
            if (amountHere == 0) {
                continue;
            }
            if (advances || (sameWay(k, a, b) && Math.abs(areaCells) * cellM2 > POINT_M2)) {
                double w = amountHere / areaCells;
                for (int j = a; j < b; j++) {
                    weight[j] += w;
                }
            } else {
                folded(k, a, b, amountHere);
            }
        }
    }

    /** Returns the distance that edge j moves along the bar's heading in step k, m. */
    private double advanceM(int k, int j) {
        return RowRuns.forwardM(poses, k, edgeM[j]);
    }

    private boolean sameWay(int k, int a, int b) {
        double da = advanceM(k, a);
        double db = advanceM(k, b);
        return Math.min(da, db) > ADVANCE_M || Math.max(da, db) < -ADVANCE_M;
    }

    /** Returns half the cross product of the diagonals, in cells, positive clockwise. */
    private double signedArea(int a, int b) {
        return 0.5
                * ((frontX[b] - backX[a]) * (frontY[a] - backY[b]) - (frontY[b] - backY[a]) * (frontX[a] - backX[b]));
    }

    private void folded(int k, int a, int b, double amountHere) {
        double da = advanceM(k, a);
        double db = advanceM(k, b);
        double t = da * db < 0 ? da / (da - db) : 1;
        double mx0 = backX[a] + t * (backX[b] - backX[a]);
        double my0 = backY[a] + t * (backY[b] - backY[a]);
        double mx1 = frontX[a] + t * (frontX[b] - frontX[a]);
        double my1 = frontY[a] + t * (frontY[b] - frontY[a]);
        quad(
                new double[] {backX[a], frontX[a], mx1, mx0},
                new double[] {backY[a], frontY[a], my1, my0},
                amountHere * t);
        if (t < 1) {
            double[] x = {mx0, mx1, frontX[b], backX[b]};
            double[] y = {my0, my1, frontY[b], backY[b]};
            quad(x, y, amountHere * (1 - t));
        }
    }

    private void quad(double[] x, double[] y, double amountHere) {
        double area = 0.5 * ((x[2] - x[0]) * (y[1] - y[3]) - (y[2] - y[0]) * (x[1] - x[3]));
        if (Math.abs(area) * frame.cellM() * frame.cellM() <= POINT_M2) {
            grid.point((x[0] + x[1] + x[2] + x[3]) / 4, (y[0] + y[1] + y[2] + y[3]) / 4, amountHere);
            return;
        }
        for (int i = 0; i < 4; i++) {
            int next = (i + 1) % 4;
            grid.edge(x[i], y[i], x[next], y[next], amountHere / area);
        }
    }

    /** Adds the bar line at the back: end of the step behind it, start of the step ahead of it. */
    private void line(double[] behind, double @Nullable [] ahead) {
        for (int j = 0; j + 1 < edgeM.length; j++) {
            double w = ahead == null ? behind[j] : behind[j] - ahead[j];
            if (w != 0) {
                grid.edge(backX[j], backY[j], backX[j + 1], backY[j + 1], w);
            }
        }
    }

    private void sides() {
        double left = 0;
        for (int j = 0; j < edgeM.length; j++) {
            double w = weight[j] - left;
            if (w != 0) {
                grid.edge(backX[j], backY[j], frontX[j], frontY[j], w);
            }
            left = weight[j];
        }
    }

    private void advance() {
        double[] x = backX;
        double[] y = backY;
        double[] w = backWeight;
        backX = frontX;
        backY = frontY;
        backWeight = weight;
        frontX = x;
        frontY = y;
        weight = w;
    }
}
