package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;

/**
 * Latitude and longitude in each other's columns. Away from the poles nothing in the figures themselves tells; but where
 * the log has a course, the path runs along it only if the two are the right way round, and have the right signs: a longitude
 * west of Greenwich without its minus mirrors the path, and the left rows become the right ones.
 */
final class SwappedAxes {
    /** Closer fixes give no direction. */
    private static final double MIN_STEP_M = 0.3;
    /** Fewer steps prove nothing. */
    private static final int MIN_STEPS = 20;
    /** Mean cosine between path and course: below this they disagree, above the other they agree. */
    private static final double DISAGREE = 0.5;

    private static final double AGREE = 0.9;
    /** A course that points one way all along may be a dead column: length of the mean direction. */
    private static final double ONE_WAY = 0.9;

    /** Steps within 30 degrees of a direction tell of its sign. */
    private static final double ALONG = Math.cos(Math.toRadians(30));

    /** Mirrored courses up to 30 degrees off an axis, all alike often as in turns, agree to cos(2c), 0.83 in the mean. */
    private static final double ALONG_AGREE = 0.7;

    private SwappedAxes() {}

    /** Refuses a log whose path follows its course only with latitude and longitude swapped, or one of them mirrored. */
    static void check(FileLog file) {
        double[] course = file.numbers(LogQuantity.COURSE);
        RawLog log = file.log();
        double asWritten = 0;
        double swapped = 0;
        double meanNorth = 0;
        double meanEast = 0;
        int steps = 0;
        Along north = new Along();
        Along east = new Along();
        for (int i = 1; i < Math.min(log.records, course.length); i++) {
            double middleRad = Math.toRadians(log.latDeg[i]);
            double dLatDeg = log.latDeg[i] - log.latDeg[i - 1];
            double dLonDeg = log.lonDeg[i] - log.lonDeg[i - 1];
            double stepM =
                    PositionOutliers.distanceM(log.latDeg[i - 1], log.lonDeg[i - 1], log.latDeg[i], log.lonDeg[i]);
            if (log.gapBefore[i] || stepM < MIN_STEP_M || Double.isNaN(course[i])) {
                continue;
            }
            steps++;
            double agreement = Math.cos(Math.atan2(dLonDeg * Math.cos(middleRad), dLatDeg) - course[i]);
            asWritten += agreement;
            double otherRad = Math.toRadians(log.lonDeg[i]);
            swapped += Math.cos(Math.atan2(dLatDeg * Math.cos(otherRad), dLonDeg) - course[i]);
            double courseNorth = Math.cos(course[i]);
            double courseEast = Math.sin(course[i]);
            meanNorth += courseNorth;
            meanEast += courseEast;
            if (Math.abs(courseNorth) > ALONG) {
                north.add(agreement);
            } else if (Math.abs(courseEast) > ALONG) {
                east.add(agreement);
            }
        }
        if (north.agrees() && east.isReversed()) {
            throw mirror(file, "east and west", "longitude", "west of Greenwich", "lon");
        }
        if (east.agrees() && north.isReversed()) {
            throw mirror(file, "north and south", "latitude", "south of the equator", "lat");
        }
        boolean oneWay = Math.hypot(meanNorth, meanEast) > ONE_WAY * steps;
        if (steps >= MIN_STEPS && !oneWay && asWritten < DISAGREE * steps && swapped > AGREE * steps) {
            throw UnusableInputException.found(
                            "a path that follows the logged course only with latitude and longitude swapped")
                    .inFile(file.name())
                    .atLine(file.plan().headerLine())
                    .expected("latitude in lat and longitude in lon")
                    .hint("swap the names of the two columns; they seem to be swapped");
        }
    }

    /** Steps along one axis: how many, and how well path and course agree on them. */
    private static final class Along {
        private int steps;
        private double cosines;

        private void add(double agreement) {
            steps++;
            cosines += agreement;
        }

        private boolean agrees() {
            return steps >= MIN_STEPS && cosines > ALONG_AGREE * steps;
        }

        private boolean isReversed() {
            return steps >= MIN_STEPS && cosines < -ALONG_AGREE * steps;
        }
    }

    private static UnusableInputException mirror(
            FileLog file, String exchanged, String figure, String where, String column) {
        return UnusableInputException.found(
                        "a path that follows the logged course only with " + exchanged + " exchanged")
                .inFile(file.name())
                .atLine(file.plan().headerLine())
                .expected("a minus sign before a " + figure + " " + where)
                .hint("export the " + figure
                        + " with its sign, or with the hemisphere's letter in the field or in a column " + column
                        + "_side; if the positions are right, take the course column out");
    }
}
