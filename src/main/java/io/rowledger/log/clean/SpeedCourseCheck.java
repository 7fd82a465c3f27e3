package io.rowledger.log.clean;

import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import io.rowledger.units.Factor;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Compares logged speed and course with the path. A speed or course that disagrees becomes unknown; if another unit
 * explains the speed, the note names it.
 */
final class SpeedCourseCheck {
    /** Window of the comparison, s: 0.1 m of fix noise then is 0.1 m/s. */
    private static final double WINDOW_S = 1;
    /** Slowest speed compared, m/s. */
    private static final double MIN_MPS = 1;
    /** Fewest windows for a decision. */
    private static final int MIN_WINDOWS = 20;
    /** Most windows sampled (every n-th). */
    private static final int MAX_SAMPLED_WINDOWS = 20_000;
    /** Relative deviation from which the speed disagrees; larger than rounding and wheel slip on firm ground. */
    private static final double SPEED_SHARE = 0.10;
    /** Tolerance of a unit's ratio; mph and knots differ by 15 %. */
    private static final double UNIT_SHARE = 0.04;
    /** Median deviation from which the course disagrees, rad; crabbing on a slope stays below (common practice, no source). */
    private static final double COURSE_RAD = Math.toRadians(20);
    /** Mean resultant length from which the deviations are one constant rotation. */
    private static final double ONE_DIFFERENCE = 0.8;

    /** Units of speed and their factors to m/s. */
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
        this.stride = Math.max(1, log.records / MAX_SAMPLED_WINDOWS);
    }

    static void check(FileLog file) {
        SpeedCourseCheck agreement = new SpeedCourseCheck(file);
        for (int k = 0; k < file.reader().numberColumns().size(); k++) {
            ColumnPlan.Column column = file.reader().numberColumns().get(k);
            if (column.role().quantity() == LogQuantity.SPEED && !file.plan().isUntimed()) {
                agreement.speed(column, file.log().numbers[k]);
            } else if (column.role().quantity() == LogQuantity.COURSE) {
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
        String unit = unit(column.toSi() / middle);
        file.notes()
                .add(
                        unit.isEmpty()
                                ? Message.of(
                                        "notes.log.speed",
                                        column.header(),
                                        file.shortName(),
                                        Message.decimal(middle, 2))
                                : Message.of(
                                        "notes.log.speedUnit",
                                        column.header(),
                                        file.shortName(),
                                        Message.decimal(middle, 2),
                                        column.unit(),
                                        unit,
                                        "columns: {\"speed[" + unit + "]\": \"" + column.header() + "\"}"));
    }

    /** Returns the unit with this factor to m/s, or empty. */
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
                .add(Message.of(
                        turned ? "notes.log.courseTurned" : "notes.log.course",
                        column.header(),
                        file.shortName(),
                        Message.decimal(Math.toDegrees(turned ? Math.atan2(east, north) : off[windows / 2]), 0)));
    }

    /** Returns the record one window after i; −1 if the path breaks before it or the log is silent. */
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
