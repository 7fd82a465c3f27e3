package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.util.Locale;

/** Checks that hold for positions of every format but GeoJSON, whose reader knows lines and columns. */
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

    /** A line that can be one. */
    double[] line(double[] lonLat, int feature, int line) {
        if (lonLat.length < 2 * MIN_OF_LINE) {
            throw fault("a line of " + lonLat.length / 2 + " position", feature, line)
                    .expected("two or more")
                    .hint("draw the line with two places or more, or make it a point");
        }
        return checked(lonLat, feature, line);
    }

    /** A ring that can be one: closed, of four positions or more. */
    double[] ring(double[] lonLat, int feature, int line) {
        int n = lonLat.length / 2;
        if (n < MIN_OF_RING) {
            throw fault("a ring of " + n + " positions", feature, line)
                    .expected("four or more, the last equal to the first")
                    .hint("draw the outline with three corners or more and close it");
        }
        if (lonLat[0] != lonLat[2 * n - 2] || lonLat[1] != lonLat[2 * n - 1]) {
            throw fault("a ring that does not end where it begins", feature, line)
                    .expected("a last position equal to the first")
                    .hint("close the outline and export the " + use.file() + " again as " + format.words());
        }
        return checked(lonLat, feature, line);
    }

    /** Positions on the earth. */
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
