package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;

/**
 * Latitude and longitude in each other's columns. Away from the poles nothing in the figures themselves tells; but where
 * the log has a course, the path runs along it only if the two are the right way round.
 */
final class SwappedAxes {
    /** Closer fixes give no direction. */
    private static final double LEAST_STEP_M = 0.3;
    /** Fewer steps prove nothing. */
    private static final int LEAST_STEPS = 20;
    /** Mean cosine between path and course: below this they disagree, above the other they agree. */
    private static final double DISAGREE = 0.5;

    private static final double AGREE = 0.9;
    /** A course that points one way all along may be a dead column: length of the mean direction. */
    private static final double ONE_WAY = 0.9;

    private SwappedAxes() {}

    /** Refuses a log whose path follows its course only with latitude and longitude swapped. */
    static void check(FileLog file) {
        double[] course = file.numbers(Measured.COURSE);
        RawLog log = file.log();
        double asWritten = 0;
        double swapped = 0;
        double meanNorth = 0;
        double meanEast = 0;
        int steps = 0;
        for (int i = 1; i < Math.min(log.records, course.length); i++) {
            double middleRad = Math.toRadians(log.latDeg[i]);
            double dLatDeg = log.latDeg[i] - log.latDeg[i - 1];
            double dLonDeg = log.lonDeg[i] - log.lonDeg[i - 1];
            double stepM = Jumps.distanceM(log.latDeg[i - 1], log.lonDeg[i - 1], log.latDeg[i], log.lonDeg[i]);
            if (log.gapBefore[i] || stepM < LEAST_STEP_M || Double.isNaN(course[i])) {
                continue;
            }
            steps++;
            asWritten += Math.cos(Math.atan2(dLonDeg * Math.cos(middleRad), dLatDeg) - course[i]);
            double otherRad = Math.toRadians(log.lonDeg[i]);
            swapped += Math.cos(Math.atan2(dLatDeg * Math.cos(otherRad), dLonDeg) - course[i]);
            meanNorth += Math.cos(course[i]);
            meanEast += Math.sin(course[i]);
        }
        boolean oneWay = Math.hypot(meanNorth, meanEast) > ONE_WAY * steps;
        if (steps >= LEAST_STEPS && !oneWay && asWritten < DISAGREE * steps && swapped > AGREE * steps) {
            throw UnusableInputException.found(
                            "a path that follows the logged course only with latitude and longitude swapped")
                    .inFile(file.name())
                    .atLine(file.plan().headerLine())
                    .expected("latitude in lat and longitude in lon")
                    .mend("swap the names of the two columns; they seem to be swapped");
        }
    }
}
