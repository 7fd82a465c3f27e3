package io.rowledger.log.clean;

import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.units.Factor;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Holds the logged speed and course against the path the positions make. The path wins: a speed that disagrees is taken as
 * unknown, and where another unit explains it, the message says which.
 */
final class SpeedCourseCheck {
    /** Both are compared over this long: fix noise of a dm is then a tenth of a walking pace. */
    private static final double WINDOW_S = 1;
    /** Slower windows say little, m/s. */
    private static final double MIN_MPS = 1;
    /** Fewer windows prove nothing. */
    private static final int MIN_WINDOWS = 20;
    /** More tell no more: every n-th is looked at. */
    private static final int ENOUGH_WINDOWS = 20_000;
    /** A speed this much off the path's is no rounding, and more than a wheel slips on firm ground. */
    private static final double SPEED_SHARE = 0.10;
    /** A ratio this near another unit's is that unit; mph and knots differ by 15 %. */
    private static final double UNIT_SHARE = 0.04;
    /** A course this far off is another direction; crabbing on a side slope stays below, common practice, no source. */
    private static final double COURSE_RAD = Math.toRadians(20);
    /** Length of the mean direction from which the differences are one and the same. */
    private static final double ONE_DIFFERENCE = 0.8;

    /** Speeds a log may be in, m/s of one. */
    private static final Map<String, Double> UNITS = new LinkedHashMap<>();

    static {
        UNITS.put("mph", Factor.METRES_PER_SECOND_PER_MPH);
        UNITS.put("km/h", Factor.METRES_PER_SECOND_PER_KMH);
        UNITS.put("m/s", 1.0);
        UNITS.put("kn", Factor.METRES_PER_SECOND_PER_KNOT);
    }

    private final FileLog file;
    private final RawLog log;
    private final int stride;

    private SpeedCourseCheck(FileLog file) {
        this.file = file;
        this.log = file.log();
        this.stride = Math.max(1, log.records / ENOUGH_WINDOWS);
    }

    static void check(FileLog file) {
        SpeedCourseCheck agreement = new SpeedCourseCheck(file);
        for (int k = 0; k < file.reader().numberColumns().size(); k++) {
            ColumnPlan.Column column = file.reader().numberColumns().get(k);
            if (column.role().measured() == LogQuantity.SPEED) {
                agreement.speed(column, file.log().numbers[k]);
            } else if (column.role().measured() == LogQuantity.COURSE) {
                agreement.course(column, file.log().numbers[k]);
            }
        }
    }

    private void speed(ColumnPlan.Column column, double[] speedMps) {
        double[] ratio = new double[log.records];
        int windows = 0;
        for (int i = 0; i < log.records; i += stride) {
            int end = end(i);
            double pathMps = end < 0 ? Double.NaN : pathMps(i, end);
            double loggedMps = end < 0 ? Double.NaN : mean(speedMps, i, end);
            if (pathMps > MIN_MPS && !Double.isNaN(loggedMps)) {
                ratio[windows++] = loggedMps / pathMps;
            }
        }
        if (windows < MIN_WINDOWS) {
            return;
        }
        Arrays.sort(ratio, 0, windows);
        double middle = ratio[windows / 2];
        if (Math.abs(middle - 1) <= SPEED_SHARE) {
            return;
        }
        Arrays.fill(speedMps, Double.NaN);
        String disagrees = String.format(
                Locale.ROOT,
                "The speed in column %s of %s is %.2f times what the path shows",
                column.header(),
                file.name(),
                middle);
        String unit = unit(column.toSi() / middle);
        file.notes()
                .add(
                        unit.isEmpty()
                                ? disagrees
                                        + ": no unit explains that. It was taken as unknown, and the path's own speed counts."
                                : disagrees + ": it was read as " + column.unit() + ", but the figures are " + unit
                                        + ". It was taken as unknown, and the path's own speed counts; columns: {\"speed["
                                        + unit + "]\": \"" + column.header() + "\"} in the rig file sets it right.");
    }

    /** The unit worth so much, or nothing. */
    private static String unit(double toSi) {
        for (Map.Entry<String, Double> unit : UNITS.entrySet()) {
            if (Math.abs(toSi / unit.getValue() - 1) <= UNIT_SHARE) {
                return unit.getKey();
            }
        }
        return "";
    }

    private void course(ColumnPlan.Column column, double[] courseRad) {
        double[] off = new double[log.records];
        double east = 0;
        double north = 0;
        int windows = 0;
        for (int i = 0; i < log.records; i += stride) {
            int end = end(i);
            if (end < 0 || !(pathMps(i, end) > MIN_MPS)) {
                continue;
            }
            double differenceRad = Math.IEEEremainder(courseRad[(i + end) / 2] - pathRad(i, end), 2 * Math.PI);
            if (!Double.isNaN(differenceRad)) {
                off[windows++] = Math.abs(differenceRad);
                east += Math.sin(differenceRad);
                north += Math.cos(differenceRad);
            }
        }
        if (windows < MIN_WINDOWS) {
            return;
        }
        Arrays.sort(off, 0, windows);
        if (off[windows / 2] <= COURSE_RAD) {
            return;
        }
        Arrays.fill(courseRad, Double.NaN);
        boolean turned = Math.hypot(east, north) > ONE_DIFFERENCE * windows;
        file.notes()
                .add(String.format(
                        Locale.ROOT,
                        "The course in column %s of %s %s: it was taken as unknown, and the path's own direction counts.",
                        column.header(),
                        file.name(),
                        turned
                                ? String.format(
                                        Locale.ROOT,
                                        "is turned by %.0f degrees against the path",
                                        Math.toDegrees(Math.atan2(east, north)))
                                : String.format(
                                        Locale.ROOT,
                                        "does not follow the path, by %.0f degrees in half of the places",
                                        Math.toDegrees(off[windows / 2]))));
    }

    /** The record a window after this one, −1 where the path is broken before it or the log is silent. */
    private int end(int i) {
        int end = i + 1;
        while (end < log.records && log.timeS[end] - log.timeS[i] < WINDOW_S - 1e-3) {
            if (log.gapBefore[end]) {
                return -1;
            }
            end++;
        }
        boolean whole = end < log.records && !log.gapBefore[end] && log.timeS[end] - log.timeS[i] <= 2 * WINDOW_S;
        return whole ? end : -1;
    }

    private double pathMps(int i, int end) {
        return PositionOutliers.distanceM(log.latDeg[i], log.lonDeg[i], log.latDeg[end], log.lonDeg[end])
                / (log.timeS[end] - log.timeS[i]);
    }

    private double pathRad(int i, int end) {
        double east = (log.lonDeg[end] - log.lonDeg[i]) * Math.cos(Math.toRadians(log.latDeg[i]));
        return Math.atan2(east, log.latDeg[end] - log.latDeg[i]);
    }

    private static double mean(double[] column, int from, int to) {
        double sum = 0;
        for (int i = from; i <= to; i++) {
            sum += column[i];
        }
        return sum / (to - from + 1);
    }
}
