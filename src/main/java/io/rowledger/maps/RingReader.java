package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.util.Locale;

/**
 * Checks lines, rings and positions of a map file. GeoJSON has checks of its own, which know line and column of each
 * position.
 */
final class RingReader {
    /** A closed ring has four positions or more. */
    private static final int MIN_OF_RING = 4;
    /** A line has two positions or more. */
    private static final int MIN_OF_LINE = 2;

    private final String file;
    private final MapUse use;
    private final MapFormat format;

    RingReader(String file, MapUse use, MapFormat format) {
        this.file = file;
        this.use = use;
        this.format = format;
    }

    /** Returns the line.
     *
     * @throws UnusableInputException if it has fewer than two positions, or one off the earth
     */
    double[] line(double[] lonLat, int feature, int line) {
        if (lonLat.length < 2 * MIN_OF_LINE) {
            throw fault("a line of " + lonLat.length / 2 + " position", feature, line)
                    .expected("two or more")
                    .hint("draw the line with two places or more, or make it a point");
        }
        return checked(lonLat, feature, line);
    }

    /** Returns the ring.
     *
     * @throws UnusableInputException if it is open, has fewer than four positions, or one off the earth
     */
    double[] ring(double[] lonLat, int feature, int line) {
        int n = lonLat.length / 2;
        if (n < MIN_OF_RING) {
            throw fault("a ring of " + n + " positions", feature, line)
                    .expected("four or more, the last equal to the first")
                    .hint("draw the outline with three corners or more and close it");
        }
        if (lonLat[0] != lonLat[2 * n - 2] || lonLat[1] != lonLat[2 * n - 1]) {
            throw fault("an open ring: its last position differs from its first", feature, line)
                    .expected("a last position equal to the first")
                    .hint("close the outline and export the " + use.file() + " again as " + format.words());
        }
        return checked(lonLat, feature, line);
    }

    /** Returns the positions.
     *
     * @throws UnusableInputException if a longitude is beyond 180 degrees or a latitude beyond 90
     */
    double[] checked(double[] lonLat, int feature, int line) {
        for (int i = 0; i < lonLat.length; i += 2) {
            double lon = lonLat[i];
            double lat = lonLat[i + 1];
            if (!(Math.abs(lon) <= 180) || !(Math.abs(lat) <= 90)) {
                boolean swapped = Math.abs(lon) <= 90 && Math.abs(lat) <= 180;
                throw fault(String.format(Locale.ROOT, "longitude %s, latitude %s", lon, lat), feature, line)
                        .expected("longitude and latitude in degrees, within 180 and 90")
                        .hint(
                                swapped
                                        ? "the two look swapped: put longitude first"
                                        : "export the " + use.file()
                                                + " in degrees on WGS 84, or with the coordinate system it is in");
            }
        }
        return lonLat;
    }

    /** A message about a feature. */
    UnusableInputException fault(String found, int feature, int line) {
        return UnusableInputException.found(found + " (feature " + feature + ")")
                .inFile(file)
                .atLine(line);
    }
}
