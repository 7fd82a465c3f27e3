package io.rowledger.log.source;

import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** The records of a CSV file, in file order. */
public final class CsvLines implements Lines {
    /** The widest logs, with several figures for each of 200 rows, have some 2,000. */
    private static final int MAX_FIELDS = 20_000;

    private final CSVParser parser;
    private final Runnable ended;
    private final Iterator<CSVRecord> records;
    private final Deque<Line> pushed = new ArrayDeque<>();

    /**
     * Lines of a parser.
     *
     * @param ended told of each record that is read
     */
    public CsvLines(CSVParser parser, Runnable ended) {
        this.ended = ended;
        this.parser = parser;
        this.records = parser.iterator();
    }

    @Override
    public @Nullable Line next() {
        if (!pushed.isEmpty()) {
            return pushed.pop();
        }
        if (!records.hasNext()) {
            return null;
        }
        String[] fields = records.next().values();
        ended.run();
        if (fields.length > MAX_FIELDS) {
            throw new UncheckedIOException(new RecordGuard.EndlessRecordException());
        }
        return new Line(fields, (int) Math.min(parser.getCurrentLineNumber(), Integer.MAX_VALUE));
    }

    /** Pushes a line back; {@link #next} returns it again. */
    public void push(Line line) {
        pushed.push(line);
    }
}
