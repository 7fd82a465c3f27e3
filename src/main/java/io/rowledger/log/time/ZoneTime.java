package io.rowledger.log.time;

import io.rowledger.finding.UnusableInputException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;

/**
 * Local times of one zone to UTC. The hour that comes twice when clocks are set back is told by what went before: the
 * first of the two while time runs on, the second once the clock has run back. Where nothing went before, it is asked
 * for.
 */
final class ZoneTime {
    /** Offsets change on whole quarters of an hour (IANA time zone data base, all zones since 1980). */
    private static final int STEADY_S = 900;
    /** A record within so long after the one before carries on from it. */
    private static final double CARRIES_ON_S = 600;

    private final ZoneId zone;
    private final String file;
    private final String header;
    private long quarter = Long.MIN_VALUE;
    private List<ZoneOffset> offsets = List.of();
    private double lastUtcS = Double.NaN;
    private int twice;

    ZoneTime(ZoneId zone, String file, String header) {
        this.zone = zone;
        this.file = file;
        this.header = header;
    }

    ZoneId zone() {
        return zone;
    }

    /** Records in an hour that comes twice. */
    int twice() {
        return twice;
    }

    /** Seconds since the epoch of a local time that has no zone; NaN for one the clocks left out. */
    double utcS(double localS, int line) {
        long at = Math.floorDiv((long) Math.floor(localS), STEADY_S);
        if (at != quarter) {
            quarter = at;
            LocalDateTime local = LocalDateTime.ofEpochSecond(at * STEADY_S, 0, ZoneOffset.UTC);
            offsets = List.copyOf(zone.getRules().getValidOffsets(local));
        }
        if (offsets.isEmpty()) {
            if (Double.isNaN(lastUtcS)) {
                throw leftOut(localS, line);
            }
            return Double.NaN;
        }
        double utcS = localS - offsets.get(0).getTotalSeconds();
        if (offsets.size() > 1) {
            utcS = told(utcS, localS - offsets.get(1).getTotalSeconds(), line);
        }
        lastUtcS = utcS;
        return utcS;
    }

    private double told(double firstS, double secondS, int line) {
        twice++;
        boolean first = Math.abs(firstS - lastUtcS) <= CARRIES_ON_S;
        boolean second = Math.abs(secondS - lastUtcS) <= CARRIES_ON_S;
        if (first == second) {
            throw ask(firstS, secondS, line);
        }
        return first ? firstS : secondS;
    }

    private UnusableInputException ask(double firstS, double secondS, int line) {
        String one = offsets.get(0).getId();
        String two = offsets.get(1).getId();
        return UnusableInputException.found("a local time in the hour that comes twice in " + zone.getId()
                        + " when the clocks are set back: it is " + iso(firstS) + " or " + iso(secondS))
                .inFile(file)
                .atLine(line)
                .atColumn(header)
                .expected("a time that can be told from the records before it, or an offset from UTC")
                .hint("write log: {zone: \"" + one + "\"} in the rig file if it is the first, log: {zone: \"" + two
                        + "\"} if it is the second");
    }

    private UnusableInputException leftOut(double localS, int line) {
        return UnusableInputException.found("the local time "
                        + LocalDateTime.ofEpochSecond((long) Math.floor(localS), 0, ZoneOffset.UTC)
                        + ", which " + zone.getId() + " did not have: the clocks were set forward over it")
                .inFile(file)
                .atLine(line)
                .atColumn(header)
                .expected("times of that zone")
                .hint("write the zone or the offset from UTC that the logger's clock kept, such as log: {zone: UTC} or "
                        + "log: {zone: \"-06:00\"}");
    }

    private static String iso(double utcS) {
        return Instant.ofEpochSecond(Math.round(utcS)).toString();
    }
}
