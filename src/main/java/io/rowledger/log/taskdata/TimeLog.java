package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

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
    /** [value of the header] → column, or empty where it is not wanted. */
    final int[][] values;

    private final int mostRecords;
    private final LogHeader header;
    private final String file;
    private final InputStream in;

    private TimeLog(LogHeader header, boolean[] wanted, String file, InputStream in) {
        this.header = header;
        this.file = file;
        this.in = in;
        values = new int[wanted.length][];
        int kept = 1;
        for (boolean one : wanted) {
            kept += one ? 1 : 0;
        }
        mostRecords = (int) Math.min(MAX_RECORDS, MAX_VALUES / kept);
        for (int v = 0; v < wanted.length; v++) {
            values[v] = wanted[v] ? new int[FIRST_CAPACITY] : new int[0];
        }
        north = new int[header.has(LogHeader.NORTH) ? FIRST_CAPACITY : 0];
        east = new int[header.has(LogHeader.EAST) ? FIRST_CAPACITY : 0];
        status = new byte[header.has(LogHeader.STATUS) ? FIRST_CAPACITY : 0];
        hdop = new int[header.has(LogHeader.HDOP) ? FIRST_CAPACITY : 0];
        utcMs = new long[header.has(LogHeader.UTC_TIME) && header.has(LogHeader.UTC_DATE) ? FIRST_CAPACITY : 0];
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

    /** A terminal that lost power leaves half a record; the whole ones before it are as good as ever. */
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
            if (records >= mostRecords) {
                throw UnusableInputException.found("more than " + records + " records")
                        .inFile(file)
                        .expected("the time log of a job")
                        .hint("look at where this file comes from");
            }
            resize(Math.min(mostRecords, records * 2));
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
