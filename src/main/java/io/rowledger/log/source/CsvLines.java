package io.rowledger.log.source;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** The lines of a CSV file as they stand in it. */
public final class CsvLines implements Lines {
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private final Deque<Line> pushed = new ArrayDeque<>();

    public CsvLines(CSVParser parser) {
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
        return new Line(fields, (int) Math.min(parser.getCurrentLineNumber(), Integer.MAX_VALUE));
    }

    /** Gives a line back, to be the next one. */
    public void push(Line line) {
        pushed.push(line);
    }
}
