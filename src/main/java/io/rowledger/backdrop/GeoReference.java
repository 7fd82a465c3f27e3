package io.rowledger.backdrop;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.MapReference;
import java.util.List;

/**
 * Where the pixels of a picture lie: x = a·col + b·row + c and y = d·col + e·row + f, columns and rows counted from the upper
 * left corner of the upper left pixel.
 *
 * @param affine a, b, c, d, e, f
 * @param system what x and y are
 */
record GeoReference(double[] affine, MapReference system) {
    /** Lines of a world file. */
    private static final int WORLD_LINES = 6;
    /** Rounds of the search for the pixel of a place; each gains several digits. */
    private static final int ROUNDS = 12;
    /** Distance from the place at which the search ends, m. */
    private static final double NEAR_M = 1e-4;

    /**
     * The georeference of a world file: a, d, b, e, c, f, a line each, with c and f at the center of the upper left pixel.
     *
     * @param file named in the message
     * @throws UnusableInputException where it doesn't hold six numbers that span a plane
     */
    static GeoReference ofWorldFile(List<String> lines, MapReference system, String file) {
        double[] numbers = new double[WORLD_LINES];
        for (int i = 0; i < WORLD_LINES; i++) {
            String line = i < lines.size() ? lines.get(i).strip() : "";
            numbers[i] = number(line);
            if (!Double.isFinite(numbers[i])) {
                throw UnusableInputException.found(line.isEmpty() ? "no number" : "\"" + line + "\"")
                        .inFile(file)
                        .atLine(i + 1)
                        .expected("six numbers, a line each: the place of the picture (a world file)")
                        .hint("export the picture again with its world file");
            }
        }
        double a = numbers[0];
        double d = numbers[1];
        double b = numbers[2];
        double e = numbers[3];
        return new GeoReference(new double[] {a, b, numbers[4] - (a + b) / 2, d, e, numbers[5] - (d + e) / 2}, system);
    }

    private static double number(String line) {
        try {
            return Double.parseDouble(line);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    /** Returns false where the pixels have no area. */
    boolean spansPlane() {
        double determinant = affine[0] * affine[4] - affine[1] * affine[3];
        return Double.isFinite(determinant)
                && Math.abs(determinant) > 0
                && Double.isFinite(affine[2])
                && Double.isFinite(affine[5]);
    }

    /** East and north of a column and a row in the plane, m; NaN where there is no such place. */
    double[] toPlane(LocalPlane plane, double col, double row) {
        double[] lonLat = system.toLonLat(
                affine[0] * col + affine[1] * row + affine[2], affine[3] * col + affine[4] * row + affine[5]);
        double[] out = {Double.NaN, Double.NaN};
        if (Math.abs(lonLat[1]) <= 90 && Math.abs(lonLat[0]) <= 360) {
            plane.forward(lonLat[1], lonLat[0], out);
        }
        return out;
    }

    /**
     * Column and row of a place in the plane, by Newton's method from a first guess; NaN where it doesn't settle.
     *
     * @param guess column and row to begin with
     */
    double[] toPixel(LocalPlane plane, double eastM, double northM, double[] guess) {
        double col = guess[0];
        double row = guess[1];
        for (int i = 0; i < ROUNDS; i++) {
            double[] at = toPlane(plane, col, row);
            double east = eastM - at[0];
            double north = northM - at[1];
            if (Math.hypot(east, north) < NEAR_M) {
                return new double[] {col, row};
            }
            double[] right = toPlane(plane, col + 1, row);
            double[] down = toPlane(plane, col, row + 1);
            double a = right[0] - at[0];
            double b = down[0] - at[0];
            double d = right[1] - at[1];
            double e = down[1] - at[1];
            double determinant = a * e - b * d;
            col += (e * east - b * north) / determinant;
            row += (a * north - d * east) / determinant;
        }
        return new double[] {Double.NaN, Double.NaN};
    }
}
