package io.rowledger.log.clean;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.FieldFaults;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.source.GroupedNumbers;
import io.rowledger.log.source.NumberParser;
import io.rowledger.log.time.EpochRange;
import io.rowledger.log.time.FileNameZone;
import io.rowledger.units.Dimension;
import java.time.Instant;
import java.util.Locale;
import java.util.regex.Pattern;

/** Checks that refuse a whole file although its records can be read. */
public final class FileChecks {
    /** Share of bad records above which a file is refused. */
    private static final double MOST = 0.5;

    /** Highest latitude of a field, north or south, degrees. */
    private static final double MAX_FIELD_LAT_DEG = 72;

    /** Latest plausible time, 2100-01-01, s since 1970. */
    private static final double MAX_TIME_S = 4_102_444_800.0;

    /** Years are written with four digits (ISO 8601). */
    private static final long MAX_YEAR = 9999;

    /** 2000-01-01 in s since 1970; read as milliseconds such values lie in January 1970. */
    private static final double MIN_EPOCH_S = 946_684_800;

    /** Shortest plausible record interval, s: 200 Hz. */
    private static final double MIN_INTERVAL_S = 0.005;

    /** A time followed by zone letters. */
    private static final Pattern ZONE_LETTERS = Pattern.compile("\\d\\s*[A-Z]{2,4}$");

    private static final double SECONDS_PER_YEAR = 365.2425 * 86_400;

    private FileChecks() {}

    /** Refuses wrong columns, ragged lines and swapped axes. */
    public static void beforeCleaning(FileLog file) {
        FieldFaults faults = file.reader().faults();
        int records = file.reader().records();
        swapped(file, faults, records);
        if (faults.raggedLines() > MOST * records) {
            throw found(
                    file,
                    faults.firstRaggedLine(),
                    faults.firstRaggedFields() + " fields, as in " + faults.raggedLines() + " of " + records
                            + " records",
                    file.plan().headers().size() + " fields as in the header",
                    faults.firstRaggedFields() > file.plan().headers().size()
                            ? "give each column a name in the first line, and export the log with one delimiter throughout and "
                                    + "decimals with a point where that is a comma"
                            : "export the log with one delimiter throughout, and decimals with a point where that is a comma");
        }
        for (ColumnPlan.Column column : file.plan().columns()) {
            int bad = faults.count(column.index());
            boolean optional = column.role().quantity().isOptional();
            if (!optional && bad > MOST * (records - faults.raggedLines())) {
                throw unreadable(file, column, bad, records);
            }
        }
        if (!file.plan().isUntimed()) {
            inTheFuture(file);
            TwelveHours.refuse(file);
            if (file.reader().zonelessTimes() > 0) {
                ColumnPlan.Column time = file.plan().timeColumn();
                FileNameZone.refuse(file.name(), file.plan().headerLine() + 1, time.header());
            }
            secondsUnderASmallerUnit(file);
        }
        if (faults.positionsOutOfRange() > MOST * records) {
            throw found(
                    file,
                    faults.firstOutOfRangeLine(),
                    "a position that is not on the globe, as in " + faults.positionsOutOfRange() + " of " + records
                            + " records",
                    "degrees with decimals, latitude from -90 to 90 and longitude from -180 to 180",
                    "export the positions as decimal degrees, WGS 84");
        }
    }

    /** Refuses files with too few records left. */
    static void afterCleaning(FileLog file) {
        DropReason most = file.drops().most();
        int records = file.reader().records();
        boolean meaningless = (most == DropReason.JUMP || most == DropReason.OUT_OF_ORDER)
                && file.drops().count(most) > MOST * records;
        if (file.log().records >= 2 && !meaningless) {
            return;
        }
        int dropped = file.drops().count(most);
        int line = file.drops().firstLine(most);
        if (dropped == 0) {
            throw found(file, file.plan().headerLine() + 1, "one record", "at least two records", "give the whole log")
                    .kind(RefusalKind.RECORDS);
        }
        String all = dropped == records ? "all " + records : dropped + " of " + records;
        boolean zone = most == DropReason.OUT_OF_ORDER && file.reader().zonelessTimes() > 0;
        throw tooFew(file, most, line, all).kind(zone ? RefusalKind.ZONE : RefusalKind.RECORDS);
    }

