package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The records of a binary time log as columns.
 *
 * <p>A record, little-endian (ISO 11783-10, log data binary file structure): time of day in ms, 4 bytes unsigned; day
 * since 1980-01-01, 2 unsigned; then those of the position that the header leaves open: north and east in 1e-7 degrees, 4
 * each signed; up in mm, 4 signed; status, 1; PDOP and HDOP in tenths, 2 each unsigned; satellites, 1; GNSS UTC time of day
 * in ms, 4 unsigned; GNSS UTC day since 1980-01-01, 2 unsigned; then the number of values, 1; for each value its place in
 * the header's list, 1, and itself, 4 signed. A value that is not in a record is what it was in the record before.
 */
final class TimeLog {
    /** No value: as far as a record has come, and where a machine has none to give. */
    static final int NONE = Integer.MIN_VALUE;
    /** Dilution of precision of a receiver that has none to give. */
    static final int NO_DOP = 0xFFFF;
    /** Position status of a receiver that has none to give. */
    static final int NO_STATUS = 15;

    private static final long MS_PER_DAY = 86_400_000L;
    /** A day with a leap second. */
    private static final long MAX_DAY_MS = MS_PER_DAY + 1000;
    /** From 1980-01-01 back to 1970-01-01. */
    private static final long DAYS_TO_1980 = 3652;

    private static final int FIRST_CAPACITY = 4096;
    /** Two days at 20 Hz: more is no log of a field. */
    private static final int MAX_RECORDS = 4_000_000;
    /** Records times values, kept below 160 MB: a day of 48 sections at 10 Hz with four values each has half of it. */
    private static final long MAX_VALUES = 40_000_000;

    int records;
    /** True where the file ends within a record, which is left out. */
    boolean brokenOff;
    /** Since 1970-01-01 by the terminal's clock, ms. */
    long[] clockMs = new long[FIRST_CAPACITY];
    /** Since 1970-01-01, UTC by the receiver, ms; the smallest long where there is none. */
    long[] utcMs = {};

    int[] north = {};
    int[] east = {};
    byte[] status = {};
    int[] hdop = {};
    /** [value of the header] → column, or empty if it is not read from every record. */
    final int[][] values;
    /** [value of the header] → its first value in the file; {@link #NONE} if it never has one. */
    final int[] first;

    private final int maxRecords;
    private final LogHeader header;
    private final String file;
    private final InputStream in;

    private TimeLog(LogHeader header, boolean[] wanted, String file, InputStream in) {
        this.header = header;
        this.file = file;
        this.in = in;
        values = new int[wanted.length][];
        first = new int[wanted.length];
        int kept = 1;
        for (boolean one : wanted) {
            kept += one ? 1 : 0;
        }
        maxRecords = (int) Math.min(MAX_RECORDS, MAX_VALUES / kept);
        for (int v = 0; v < wanted.length; v++) {
            values[v] = wanted[v] ? new int[FIRST_CAPACITY] : new int[0];
        }
        north = new int[header.has(LogHeader.NORTH) ? FIRST_CAPACITY : 0];
        east = new int[header.has(LogHeader.EAST) ? FIRST_CAPACITY : 0];
        status = new byte[header.has(LogHeader.STATUS) ? FIRST_CAPACITY : 0];
        hdop = new int[header.has(LogHeader.HDOP) ? FIRST_CAPACITY : 0];
        utcMs = new long[header.has(LogHeader.UTC_TIME) && header.has(LogHeader.UTC_DATE) ? FIRST_CAPACITY : 0];
    }

    /** A log that others of the same task are joined to. */
    private TimeLog(LogHeader joined, TimeLog base, int[][] values, int[] first) {
        this.header = joined;
        this.file = base.file;
        this.in = InputStream.nullInputStream();
        this.values = values;
        this.first = first;
        this.maxRecords = base.maxRecords;
        records = base.records;
        brokenOff = base.brokenOff;
        clockMs = base.clockMs;
        utcMs = base.utcMs;
        north = base.north;
        east = base.east;
        status = base.status;
        hdop = base.hdop;
    }

    /**
     * Joins the values of other logs of the same task to the records of a base log: each record takes their last values
     * up to its own time.
     *
     * @param joined the header with the values of the base log, then those of the others
     */
    static TimeLog join(LogHeader joined, TimeLog base, List<TimeLog> others) {
        List<int[]> values = new ArrayList<>(Arrays.asList(base.values));
        int[] first = base.first;
        for (TimeLog other : others) {
            int[] from = base.latest(other);
            for (int[] column : other.values) {
                values.add(column.length == 0 ? column : pick(column, from));
            }
            int[] longer = Arrays.copyOf(first, first.length + other.first.length);
            System.arraycopy(other.first, 0, longer, first.length, other.first.length);
            first = longer;
        }
        return new TimeLog(joined, base, values.toArray(new int[0][]), first);
    }

    /** For each record the last record of the other log up to its time; −1 before the other begins. */
    private int[] latest(TimeLog other) {
        int[] latest = new int[records];
        int at = -1;
        for (int i = 0; i < records; i++) {
            while (at + 1 < other.records && other.clockMs[at + 1] <= clockMs[i]) {
                at++;
            }
            latest[i] = at;
        }
        return latest;
    }

    private static int[] pick(int[] column, int[] from) {
        int[] picked = new int[from.length];
        for (int i = 0; i < from.length; i++) {
            picked[i] = from[i] < 0 ? NONE : column[from[i]];
        }
        return picked;
    }

