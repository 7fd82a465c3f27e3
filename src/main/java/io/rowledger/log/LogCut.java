package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.taskdata.TaskData;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * A log in lines of text, cut into logs of the places that its records lie in. Each part begins with the lines above the
 * first record; a later line that is no record stays with the record before it. No byte of a line changes.
 */
public final class LogCut {
    /** Bytes that are looked at to tell text from packed files and spreadsheets. */
    private static final int LOOK_BYTES = 4096;

    private final Path log;
    /** Numbers of the lines with a record, ascending, and the place of each. */
    private final int[] lines;

    private final int[] places;

    private LogCut(Path log, int[] lines, int[] places) {
        this.log = log;
        this.lines = lines;
        this.places = places;
    }

    /** Tells in which place a position lies. */
    @FunctionalInterface
    public interface Places {
        /** Returns the number of the place, from 0. */
        int of(double latDeg, double lonDeg);
    }

    /**
     * Reads a log.
     *
     * @throws UnusableInputException if its records can't be read yet, or it is packed, a spreadsheet or task data
     */
    public static LogCut of(Path log, LogOptions options, Places places) throws IOException {
        if (TaskData.is(log) || !isText(log)) {
            throw UnusableInputException.found("a log that is no plain text")
                    .inFile(log.toString())
                    .expected("lines of text, such as CSV, to cut it between the fields")
                    .hint("unpack it, or save it as CSV, and drop it again");
        }
        RawLog raw = LogFileReader.read(log, options).log();
        int[] at = new int[raw.records];
        Arrays.setAll(at, i -> places.of(raw.latDeg[i], raw.lonDeg[i]));
        return new LogCut(log, Arrays.copyOf(raw.line, raw.records), at);
    }

    private static boolean isText(Path log) throws IOException {
        try (InputStream in = Files.newInputStream(log)) {
            byte[] first = in.readNBytes(LOOK_BYTES);
            boolean packed = first.length > 1
                    && ((first[0] == 'P' && first[1] == 'K') || (first[0] == 0x1f && first[1] == (byte) 0x8b));
            for (byte each : first) {
                packed |= each == 0;
            }
            return !packed;
        }
    }

    /** Returns true if records lie in this place. */
    public boolean has(int place) {
        return Arrays.stream(places).anyMatch(each -> each == place);
    }

    /** Writes the lines of a place. */
    public void writeTo(int place, OutputStream out) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(log), 1 << 16)) {
            int line = 1;
            int record = -1;
            boolean taken = true;
            int before = -1;
            for (int next = in.read(); next >= 0; next = in.read()) {
                if (before == '\n' || (before == '\r' && next != '\n')) {
                    line++;
                    while (record + 1 < lines.length && lines[record + 1] <= line) {
                        record++;
                    }
                    taken = record < 0 || places[record] == place;
                }
                if (taken) {
                    out.write(next);
                }
                before = next;
            }
        }
    }
}