    /** Returns the refusal of a file whose records were dropped for one reason; {@code all} says how many of how many. */
    private static UnusableInputException tooFew(FileLog file, DropReason most, int line, String all) {
        return switch (most) {
            case NO_FIX ->
                found(
                        file,
                        line,
                        "no position in " + all + " records: fix 0, or latitude and longitude empty or zero",
                        "records with a position",
                        "check that the receiver was connected, and export the log again");
            case DUPLICATE ->
                found(
                        file,
                        line,
                        "the same time in " + all + " records",
                        "a later time in each record",
                        isRounded(file)
                                ? "a spreadsheet has rounded the times: show the column as a number without exponent and "
                                        + "all its digits, and save again"
                                : "export the log with tenths of a second in the time");
            case OUT_OF_ORDER ->
                found(
                        file,
                        line,
                        "a time that runs backward in " + all + " records",
                        "a later time in each record",
                        "export the log in recording order; if it joins several logs, give them as separate files"
                                + (isTimeOfDay(file)
                                        ? "; if it runs over several days, export it with the date in each line: times of day "
                                                + "alone don't tell them"
                                        : "")
                                + (file.reader().zonelessTimes() > 0
                                        ? "; if the clocks were set back on that day, write log: {zone: America/Chicago} in "
                                                + "the rig file, with your zone; if the times run from 12:59 to 1:00 without AM "
                                                + "and PM, export them in 24 hours"
                                        : ""));
            case JUMP ->
                found(
                        file,
                        line,
                        "positions that jump from record to record, in " + all + " records",
                        "the path of a machine",
                        "check the latitude, longitude and time columns");
            case FROZEN ->
                found(
                        file,
                        line,
                        "a position that never changes while the machine moves, in " + all + " records",
                        "the path of a machine",
                        "check that the receiver was connected, and export the log again");
            default ->
                found(
                        file,
                        line,
                        "no readable record: " + all + " have a needed field that is empty or not a number",
                        "a time, a position and flows in each record",
                        "look at that line in a text editor and export the log again");
        };
    }

    /** Returns true for times such as 08:30:00 without a date. */
    private static boolean isTimeOfDay(FileLog file) {
        return file.plan().find(LogQuantity.DATE) == null
                && file.preview().texts(file.plan().timeColumn().index()).stream()
                        .allMatch(text -> text.matches("\\d{1,2}:\\d{2}.*"));
    }

    /** Returns true for times such as 1.78E+09. */
    private static boolean isRounded(FileLog file) {
        return file.preview().texts(file.plan().timeColumn().index()).stream()
                .anyMatch(text -> text.matches("\\d[.,]\\d+[eE]\\+?\\d+"));
    }

    /** Refuses times after 2100, such as milliseconds under a header in seconds. */
    private static void inTheFuture(FileLog file) {
        RawLog log = file.log();
        int late = 0;
        int first = 0;
        for (int i = log.records - 1; i >= 0; i--) {
            if (log.timeS[i] > MAX_TIME_S) {
                late++;
                first = i;
            }
        }
        if (late > MOST * file.reader().records()) {
            ColumnPlan.Column time = file.plan().timeColumn();
            double figure = log.timeS[first] / (Double.isNaN(time.toSi()) ? 1 : time.toSi());
            double unitS = EpochRange.unitS(figure);
            if (Double.isNaN(time.toSi()) || unitS == 1 || figure * unitS > MAX_TIME_S) {
                // No other unit makes it a day that anybody drove on.
                long year = 1970 + (long) (log.timeS[first] / SECONDS_PER_YEAR);
                throw found(
                                file,
                                log.line[first],
                                year > MAX_YEAR ? "a time after the year " + MAX_YEAR : "a time in the year " + year,
                                "times before the year 2100",
                                "look at that line in a text editor and export the log again")
                        .atColumn(time.header());
            }
            String unit = unitS == 1e-3 ? "ms" : unitS == 1e-6 ? "us" : "ns";
            throw found(
                            file,
                            log.line[first],
                            String.format(
                                    Locale.ROOT,
                                    "%.0f, which is a day in the year %d in %s, and %s in %s",
                                    figure,
                                    1970 + (long) (log.timeS[first] / SECONDS_PER_YEAR),
                                    time.unit(),
                                    Instant.ofEpochSecond((long) (figure * unitS)),
                                    unit),
                            "times before the year 2100",
                            "write columns: {\"time[" + unit + "]\": \"" + time.header()
                                    + "\"} in the rig file, or name the column epoch_" + unit)
                    .atColumn(time.header());
        }
    }

