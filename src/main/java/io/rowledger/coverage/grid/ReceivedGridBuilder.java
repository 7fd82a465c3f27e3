package io.rowledger.coverage.grid;

import io.rowledger.coverage.grid.StripDeposit.Frame;
import io.rowledger.coverage.strips.RowRuns;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Builds the {@link ReceivedGrid}. */
public final class ReceivedGridBuilder {
    /** Smallest amount in a cell, m² or L; less is rounding of sums. */
    private static final double NOTHING = 1e-9;
    /** Number of parts that steps are summed in, whatever the threads, so that the order of additions is fixed. */
    private static final int PARTS = 2;

    private static final int BANDS = 8;

    private final Strips strips;
    private final Poses poses;
    private final Delivery delivery;
    private final int threads;
    private final Frame frame;
    private final int cols;
    private final int rows;

    /**
     * Lays out a grid over all ground that any row passed over while working.
     *
     * @param minCellM side of a cell, m; twice as long until there are at most {@code maxCells}
     */
    public ReceivedGridBuilder(
            Strips strips, Delivery delivery, Geometry covered, double minCellM, int maxCells, int threads) {
        this.strips = strips;
        this.poses = strips.poses();
        this.delivery = delivery;
        this.threads = threads;
        Envelope extent = extent(covered);
        double cellM = minCellM;
        while (cells(extent.getMinX(), extent.getMaxX(), cellM) * cells(extent.getMinY(), extent.getMaxY(), cellM)
                > maxCells) {
            cellM *= 2;
        }
        this.frame = new Frame(first(extent.getMinX(), cellM), first(extent.getMinY(), cellM), cellM);
        this.cols = (int) cells(extent.getMinX(), extent.getMaxX(), cellM);
        this.rows = (int) cells(extent.getMinY(), extent.getMaxY(), cellM);
    }

    /** Returns the bounding box of the covered ground and all working strips. */
    private Envelope extent(Geometry covered) {
        Envelope extent = new Envelope(covered.getEnvelopeInternal());
        double left = strips.rows() == 0 ? 0 : RowRuns.leftmost(strips);
        double right = strips.rows() == 0 ? 0 : RowRuns.rightmost(strips);
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.working(k)) {
                for (int i = k; i <= k + 1; i++) {
                    extent.expandToInclude(poses.eastM(i, left), poses.northM(i, left));
                    extent.expandToInclude(poses.eastM(i, right), poses.northM(i, right));
                }
            }
        }
        return extent.isNull() ? new Envelope(0, 0, 0, 0) : extent;
    }

    /** Returns the grid line one cell left of the smallest coordinate, m. */
    private static double first(double minM, double cellM) {
        return (Math.floor(minM / cellM) - 1) * cellM;
    }

    private static double cells(double minM, double maxM, double cellM) {
        return Math.floor(maxM / cellM) - Math.floor(minM / cellM) + 3;
    }

    /**
     * Returns the grid.
     *
     * @param covered the covered ground
     */
    public ReceivedGrid build(Geometry covered) {
        float[] coveredM2 = new float[cols * rows];
        AreaAccumulator ground = new AreaAccumulator(cols, rows);
        GroundDeposit.add(covered, frame, ground);
        read(new AreaAccumulator[] {ground}, coveredM2);
        int products = delivery.products();
        float[][] volumeL = new float[products][];
        float[][] targetL = new float[products][];
        for (int p = 0; p < products; p++) {
            int product = p;
            volumeL[p] = new float[cols * rows];
            read(deposit((r, k, areaM2) -> delivery.flowLPerS(product, r, k) * poses.durationS(k)), volumeL[p]);
            targetL[p] = target(p, coveredM2);
        }
        return new ReceivedGrid(
                frame.east0M(), frame.north0M(), frame.cellM(), cols, rows, coveredM2, volumeL, targetL);
    }

    private AreaAccumulator[] deposit(StripDeposit.Amount amount) {
        int steps = poses.steps();
        return ParallelTasks.map(PARTS, threads, part -> {
                    AreaAccumulator grid = new AreaAccumulator(cols, rows);
                    int from = (int) ((long) steps * part / PARTS);
                    int to = (int) ((long) steps * (part + 1) / PARTS);
                    new StripDeposit(strips, frame, grid).deposit(from, to, amount);
                    return grid;
                })
                .toArray(new AreaAccumulator[0]);
    }

    private void read(AreaAccumulator[] parts, float[] out) {
        ParallelTasks.map(BANDS, threads, band -> {
            double[] line = new double[cols];
            for (int row = rows * band / BANDS; row < rows * (band + 1) / BANDS; row++) {
                if (parts.length == 1) {
                    parts[0].readRow(row, line);
                } else {
                    parts[0].readRow(row, parts[1], line);
                }
                for (int col = 0; col < cols; col++) {
                    out[row * cols + col] = Math.abs(line[col]) < NOTHING ? 0 : (float) line[col];
                }
            }
            return band;
        });
    }

    /**
     * Returns target × covered area per cell, L. If the target varies, a cell's target is the area-weighted mean over
     * the visits in the cell.
     */
    private float[] target(int p, float[] coveredM2) {
        float[] out = new float[coveredM2.length];
        if (delivery.products() > 0 && oneTarget(p)) {
            double targetLPerM2 = firstTarget(p);
            if (Double.isNaN(targetLPerM2)) {
                Arrays.fill(out, Float.NaN);
            } else {
                for (int i = 0; i < out.length; i++) {
                    out[i] = (float) (targetLPerM2 * coveredM2[i]);
                }
            }
            return out;
        }
        float[] targetSumL = new float[out.length];
        float[] knownM2 = new float[out.length];
        read(
                deposit((r, k, areaM2) -> known(p, r, k, areaM2) ? delivery.targetLPerM2(p, r, k) * areaM2 : 0),
                targetSumL);
        read(deposit((r, k, areaM2) -> known(p, r, k, areaM2) ? areaM2 : 0), knownM2);
        for (int i = 0; i < out.length; i++) {
            out[i] = coveredM2[i] == 0 ? 0 : knownM2[i] > 0 ? targetSumL[i] / knownM2[i] * coveredM2[i] : Float.NaN;
        }
        return out;
    }

    private boolean known(int p, int r, int k, double areaM2) {
        return areaM2 > 0 && delivery.delivering(r, k) && !Double.isNaN(delivery.targetLPerM2(p, r, k));
    }

    private double firstTarget(int p) {
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.working(k)) {
                return delivery.targetLPerM2(p, 0, k);
            }
        }
        return Double.NaN;
    }

    private boolean oneTarget(int p) {
        double first = firstTarget(p);
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.working(k)
                    && (Double.compare(delivery.targetLPerM2(p, 0, k), first) != 0 || delivery.targetsDiffer(p, k))) {
                return false;
            }
        }
        return true;
    }
}
