package io.rowledger.coverage.grid;

/**
 * What each cell of the ground received: every strip's volume shared out by exact area.
 *
 * <p>Cell (col, row) covers east [east0 + col·cell, +cell], north [north0 + row·cell, +cell]; index row·cols + col.
 *
 * @param east0M west edge, m in the job's plane
 * @param north0M south edge, m
 * @param cellM side of a cell, m
 * @param cols cells eastward
 * @param rows cells northward
 * @param coveredM2 covered area in the cell, m²
 * @param volumeL per product, volume put into the cell, L
 * @param targetL per product, target × covered area in the cell, L; NaN cells where there is no target
 */
public record ReceivedGrid(
        double east0M,
        double north0M,
        double cellM,
        int cols,
        int rows,
        float[] coveredM2,
        float[][] volumeL,
        float[][] targetL) {}