    /** Refuses seconds since 1970 under a header in milliseconds: the whole job would last seconds. */
    private static void secondsUnderASmallerUnit(FileLog file) {
        RawLog log = file.log();
        ColumnPlan.Column time = file.plan().timeColumn();
        double unitS = time.toSi();
        if (time.role().quantity() != LogQuantity.TIME || !(unitS < 1) || log.records == 0) {
            return;
        }
        double figure = log.timeS[0] / unitS;
        double last = log.timeS[log.records - 1] / unitS;
        double intervalS = log.intervalS();
        boolean tooFast = intervalS > 0 && intervalS < MIN_INTERVAL_S;
        if (!tooFast || figure < MIN_EPOCH_S || figure > MAX_TIME_S || last > MAX_TIME_S) {
            return;
        }
        throw found(
                        file,
                        log.line[0],
                        String.format(
                                Locale.ROOT,
                                "%.0f, which is %s if it counts %s, and %s if it counts seconds since 1970",
                                figure,
                                Instant.ofEpochSecond((long) log.timeS[0]),
                                time.unit(),
                                Instant.ofEpochSecond((long) figure)),
                        "the unit the figures are in",
                        "write columns: {\"time[s]\": \"" + time.header()
                                + "\"} in the rig file if they are seconds, or name the column epoch_s")
                .atColumn(time.header());
    }

    private static UnusableInputException unreadable(FileLog file, ColumnPlan.Column column, int bad, int records) {
        FieldFaults faults = file.reader().faults();
        String text = faults.firstText(column.index());
        String found =
                (text.isEmpty() ? "nothing" : "\"" + text + "\"") + ", as in " + bad + " of " + records + " records";
        String expected = "a number";
        RefusalKind kind = RefusalKind.VALUES;
        String hint = "export the column as plain numbers, or rename it if it is something else";
        switch (column.role().quantity()) {
            case TIME -> {
                expected = "ISO 8601 with zone such as 2026-05-14T10:00:00Z, or seconds since 1970 in a column epoch_s";
                boolean letters = ZONE_LETTERS.matcher(text).find();
                boolean number = !Double.isNaN(NumberParser.parse(text, file.mark()));
                kind = letters && !number ? RefusalKind.ZONE : RefusalKind.VALUES;
                hint = !number
                        ? letters
                                ? "letters such as BST stand for several zones: take them out and write log: {zone: "
                                        + "America/Chicago} in the rig file, with your zone"
                                : "export the time as ISO 8601, year first"
                        : "name the column epoch_s if it counts seconds since 1970, time[s] if it counts them from "
                                + "another start";
            }
            case LAT, LON -> {
                expected = "degrees with decimals such as 41.732615";
                hint = "export the positions as decimal degrees, WGS 84, with a minus sign for south and west";
            }
            case DOWN, ON -> {
                expected = "1 or 0, true or false, on or off";
                hint = "export the state in one of these ways, or rename the column if it is something else";
            }
            case FIX -> {
                expected = "an NMEA 0183 quality digit: 0 none, 1 autonomous, 2 differential, 4 RTK fixed, 5 RTK float";
                hint = "export the digit, or rename the column if it is something else";
            }
            default -> {
                Dimension dimension = column.role().quantity().dimension();
                if (dimension != null) {
                    expected = "a number in " + column.unit();
                }
                if (GroupedNumbers.isAmbiguous(text)) {
                    found += ", where the decimals of this file follow a " + (file.mark() == '.' ? "point" : "comma")
                            + ": thousands set apart, or decimals of another kind";
                    hint = "export the column without marks between thousands, and all decimals with one mark";
                }
            }
        }
        return found(file, faults.firstLine(column.index()), found, expected, hint)
                .atColumn(column.header())
                .kind(kind);
    }

    private static void swapped(FileLog file, FieldFaults faults, int records) {
        RawLog log = file.log();
        int odd = faults.inRangeIfSwapped();
        int line = faults.firstOutOfRangeLine();
        for (int i = 0; i < log.records; i++) {
            if (Math.abs(log.latDeg[i]) > MAX_FIELD_LAT_DEG && Math.abs(log.lonDeg[i]) <= MAX_FIELD_LAT_DEG) {
                line = odd == 0 ? log.line[i] : line;
                odd++;
            }
        }
        if (odd > MOST * records) {
            throw found(
                    file,
                    line,
                    "a latitude beyond any field, beside a longitude that could be a latitude, in " + odd + " of "
                            + records + " records",
                    "latitude in lat and longitude in lon",
                    "swap the names of the two columns; they seem to be swapped");
        }
    }

    private static UnusableInputException found(FileLog file, int line, String found, String expected, String hint) {
        return UnusableInputException.found(found)
                .inFile(file.name())
                .atLine(line)
                .expected(expected)
                .hint(hint);
    }

    /** Returns "1 record" or "3 records". */
    public static String records(int count) {
        return String.format(Locale.ROOT, "%,d %s", count, count == 1 ? "record" : "records");
    }
}