    /** Share of the other log's records whose time stamp a record of this one has too, 0 to 1. */
    double sharedStamps(TimeLog other) {
        Set<Long> stamps = new HashSet<>();
        for (int i = 0; i < records; i++) {
            stamps.add(clockMs[i]);
        }
        int shared = 0;
        for (int i = 0; i < other.records; i++) {
            shared += stamps.contains(other.clockMs[i]) ? 1 : 0;
        }
        return other.records == 0 ? 0 : (double) shared / other.records;
    }

    /**
     * Reads a binary file to its end.
     *
     * @param wanted which of the header's values are kept
     */
    static TimeLog read(LogHeader header, boolean[] wanted, String file, InputStream in) throws IOException {
        TimeLog log = new TimeLog(header, wanted, file, in);
        int[] current = new int[wanted.length];
        for (int v = 0; v < current.length; v++) {
            Integer fixed = header.values().get(v).fixed();
            current[v] = fixed == null ? NONE : fixed;
            log.first[v] = current[v];
        }
        int first = in.read();
        while (first >= 0 && !log.brokenOff) {
            try {
                log.record(first, current);
                first = in.read();
            } catch (EOFException e) {
                log.breakOff();
            }
        }
        log.resize(log.records);
        return log;
    }

    /** A terminal that loses power leaves half a record; the records before it are whole. */
    private void breakOff() {
        if (records == 0) {
            throw UnusableInputException.found("a first record that breaks off")
                    .inFile(file)
                    .expected("whole records, as its header " + header.file() + " describes them")
                    .hint("copy the task data from the terminal again, header and binary file together");
        }
        brokenOff = true;
    }

    private void record(int first, int[] current) throws IOException {
        if (records == clockMs.length) {
            if (records >= maxRecords) {
                throw UnusableInputException.found("more than " + records + " records")
                        .inFile(file)
                        .expected("the time log of a job")
                        .hint("look at where this file comes from");
            }
            resize(Math.min(maxRecords, records * 2));
        }
        int i = records;
        long timeOfDayMs = first | (long) uint(3) << 8;
        long day = uint(2);
        if (timeOfDayMs >= MAX_DAY_MS) {
            throw at("a time of day of " + timeOfDayMs + " ms")
                    .expected("less than 86400000: the header " + header.file()
                            + " does not describe these bytes, or they are damaged")
                    .hint("copy the task data from the terminal again, header and binary file together");
        }
        clockMs[i] = (DAYS_TO_1980 + day) * MS_PER_DAY + timeOfDayMs;
        position(i);
        int count = uint(1);
        for (int k = 0; k < count; k++) {
            int place = uint(1);
            if (place >= current.length) {
                throw at("value number " + place)
                        .expected("numbers below " + current.length + ": so many values the header " + header.file()
                                + " lists")
                        .hint("copy the task data from the terminal again, header and binary file together");
            }
            current[place] = uint(4);
            this.first[place] = this.first[place] == NONE ? current[place] : this.first[place];
        }
        for (int v = 0; v < values.length; v++) {
            if (values[v].length > 0) {
                values[v][i] = current[v];
            }
        }
        records++;
    }

    private void position(int i) throws IOException {
        long utcTimeMs = -1;
        int utcDay = -1;
        for (int attribute = 0; attribute <= LogHeader.UTC_DATE; attribute++) {
            if (!header.has(attribute)) {
                continue;
            }
            switch (attribute) {
                case LogHeader.NORTH -> north[i] = uint(4);
                case LogHeader.EAST -> east[i] = uint(4);
                case LogHeader.STATUS -> status[i] = (byte) uint(1);
                case LogHeader.HDOP -> hdop[i] = uint(2);
                case LogHeader.UTC_TIME -> utcTimeMs = uint(4) & 0xFFFF_FFFFL;
                case LogHeader.UTC_DATE -> utcDay = uint(2);
                case LogHeader.UP -> uint(4);
                case LogHeader.PDOP -> uint(2);
                default -> uint(1);
            }
        }
        if (utcMs.length > 0) {
            boolean known = utcTimeMs < MAX_DAY_MS && utcDay > 0 && utcDay < 0xFFFF;
            utcMs[i] = known ? (DAYS_TO_1980 + utcDay) * MS_PER_DAY + utcTimeMs : Long.MIN_VALUE;
        }
    }

    /** The next bytes as a number, least first; four of them as a signed one. */
    private int uint(int bytes) throws IOException {
        int value = 0;
        for (int k = 0; k < bytes; k++) {
            int next = in.read();
            if (next < 0) {
                throw new EOFException(file);
            }
            value |= next << (8 * k);
        }
        return value;
    }

    private UnusableInputException at(String found) {
        return UnusableInputException.found(found + " in record " + (records + 1))
                .inFile(file);
    }

    private void resize(int capacity) {
        clockMs = Arrays.copyOf(clockMs, capacity);
        utcMs = utcMs.length == 0 ? utcMs : Arrays.copyOf(utcMs, capacity);
        north = north.length == 0 ? north : Arrays.copyOf(north, capacity);
        east = east.length == 0 ? east : Arrays.copyOf(east, capacity);
        status = status.length == 0 ? status : Arrays.copyOf(status, capacity);
        hdop = hdop.length == 0 ? hdop : Arrays.copyOf(hdop, capacity);
        for (int v = 0; v < values.length; v++) {
            values[v] = values[v].length == 0 ? values[v] : Arrays.copyOf(values[v], capacity);
        }
    }

    /** The position status of a record, −1 where there is none. */
    int status(int i) {
        int raw = status.length == 0 ? header.fixedStatus() : status[i] & 0xFF;
        return raw == NO_STATUS ? -1 : raw;
    }
}
