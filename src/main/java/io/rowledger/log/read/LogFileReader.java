package io.rowledger.log.read;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.ColumnPlanBuilder;
import io.rowledger.log.header.CommentedHeader;
import io.rowledger.log.header.DecimalMark;
import io.rowledger.log.header.Headers;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LongFormatLines;
import io.rowledger.log.header.NonDataLines;
import io.rowledger.log.header.Questions;
import io.rowledger.log.source.CsvLines;
import io.rowledger.log.source.CsvShape;
import io.rowledger.log.source.Line;
import io.rowledger.log.source.Lines;
import io.rowledger.log.source.LogFile;
import io.rowledger.log.source.OtherForms;
import io.rowledger.log.time.WholeDays;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/** Reads one log file into columns. */
public final class LogFileReader {
    /** Characters examined: a header of several hundred columns and a record fit. */
    private static final int SNIFF_CHARS = 1 << 15;
    /** Records examined to detect the formats. */
    private static final int SNIFF_RECORDS = 100;

    private LogFileReader() {}

    /** Reads a file; throws if it can't be used. */
    public static FileLog read(Path path, LogOptions options) {
        return open(path, (file, shape, text, start) -> {
            Opened opened = opened(file, shape, text, start, options, Questions.thrown());
            FileLog log = records(file.name(), mark -> form(file, shape, mark), opened.plan, opened.lines, options);
            log.digest(file.finish());
            return log;
        });
    }

    /** The header and first records of a file, and how it is packed and written. */
    record Beginning(LogPreview preview, String form) {}

    /** Reads the beginning of a file; questions about its header are collected. */
    static Beginning beginning(Path path, LogOptions options, Questions questions) {
        return open(path, (file, shape, text, start) -> {
            Opened opened = opened(file, shape, text, start, options, questions);
            List<Line> records = firstRecords(file.name(), opened.plan, opened.lines, new ArrayList<>());
            char mark = DecimalMark.of(opened.plan, records);
            return new Beginning(
                    new LogPreview(file.name(), opened.plan, records, mark, options), form(file, shape, mark));
        });
    }

    /** Receives each line below the header. */
    interface LineSink {
        void take(Line line);
    }

    /** Reads the beginning of a file and hands on every line below its header. */
    static Beginning lines(Path path, LogOptions options, Questions questions, LineSink sink) {
        return open(path, (file, shape, text, start) -> {
            Opened opened = opened(file, shape, text, start, options, questions);
            List<Line> records = firstRecords(file.name(), opened.plan, opened.lines, new ArrayList<>());
            char mark = DecimalMark.of(opened.plan, records);
            records.forEach(sink::take);
            for (Line line = opened.lines.next(); line != null; line = opened.lines.next()) {
                sink.take(line);
            }
            return new Beginning(
                    new LogPreview(file.name(), opened.plan, records, mark, options), form(file, shape, mark));
        });
    }

    private interface Reading<T> {
        T of(LogFile file, CsvShape shape, CsvLines text, String start) throws IOException;
    }

    private static <T> T open(Path path, Reading<T> reading) {
        CsvLines lines = null;
        try (LogFile file = new LogFile(path)) {
            String start = start(file);
            CsvShape shape = CsvShape.of(start);
            lines = new CsvLines(start, file.text(), shape, file::recordEnded);
            return reading.of(file, shape, lines, start);
        } catch (UncheckedIOException e) {
            throw LogFile.damaged(path.toString(), e.getCause(), lines == null ? 0 : lines.number());
        } catch (IOException e) {
            throw LogFile.damaged(path.toString(), e, lines == null ? 0 : lines.number());
        }
    }

    /** A file whose header is read. */
    private record Opened(ColumnPlan plan, Lines lines) {}

    private static Opened opened(
            LogFile file, CsvShape shape, CsvLines text, String start, LogOptions options, Questions questions) {
        Headers headers = Headers.read(file.name(), text, CommentedHeader.in(start, shape), options, questions);
        LongFormatLines rows = LongFormatLines.of(file.name(), headers, text, options);
        ColumnPlan plan = ColumnPlanBuilder.plan(
                file.name(), rows == null ? headers.names() : rows.headers(), headers, options, questions);
        return new Opened(plan, rows == null ? text : rows);
    }

    private static String form(LogFile file, CsvShape shape, int mark) {
        return file.form() + ", fields divided by " + shape.words() + ", decimal " + (mark == ',' ? "comma" : "point");
    }

    /** Returns the first records; every line read, non-data lines included, goes to {@code read}. */
    private static List<Line> firstRecords(String name, ColumnPlan plan, Lines lines, List<Line> read) {
        NonDataLines nonData = new NonDataLines(name, plan);
        List<Line> records = new ArrayList<>();
        for (Line line = lines.next(); line != null; ) {
            read.add(line);
            if (!nonData.mayBe(line.fields()) || !nonData.take(line.fields(), line.number(), 0)) {
                records.add(line);
            }
            line = records.size() < SNIFF_RECORDS ? lines.next() : null;
        }
        if (records.isEmpty()) {
            throw UnusableInputException.found("column names but no records")
                    .kind(RefusalKind.RECORDS)
                    .inFile(name)
                    .atLine(plan.headerLine())
                    .expected("records below them")
                    .hint("export the log again; this one is empty");
        }
        return records;
    }

    /**
     * Reads the lines below a header. The first ones are read twice: they decide the formats.
     *
     * @param form decimal mark to a description of packing and delimiter
     */
    public static FileLog records(
            String name, IntFunction<String> form, ColumnPlan plan, Lines lines, LogOptions options) {
        List<Line> first = new ArrayList<>();
        List<Line> records = firstRecords(name, plan, lines, first);
        LogPreview written = new LogPreview(name, plan, records, DecimalMark.of(plan, records), options);
        LogPreview preview = WholeDays.are(written)
                ? new LogPreview(name, plan.withDays(), records, written.mark(), options)
                : written;
        DropCount drops = new DropCount();
        RecordReader reader = new RecordReader(preview, drops);
        for (Line each : first) {
            reader.read(each.fields(), each.number());
        }
        Line next = lines.next();
        if (next != null) {
            try (RecordPump pump = new RecordPump(reader)) {
                for (; next != null; next = lines.next()) {
                    pump.add(next);
                }
                pump.finish();
            }
        }
        String shape = lines instanceof LongFormatLines
                ? "a line for each row and time, put side by side below"
                : "a line for each time";
        return new FileLog(name, form.apply(preview.mark()), shape, preview, reader, drops);
    }

    private static String start(LogFile file) throws IOException {
        char[] start = new char[SNIFF_CHARS - 1];
        int length = 0;
        while (length < start.length) {
            int more = file.text().read(start, length, start.length - length);
            if (more < 0) {
                break;
            }
            length += more;
        }
        // A power cut leaves zeros behind the last lines or among them; a first line with zeros is no text.
        for (int i = 0; i < length && start[i] != '\n' && start[i] != '\r'; i++) {
            if (start[i] == 0) {
                throw UnusableInputException.found("a file that is not text")
                        .kind(RefusalKind.NOT_A_LOG)
                        .inFile(file.name())
                        .expected("a log in CSV, plain, .gz or .zip")
                        .hint("export the log as CSV");
            }
        }
        String beginning = new String(start, 0, length);
        OtherForms.refuse(file.name(), beginning);
        return beginning;
    }
}
