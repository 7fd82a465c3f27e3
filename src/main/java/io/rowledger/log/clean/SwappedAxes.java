package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;

/**
 * Detects swapped or mirrored axes from the logged course: the path follows it only with the axes in order and with the
 * right signs. A longitude west of Greenwich without its minus sign mirrors the path and swaps left and right rows.
 */
final class SwappedAxes {
    /** Shortest step with a direction, m. */
    private static final double MIN_STEP_M = 0.3;
    /** Fewest steps for a decision. */
    private static final int MIN_STEPS = 20;
    /** Mean cosine between path and course below which they disagree. */
    private static final double DISAGREE = 0.5;

    private static final double AGREE = 0.9;
    /** Mean resultant length from which the course is constant and may be a dead column. */
    private static final double ONE_WAY = 0.9;

    /** Cosine of the largest angle to an axis at which a step counts for that axis: 30 degrees. */
    private static final double ALONG = Math.cos(Math.toRadians(30));

    /** Mirrored courses up to 30 degrees off an axis, all equivalentOrders often as in turns, agree to cos(2c), 0.83 in the mean. */
    private static final double ALONG_AGREE = 0.7;

    private SwappedAxes() {}

    /** Throws if the path follows the course only with the axes swapped or one of them mirrored. */
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

    /** Steps along one axis and the sum of the cosines between path and course. */
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
                        "a path that follows the logged course only with " + exchanged + " reversed")
                .inFile(file.name())
                .atLine(file.plan().headerLine())
                .expected("a minus sign before a " + figure + " " + where)
                .hint("export the " + figure
                        + " with its sign, or with the hemisphere's letter in the field or in a column " + column
                        + "_side; if the positions are right, take the course column out");
    }
}
