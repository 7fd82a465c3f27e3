package io.rowledger.report.common;

import io.rowledger.log.LogTable;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;

/**
 * When the work was done: from the start of the first pass to the end of the last one; without a pass, the span of the log.
 *
 * @param startS epoch seconds; NaN for an empty log
 * @param endS epoch seconds; NaN for an empty log
 * @param zoneAssumed true if the log's times have no zone and were taken as UTC
 */
public record JobTimes(double startS, double endS, boolean zoneAssumed) {
    /** The hour at which a day without times stands; {@link ReportHeaders#when} prints such days without it. */
    static final int NOON_H = 12;

    /**
     * The times of a job. Of a log that has only days they are noon of the first and of the last one.
     *
     * @param zone zone of the printed times
     */
    public static JobTimes of(Track track, LogTable log, ZoneId zone) {
        List<LocalDate> days = log.days();
        if (!days.isEmpty()) {
            return new JobTimes(noonS(days.get(0), zone), noonS(days.get(1), zone), false);
        }
        List<Pass> passes = track.passes();
        if (!passes.isEmpty()) {
            return new JobTimes(
                    passes.get(0).startS(), passes.get(passes.size() - 1).endS(), log.isZoneAssumed());
        }
        int records = log.records();
        return records == 0
                ? new JobTimes(Double.NaN, Double.NaN, false)
                : new JobTimes(log.timeS(0), log.timeS(records - 1), log.isZoneAssumed());
    }

    private static double noonS(LocalDate day, ZoneId zone) {
        return day.atTime(NOON_H, 0).atZone(zone).toEpochSecond();
    }

    /** Returns true for a time that stands for a whole day. */
    static boolean isDay(double epochS, ZoneId zone) {
        LocalTime time =
                Instant.ofEpochSecond((long) Math.floor(epochS)).atZone(zone).toLocalTime();
        return epochS == Math.rint(epochS) && time.equals(LocalTime.NOON);
    }
}
