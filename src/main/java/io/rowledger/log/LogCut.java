package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.source.CsvText;
import io.rowledger.log.source.LogFile;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.log.taskdata.TaskLog;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A log cut into logs of the places that its records lie in. Of a log in plain text each part begins with the lines above the
 * first record; a later line that is no record stays with the record before it, and no byte of a line changes. A packed log, a
 * spreadsheet, points of a map file and each time log of task data become CSV with all columns and every figure as written.
 */
public final class LogCut {
    private static final int BUFFER = 1 << 16;

    private final String name;
    private final boolean plain;
    private final Text text;
    /** Numbers of the lines with a record, ascending, and the place of each. */
    private final int[] lines;

    private final int[] places;

    private LogCut(String name, boolean plain, Text text, RawLog raw, Places places) {
        this.name = name;
        this.plain = plain;
        this.text = text;
        this.lines = Arrays.copyOf(raw.line, raw.records);
        this.places = new int[raw.records];
        Arrays.setAll(this.places, i -> places.of(raw.latDeg[i], raw.lonDeg[i]));
    }

    /** Tells in which place a position lies. */
    @FunctionalInterface
    public interface Places {
        /** Returns the number of the place, from 0. */
        int of(double latDeg, double lonDeg);
    }

    /** Hands out a log's lines from the first on. */
    private interface Text {
        void writeTo(LineSink sink) throws IOException;
    }

    /** Takes a log's characters with the number of the line that each belongs to, from 1. */
    private interface LineSink {
        void take(int line, char character) throws IOException;
    }

    /**
     * Reads a log.
     *
     * @return one, or one for each time log of task data
     * @throws UnusableInputException if its records can't be read yet, or it holds polygons
     */
    public static List<LogCut> of(Path log, LogOptions options, Places places) throws IOException {
        if (TaskData.is(log)) {
            return ofTaskData(log, options, places);
        }
        if (AreaLog.is(log)) {
            throw UnusableInputException.found("polygons of work in several places")
                    .inFile(log.toString())
                    .expected("records with a position each, to cut them between the fields")
                    .hint("export the polygons of each field as a file of its own");
        }
        boolean plain = isPlain(log);
        RawLog raw = LogFileReader.read(log, options).log();
        requireOneDay(log, options.hints(), raw);
        return List.of(
                new LogCut("", plain, plain ? sink -> bytes(log, sink) : sink -> unpacked(log, sink), raw, places));
    }

    /** The rig file's day of the first record would be taken for that of every part. */
    private static void requireOneDay(Path log, LogHints hints, RawLog raw) {
        ZoneId zone = hints.zone() == null ? ZoneOffset.UTC : hints.zone();
        if (hints.date() != null
                && raw.records > 0
                && !day(raw.timeS[raw.records - 1], zone).equals(hints.date())) {
            throw UnusableInputException.found(
                            "times of day that go past midnight, and the day of the first one in the rig file")
                    .inFile(log.toString())
                    .expected("a log of one day, or one with its dates in it, to cut it between the fields")
                    .hint("export the log with a date in each record");
        }
    }

    private static LocalDate day(double timeS, ZoneId zone) {
        return Instant.ofEpochSecond((long) Math.floor(timeS)).atZone(zone).toLocalDate();
    }

    private static List<LogCut> ofTaskData(Path log, LogOptions options, Places places) {
        List<LogCut> cuts = new ArrayList<>();
        for (TaskLog each : TaskData.read(log, options.rowsExpected()).logs()) {
            RawLog raw = TaskDataLogs.raw(each, options).log();
            // A record of task data has its own number as its line; the header stands above it here.
            for (int i = 0; i < raw.records; i++) {
                raw.line[i]++;
            }
            String name = each.name().replaceFirst(".*[/\\\\]", "").replaceFirst("\\.[^.]*$", "");
            cuts.add(new LogCut(name, false, sink -> table(each, sink), raw, places));
        }
        return cuts;
    }

    /** The name of a time log of task data; empty for any other log. */
    public String name() {
        return name;
    }

    /** The ending of the parts' names: that of the log itself where it is plain text, else {@code .csv}. */
    public String ending(String file) {
        int dot = file.lastIndexOf('.');
        return plain && dot > 0 ? file.substring(dot) : plain ? "" : ".csv";
    }

    /** True for text whose bytes are its lines, unlike what is packed, a spreadsheet or UTF-16. */
    private static boolean isPlain(Path log) throws IOException {
        try (LogFile file = new LogFile(log)) {
            return file.isPlain();
        }
    }

    /** Returns true if records lie in this place. */
    public boolean has(int place) {
        return Arrays.stream(places).anyMatch(each -> each == place);
    }

    /** Writes the lines of a place: those of plain text as they are, others in UTF-8. */
    public void writeTo(int place, OutputStream out) throws IOException {
        Charset charset = plain ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8;
        Writer writer = new OutputStreamWriter(out, charset);
        int[] record = {-1};
        text.writeTo((line, character) -> {
            while (record[0] + 1 < lines.length && lines[record[0] + 1] <= line) {
                record[0]++;
            }
            if (record[0] < 0 || places[record[0]] == place) {
                writer.write(character);
            }
        });
        writer.flush();
    }

    /** Bytes of plain text as characters: every byte has one in ISO 8859-1. */
    private static void bytes(Path log, LineSink sink) throws IOException {
        try (Reader in = new InputStreamReader(
                new BufferedInputStream(Files.newInputStream(log), BUFFER), StandardCharsets.ISO_8859_1)) {
            hand(in, () -> {}, sink);
        }
    }

    private static void unpacked(Path log, LineSink sink) throws IOException {
        try (LogFile file = new LogFile(log)) {
            hand(file.text(), file::recordEnded, sink);
        }
    }

    private static void hand(Reader text, Runnable ended, LineSink sink) throws IOException {
        Reader in = new BufferedReader(text, BUFFER);
        int line = 1;
        int before = -1;
        for (int next = in.read(); next >= 0; next = in.read()) {
            if (before == '\n' || (before == '\r' && next != '\n')) {
                line++;
                ended.run();
            }
            sink.take(line, (char) next);
            before = next;
        }
    }

    /** A time log's records below its headers. */
    private static void table(TaskLog log, LineSink sink) throws IOException {
        for (int i = -1; i < log.records(); i++) {
            String line = CsvText.line(i < 0 ? log.headers() : List.of(log.fields(i)));
            for (int c = 0; c < line.length(); c++) {
                sink.take(i + 2, line.charAt(c));
            }
        }
    }
}
