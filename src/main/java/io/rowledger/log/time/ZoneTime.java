package io.rowledger.log.time;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;

/**
 * Converts local times of one zone to UTC. In an overlap (clocks set back) the records before decide: the earlier offset
 * while time runs on, the later one once the clock has run back. Throws if no record comes before.
 */
final class ZoneTime {
    /** Offsets change only at multiples of a quarter hour (IANA time zone database, all zones since 1980), s. */
    private static final int STEADY_S = 900;
    /** Longest step that still decides an overlap, s. */
    private static final double MAX_CONTINUATION_S = 600;

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

    /** Returns the number of records in an overlap. */
    int twice() {
        return twice;
    }

    /** Returns seconds since the epoch; NaN for a local time in a gap (clocks set forward). */
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
        boolean first = Math.abs(firstS - lastUtcS) <= MAX_CONTINUATION_S;
        boolean second = Math.abs(secondS - lastUtcS) <= MAX_CONTINUATION_S;
        if (first == second) {
            throw ask(firstS, secondS, line);
        }
        return first ? firstS : secondS;
    }

    private UnusableInputException ask(double firstS, double secondS, int line) {
        String one = offsets.get(0).getId();
        String two = offsets.get(1).getId();
        return UnusableInputException.found("a local time in the hour that repeats in " + zone.getId()
                        + " when the clocks are set back: it is " + iso(firstS) + " or " + iso(secondS))
                .kind(RefusalKind.ZONE)
                .inFile(file)
                .atLine(line)
                .atColumn(header)
                .expected("records before it that decide, or an offset from UTC")
                .hint("write log: {zone: \"" + one + "\"} in the rig file if it is the first, log: {zone: \"" + two
                        + "\"} if it is the second");
    }

    private UnusableInputException leftOut(double localS, int line) {
        return UnusableInputException.found("the local time "
                        + LocalDateTime.ofEpochSecond((long) Math.floor(localS), 0, ZoneOffset.UTC)
                        + ", which " + zone.getId() + " skipped: the clocks were set forward over it")
                .kind(RefusalKind.ZONE)
                .inFile(file)
                .atLine(line)
                .atColumn(header)
                .expected("times of that zone")
                .hint("write the zone or the offset from UTC of the logger's clock, such as log: {zone: UTC} or "
                        + "log: {zone: \"-06:00\"}");
    }

    private static String iso(double utcS) {
        return Instant.ofEpochSecond(Math.round(utcS)).toString();
    }
}
