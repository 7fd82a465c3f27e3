package io.rowledger.analysis;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;

/**
 * The clock that a job's times are printed by: the rig file's zone, or, where it names none, whole hours from UTC by the sun at
 * the field. In UTC an evening's work in America would be dated on the next day.
 */
public final class JobClock {
    /** The sun moves 15 degrees of longitude an hour. */
    private static final double DEG_PER_HOUR = 15;

    /** The zones of whole hours in the time zone data base; browsers know them too. Their sign is opposite: west is plus. */
    private static final String WHOLE_HOURS = "Etc/GMT";

    private static final double HOURS_PER_DAY = 24;
    private static final double SECONDS_PER_HOUR = 3600;

    /** Largest difference of a zone's standard time from the sun's, h: western China has three. */
    private static final double MAX_OFF_H = 4;

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

    /**
     * Checks that the rig file's zone is one of the place where the log lies: a longitude without its minus sign, or exchanged
     * with the latitude, would leave every figure as it is and name another place.
     *
     * @throws UnusableInputException if the sun's time there is hours off
     */
    static void requireAtPlace(Rig rig, LogTable log) {
        ZoneId zone = rig.job().zone();
        boolean region = zone.getId().contains("/") && !zone.getId().startsWith("Etc/");
        if (rig.job().fact("zone").isEmpty() || !region || log.records() == 0) {
            return;
        }
        double lonDeg = log.lonDeg(0);
        double zoneH = zone.getRules().getStandardOffset(Instant.EPOCH).getTotalSeconds() / SECONDS_PER_HOUR;
        double offH = Math.IEEEremainder(zoneH - lonDeg / DEG_PER_HOUR, HOURS_PER_DAY);
        if (Math.abs(offH) > MAX_OFF_H) {
            throw UnusableInputException.found(String.format(
                            Locale.ROOT,
                            "a field at latitude %.3f, longitude %.3f, far from %s, the zone in the rig file",
                            log.latDeg(0),
                            lonDeg,
                            zone.getId()))
                    .inFile(log.sources().get(0).file())
                    .expected("a zone of that place")
                    .hint(
                            "longitudes west of Greenwich have a minus sign; swap the names of the columns if latitude and "
                                    + "longitude are exchanged; correct zone under job in the rig file if the position is right");
        }
    }

    /** Whether the zone is one that {@link #bySun} gives. */
    public static boolean isBySun(ZoneId zone) {
        return zone.getId().startsWith(WHOLE_HOURS);
    }
}
