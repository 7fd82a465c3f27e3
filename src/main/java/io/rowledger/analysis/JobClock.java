package io.rowledger.analysis;

import java.time.ZoneId;

/**
 * The clock that a job's times are printed by: the rig file's zone, or, where it names none, whole hours from UTC by the sun at
 * the field. In UTC an evening's work in America would be dated on the next day.
 */
public final class JobClock {
    /** The sun moves 15 degrees of longitude an hour. */
    private static final double DEG_PER_HOUR = 15;

    /** The zones of whole hours in the time zone data base; browsers know them too. Their sign is opposite: west is plus. */
    private static final String WHOLE_HOURS = "Etc/GMT";

    private JobClock() {}

    /** The zone of this job's printed times. */
    public static ZoneId zone(Analysis a) {
        if (a.rig().job().fact("zone").isPresent()) {
            return a.rig().job().zone();
        }
        double[] originDeg = new double[2];
        a.track().plane().inverse(0, 0, originDeg);
        return bySun(originDeg[1]);
    }

    /** The zone of whole hours nearest to the sun's time at a longitude, degrees: {@code Etc/GMT+6} for -93. */
    public static ZoneId bySun(double lonDeg) {
        int hours = (int) Math.round(lonDeg / DEG_PER_HOUR);
        return ZoneId.of(hours == 0 ? WHOLE_HOURS : WHOLE_HOURS + (hours < 0 ? "+" : "-") + Math.abs(hours));
    }

    /** Whether the zone is one that {@link #bySun} gives. */
    public static boolean isBySun(ZoneId zone) {
        return zone.getId().startsWith(WHOLE_HOURS);
    }
}
