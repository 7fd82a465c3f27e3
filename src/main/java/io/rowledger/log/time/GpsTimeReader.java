package io.rowledger.log.time;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import io.rowledger.text.Message;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

/**
 * GPS week and seconds of the week as UTC. GPS time runs from 1980-01-06T00:00:00 UTC without leap seconds (IS-GPS-200,
 * 3.3.4), so UTC is GPS time less the leap seconds since then:
 *
 * <p>utc = 315964800 + 604800·week + seconds − leap.
 */
final class GpsTimeReader implements TimestampReader {
    private static final double WEEK_S = 604_800;
    /** Rollover of the ten-bit week number of the navigation message (IS-GPS-200, 20.3.3.3.1.1). */
    private static final int WEEK_ROLLOVER = 1024;

    /** Days that begin right after a leap second, since 1980-01-06 (IERS Bulletin C); none since 2017. */
    private static final List<String> LEAPS = List.of(
            "1981-07-01",
            "1982-07-01",
            "1983-07-01",
            "1985-07-01",
            "1988-01-01",
            "1990-01-01",
            "1991-01-01",
            "1992-07-01",
            "1993-07-01",
            "1994-07-01",
            "1996-01-01",
            "1997-07-01",
            "1999-01-01",
            "2006-01-01",
            "2009-01-01",
            "2012-07-01",
            "2015-07-01",
            "2017-01-01");

    private static final double[] LEAP_UTC_S = LEAPS.stream()
            .mapToDouble(day -> Instant.parse(day + "T00:00:00Z").getEpochSecond())
            .toArray();

    private final int weekIndex;
    private final int secondsIndex;
    private final double secondsFactor;
    private final int fixedWeek;
    private final int weekOffset;
    private final char mark;
    private double lastSecondsS = Double.NaN;
    private int weeksPassed;
    private int leap;

    private GpsTimeReader(
            LogPreview preview, ColumnPlan.Column seconds, double secondsFactor, int weekIndex, int weekOffset) {
        this.weekIndex = weekIndex;
        this.secondsIndex = seconds.index();
        this.secondsFactor = secondsFactor;
        this.fixedWeek = preview.hints().gpsWeek();
        this.weekOffset = weekOffset;
        this.mark = preview.mark();
    }

    /** Returns a reader for seconds of the week and a week number; throws if the week is missing or ambiguous. */
    static GpsTimeReader of(LogPreview preview) {
        ColumnPlan.Column seconds = preview.plan().timeColumn();
        ColumnPlan.Column week = preview.plan().find(LogQuantity.GPS_WEEK);
        int hint = preview.hints().gpsWeek();
        if (week == null) {
            if (hint == 0) {
                throw preview.found(seconds, "seconds of the GPS week, and no column for the week")
                        .kind(RefusalKind.GPS_WEEK)
                        .expected("the week, counted from 1980-01-06")
                        .hint("write log: {gps_week: 2418} in the rig file, with the week in which the log starts, or "
                                + "name the column of the week gps_week");
            }
            return new GpsTimeReader(preview, seconds, factor(preview, seconds), -1, 0);
        }
        double first = Double.NaN;
        for (String text : preview.texts(week.index())) {
            first = Double.isNaN(first) ? NumberParser.parse(text, preview.mark()) : first;
        }
        int add = 0;
        if (first >= 0 && first < WEEK_ROLLOVER) {
            add = hint - (int) first;
            if (hint == 0 || add % WEEK_ROLLOVER != 0) {
                throw weekRollover(preview, week, (int) first);
            }
        }
        return new GpsTimeReader(preview, seconds, factor(preview, seconds), week.index(), add);
    }

    private static UnusableInputException weekRollover(LogPreview preview, ColumnPlan.Column week, int number) {
        List<String> readings = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        for (int add = WEEK_ROLLOVER; add <= 2 * WEEK_ROLLOVER; add += WEEK_ROLLOVER) {
            readings.add(Instant.ofEpochSecond((long) (EpochRange.MIN_S + (number + add) * WEEK_S))
                    .atOffset(ZoneOffset.UTC)
                    .toLocalDate()
                    .toString());
            lines.add("log: {gps_week: " + (number + add) + "}");
        }
        return preview.found(
                        week,
                        "the GPS week " + number + ", which repeats every 1024 weeks: it began on " + readings.get(0)
                                + " or on " + readings.get(1))
                .kind(RefusalKind.GPS_WEEK)
                .expected("a week counted from 1980-01-06 without rollover")
                .hint("write " + lines.get(0) + " in the rig file for the first, " + lines.get(1) + " for the second");
    }

    /** Returns the factor to seconds; values beyond a week are milliseconds if the header names no unit. */
    private static double factor(LogPreview preview, ColumnPlan.Column seconds) {
        for (String text : preview.texts(seconds.index())) {
            if (seconds.unit().equals("s") && NumberParser.parse(text, preview.mark()) > WEEK_S + 1) {
                return 1e-3;
            }
        }
        return Double.isNaN(seconds.toSi()) ? 1 : seconds.toSi();
    }

    /** Returns GPS − UTC, s, at a GPS time given as seconds since the Unix epoch without leap seconds. */
    static int leapS(double gpsS) {
        int leap = 0;
        while (leap < LEAP_UTC_S.length && gpsS - (leap + 1) >= LEAP_UTC_S[leap]) {
            leap++;
        }
        return leap;
    }

    @Override
    public double read(String[] fields, int line) {
        double seconds = NumberParser.parse(fields[secondsIndex], mark) * secondsFactor;
        double week =
                weekIndex < 0 ? fixedWeek + passed(seconds) : NumberParser.parse(fields[weekIndex], mark) + weekOffset;
        if (!(seconds >= 0 && seconds <= WEEK_S) || week != Math.rint(week)) {
            return Double.NaN;
        }
        double gpsS = EpochRange.MIN_S + week * WEEK_S + seconds;
        leap = leapS(gpsS);
        return gpsS - leap;
    }

    private int passed(double seconds) {
        if (seconds < lastSecondsS - WEEK_S / 2) {
            weeksPassed++;
        }
        lastSecondsS = Double.isNaN(seconds) ? lastSecondsS : seconds;
        return weeksPassed;
    }

    @Override
    public int zonelessTimes() {
        return 0;
    }

    @Override
    public List<LogQuantity> helpers() {
        return List.of(LogQuantity.GPS_WEEK, LogQuantity.TIME_OF_WEEK);
    }

    @Override
    public List<Message> remarks() {
        Message gps = Message.of("notes.column.gps");
        return secondsFactor == 1e-3 ? List.of(gps, Message.of("notes.column.milliseconds")) : List.of(gps);
    }

    @Override
    public List<Message> notes() {
        return List.of(Message.of("notes.log.gpsTime", leap));
    }
}
