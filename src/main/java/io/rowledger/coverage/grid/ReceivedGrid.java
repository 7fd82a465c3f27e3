package io.rowledger.coverage.grid;

/**
 * Received volume, target volume and covered area by grid cell; each strip's volume is distributed by exact area.
 *
 * <p>Cell (col, row) covers east [east0 + col·cell, +cell], north [north0 + row·cell, +cell]; its index is row·cols +
 * col.
 *
 * @param east0M west edge, m in the job's plane
 * @param north0M south edge, m
 * @param cellM side of a cell, m
 * @param cols cells eastward
 * @param rows cells northward
 * @param coveredM2 covered area in the cell, m²
 * @param volumeL per product, volume received in the cell, L
 * @param targetL per product, target × covered area in the cell, L; NaN in cells without a target
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
