package io.rowledger.log.time;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * GPS week and seconds of the week as UTC. GPS time runs from 1980-01-06T00:00:00 UTC without leap seconds (IS-GPS-200,
 * 3.3.4), so UTC is GPS time less the leap seconds since then:
 *
 * <p>utc = 315964800 + 604800·week + seconds − leap.
 */
final class GpsTimeReader implements TimestampReader {
    private static final double WEEK_S = 604_800;
    /** Weeks after which the ten-bit week number of the navigation message starts over (IS-GPS-200, 20.3.3.3.1.1). */
    private static final int WEEKS_TO_START_OVER = 1024;

    /** Days before which each further second was put in since 1980-01-06, from IERS Bulletin C; none since 2017. */
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
    private final int weeksToAdd;
    private final char mark;
    private double lastSecondsS = Double.NaN;
    private int weeksPassed;
    private int leap;

    private GpsTimeReader(
            LogPreview sample, ColumnPlan.Column seconds, double secondsFactor, int weekIndex, int weeksToAdd) {
        this.weekIndex = weekIndex;
        this.secondsIndex = seconds.index();
        this.secondsFactor = secondsFactor;
        this.fixedWeek = sample.hints().gpsWeek();
        this.weeksToAdd = weeksToAdd;
        this.mark = sample.mark();
    }

    /** A clock for a log with seconds of the week and a week number, or the question for what is missing. */
    static GpsTimeReader of(LogPreview sample) {
        ColumnPlan.Column seconds = sample.plan().timeColumn();
        ColumnPlan.Column week = sample.plan().find(LogQuantity.GPS_WEEK);
        int hint = sample.hints().gpsWeek();
        if (week == null) {
            if (hint == 0) {
                throw sample.found(seconds, "seconds of the GPS week, and no column for the week")
                        .expected("the week, counted from 1980-01-06")
                        .hint("write log: {gps_week: 2418} in the rig file, with the week in which the log starts, or "
                                + "name the column of the week gps_week");
            }
            return new GpsTimeReader(sample, seconds, factor(sample, seconds), -1, 0);
        }
        double first = Double.NaN;
        for (String text : sample.texts(week.index())) {
            first = Double.isNaN(first) ? NumberParser.parse(text, sample.mark()) : first;
        }
        int add = 0;
        if (first >= 0 && first < WEEKS_TO_START_OVER) {
            add = hint - (int) first;
            if (hint == 0 || add % WEEKS_TO_START_OVER != 0) {
                throw startsOver(sample, week, (int) first);
            }
        }
        return new GpsTimeReader(sample, seconds, factor(sample, seconds), week.index(), add);
    }

    private static UnusableInputException startsOver(LogPreview sample, ColumnPlan.Column week, int number) {
        List<String> readings = new ArrayList<>();
        List<String> lines = new ArrayList<>();
        for (int add = WEEKS_TO_START_OVER; add <= 2 * WEEKS_TO_START_OVER; add += WEEKS_TO_START_OVER) {
            readings.add(Instant.ofEpochSecond((long) (EpochRange.FIRST_S + (number + add) * WEEK_S))
                    .atOffset(ZoneOffset.UTC)
                    .toLocalDate()
                    .toString());
            lines.add("log: {gps_week: " + (number + add) + "}");
        }
        return sample.found(
                        week,
                        "the GPS week " + number + ", which starts over every 1024 weeks: it began on "
                                + readings.get(0) + " or on " + readings.get(1))
                .expected("a week counted from 1980-01-06 without starting over")
                .hint("write " + lines.get(0) + " in the rig file for the first, " + lines.get(1) + " for the second");
    }

    /** More than the seconds of a week are milliseconds, where the header does not say. */
    private static double factor(LogPreview sample, ColumnPlan.Column seconds) {
        for (String text : sample.texts(seconds.index())) {
            if (seconds.unit().equals("s") && NumberParser.parse(text, sample.mark()) > WEEK_S + 1) {
                return 1e-3;
            }
        }
        return Double.isNaN(seconds.toSi()) ? 1 : seconds.toSi();
    }

    /** Leap seconds between GPS time and UTC at a GPS time given as seconds since the Unix epoch without any. */
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
                weekIndex < 0 ? fixedWeek + passed(seconds) : NumberParser.parse(fields[weekIndex], mark) + weeksToAdd;
        if (!(seconds >= 0 && seconds <= WEEK_S) || week != Math.rint(week)) {
            return Double.NaN;
        }
        double gpsS = EpochRange.FIRST_S + week * WEEK_S + seconds;
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
    public int withoutZone() {
        return 0;
    }

    @Override
    public List<LogQuantity> helpers() {
        return List.of(LogQuantity.GPS_WEEK, LogQuantity.TIME_OF_WEEK);
    }

    @Override
    public String remark() {
        return "GPS time, leap seconds taken off" + (secondsFactor == 1e-3 ? ", in ms" : "");
    }

    @Override
    public List<String> notes() {
        return List.of(
                String.format(Locale.ROOT, "The times are GPS time; %d leap seconds were taken off to get UTC.", leap));
    }
}
