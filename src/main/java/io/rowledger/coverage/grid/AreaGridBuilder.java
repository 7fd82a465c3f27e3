package io.rowledger.coverage.grid;

import io.rowledger.coverage.grid.StripDeposit.Frame;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/** Builds the {@link ReceivedGrid} of areas with one rate each: every cell gets rate × its part of the area. */
public final class AreaGridBuilder {
    /** Smallest amount in a cell, m² or L; less is rounding of sums. */
    private static final double NOTHING = 1e-9;

    private final Frame frame;
    private final int cols;
    private final int rows;

    /**
     * Lays out a grid over an extent.
     *
     * @param extent box around all areas, m in the job's plane; not null
     * @param minCellM side of a cell, m; twice as long until there are at most {@code maxCells}
     */
    public AreaGridBuilder(Envelope extent, double minCellM, int maxCells) {
        double cellM = minCellM;
        while (cells(extent.getWidth(), cellM) * cells(extent.getHeight(), cellM) > maxCells) {
            cellM *= 2;
        }
        frame = new Frame(
                (Math.floor(extent.getMinX() / cellM) - 1) * cellM,
                (Math.floor(extent.getMinY() / cellM) - 1) * cellM,
                cellM);
        cols = (int) cells(extent.getWidth(), cellM);
        rows = (int) cells(extent.getHeight(), cellM);
    }

    /** Returns the number of cells along a length, with one before, one for the part of a cell, and one behind, at least. */
    private static double cells(double lengthM, double cellM) {
        return Math.floor(lengthM / cellM) + 4;
    }

    /** Returns the amount in each cell, spread evenly over each area: {@code perM2[i]} on {@code areas.get(i)}; NaN is left out. */
    public float[] deposit(List<? extends Geometry> areas, double[] perM2) {
        AreaAccumulator sums = new AreaAccumulator(cols, rows);
        for (int i = 0; i < perM2.length; i++) {
            if (!Double.isNaN(perM2[i])) {
                GroundDeposit.add(areas.get(i), perM2[i], frame, sums);
            }
        }
        float[] out = new float[cols * rows];
        double[] line = new double[cols];
        for (int row = 0; row < rows; row++) {
            sums.readRow(row, line);
            for (int col = 0; col < cols; col++) {
                out[row * cols + col] = Math.abs(line[col]) < NOTHING ? 0 : (float) line[col];
            }
        }
        return out;
    }

    /**
     * Returns the grid.
     *
     * @param covered the covered ground
     * @param areas the areas that were applied
     * @param rateLPerM2 by product, then area, L/m²
     * @param targetLPerM2 by product, then area, L/m²; a cell's target is their mean by area, over the areas that have one
     */
    public ReceivedGrid build(
            Geometry covered, List<? extends Geometry> areas, double[][] rateLPerM2, double[][] targetLPerM2) {
        float[] coveredM2 = deposit(List.of(covered), new double[] {1});
        float[][] volumeL = new float[rateLPerM2.length][];
        float[][] targetL = new float[rateLPerM2.length][];
        for (int p = 0; p < volumeL.length; p++) {
            volumeL[p] = deposit(areas, rateLPerM2[p]);
            targetL[p] = deposit(areas, targetLPerM2[p]);
            double[] one = Arrays.stream(targetLPerM2[p])
                    .map(target -> Double.isNaN(target) ? target : 1)
                    .toArray();
            float[] knownM2 = deposit(areas, one);
            for (int i = 0; i < coveredM2.length; i++) {
                targetL[p][i] =
                        coveredM2[i] == 0 ? 0 : knownM2[i] > 0 ? targetL[p][i] / knownM2[i] * coveredM2[i] : Float.NaN;
            }
        }
        return new ReceivedGrid(
                frame.east0M(), frame.north0M(), frame.cellM(), cols, rows, coveredM2, volumeL, targetL);
    }
}
