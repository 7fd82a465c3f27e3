package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads one log file from its bytes to clean columns. */
final class LogFileReader {
    /** Enough for a header of several hundred columns and a record. */
    private static final int SNIFF_CHARS = 1 << 15;
    /** Records looked at before the decimal mark is decided. */
    private static final int SNIFF_RECORDS = 100;

    private LogFileReader() {}

    /** The file's usable records, or the message why it has none. */
    static FileLog read(Path path, LogOptions options) {
        CSVParser parser = null;
        try (LogFile file = new LogFile(path)) {
            BufferedReader text = new BufferedReader(file.text(), SNIFF_CHARS);
            CsvShape shape = CsvShape.of(start(file, text));
            parser = CSVParser.parse(text, format(shape));
            FileLog log = records(file, shape, parser, options);
            log.finish(file.finish());
            return log;
        } catch (UncheckedIOException e) {
            throw LogFile.damaged(path.toString(), e.getCause(), parser == null ? 0 : parser.getCurrentLineNumber());
        } catch (IOException e) {
            throw LogFile.damaged(path.toString(), e, parser == null ? 0 : parser.getCurrentLineNumber());
        }
    }

    private static CSVFormat format(CsvShape shape) {
        return CSVFormat.DEFAULT
                .builder()
                .setDelimiter(shape.delimiter())
                .setIgnoreEmptyLines(true)
                .setCommentMarker('#')
                .get();
    }

    private static FileLog records(LogFile file, CsvShape shape, CSVParser parser, LogOptions options)
            throws IOException {
        Iterator<CSVRecord> records = parser.iterator();
        if (!records.hasNext()) {
            throw UnusableInputException.found("a file without a line")
                    .inFile(file.name())
                    .expected("a line of column names first")
                    .mend("export the log again");
        }
        List<String> headers = headers(records.next());
        ColumnPlan plan = ColumnPlan.of(file.name(), headers, line(parser), options);
        List<CSVRecord> first = new ArrayList<>();
        List<Integer> lines = new ArrayList<>();
        while (first.size() < SNIFF_RECORDS && records.hasNext()) {
            first.add(records.next());
            lines.add(line(parser));
        }
        if (first.isEmpty()) {
            throw UnusableInputException.found("column names but no records")
                    .inFile(file.name())
                    .atLine(plan.headerLine())
                    .expected("a record for each position below them")
                    .mend("export the log again; this one was closed before anything was recorded");
        }
        char mark = DecimalMark.of(plan, first);
        DropCount drops = new DropCount();
        RecordReader reader = new RecordReader(plan, mark, drops);
        for (int i = 0; i < first.size(); i++) {
            reader.read(first.get(i), lines.get(i));
        }
        if (records.hasNext()) {
            try (RecordPump pump = new RecordPump(reader)) {
                while (records.hasNext()) {
                    CSVRecord record = records.next();
                    pump.add(record, line(parser));
                }
                pump.finish();
            }
        }
        return new FileLog(file, shape, mark, plan, reader, drops, first.get(0));
    }

    private static List<String> headers(CSVRecord line) {
        List<String> headers = new ArrayList<>();
        for (String header : line) {
            headers.add(header.strip());
        }
        while (headers.size() > 1 && headers.get(headers.size() - 1).isEmpty()) {
            headers.remove(headers.size() - 1);
        }
        return headers;
    }

    private static String start(LogFile file, Reader text) throws IOException {
        char[] start = new char[SNIFF_CHARS - 1];
        text.mark(SNIFF_CHARS);
        int length = 0;
        while (length < start.length) {
            int more = text.read(start, length, start.length - length);
            if (more < 0) {
                break;
            }
            length += more;
        }
        text.reset();
        for (int i = 0; i < length; i++) {
            if (start[i] == 0) {
                throw UnusableInputException.found("a file that is not text")
                        .inFile(file.name())
                        .expected("a log in CSV, plain, .gz or .zip")
                        .mend("export the log as CSV");
            }
        }
        return new String(start, 0, length);
    }

    private static int line(CSVParser parser) {
        return (int) Math.min(parser.getCurrentLineNumber(), Integer.MAX_VALUE);
    }
}
