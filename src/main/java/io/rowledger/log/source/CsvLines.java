package io.rowledger.log.source;

import io.rowledger.parallel.Ahead;
import java.io.CharArrayReader;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * The records of a CSV file, in file order. The text is split block by block, two blocks at a time on two threads; the records, their
 * numbers and the first failure are those of one pass.
 */
public final class CsvLines implements Lines {
    /** The widest logs, with several figures for each of 200 rows, have some 2,000. */
    private static final int MAX_FIELDS = 20_000;

    private final CSVFormat format;
    private final Runnable ended;
    private final TextBlocks blocks;
    private final Deque<Line> pushed = new ArrayDeque<>();
    /** Blocks in their order, being split. */
    private final Deque<Ahead<Split>> splits = new ArrayDeque<>();
    /** What is handed out. */
    private Split split = new Split(List.of(), null, 0);

    private int next;
    private boolean begun;
    /** What can't be cut into blocks. */
    private @Nullable Records rest;
    /** Lines of all blocks so far. */
    private int lines;
    /** The line that was read last, or could not be. */
    private int number;

    /** The records of a block up to the first that can't be read, and what is wrong with that one, at which line. */
    private record Split(List<Line> records, @Nullable RuntimeException failure, int line) {}

    /**
     * Lines of a text.
     *
     * @param start its first characters, already read
     * @param text the others
     * @param ended told whenever the end of a record was read
     */
    public CsvLines(String start, Reader text, CsvShape shape, Runnable ended) {
        this.format = shape.format();
        this.ended = ended;
        this.blocks = new TextBlocks(start, text, shape.delimiter());
    }

    @Override
    public @Nullable Line next() {
        if (!pushed.isEmpty()) {
            return pushed.pop();
        }
        while (next == split.records.size()) {
            if (split.failure != null) {
                number = split.line;
                throw split.failure;
            }
            if (splits.isEmpty() && rest == null) {
                readBlocks();
            }
            if (splits.isEmpty()) {
                return rest == null ? null : nextOf(rest);
            }
            split = splits.remove().get();
            next = 0;
        }
        Line line = split.records.get(next++);
        number = line.number();
        return line;
    }

    /** Pushes a line back; {@link #next} returns it again. */
    public void push(Line line) {
        pushed.push(line);
    }

    /** The number of the line that was read last; after a failure, that of the line that could not be read. */
    public int number() {
        return number;
    }

    /** Reads two blocks; another thread splits the second. A look at the beginning of a file needs only one. */
    private void readBlocks() {
        if (readBlock(1) && begun) {
            readBlock(2);
        }
        begun = true;
    }

    /** Reads a block that is split by the thread that takes its records, or by the second of two; false where no other can follow. */
    private boolean readBlock(int threads) {
        try {
            TextBlocks.Block block = blocks.next();
            if (block != null) {
                ended.run();
                int before = lines;
                splits.add(Ahead.of(threads, () -> split(block, before)));
                lines += block.lines();
                return true;
            }
            Reader left = blocks.rest();
            rest = left == null ? null : Records.of(left, format, lines);
        } catch (IOException e) {
            Split failed = new Split(List.of(), new UncheckedIOException(e), lines + blocks.linesLeft());
            splits.add(Ahead.of(1, () -> failed));
        }
        return false;
    }

    private Split split(TextBlocks.Block block, int before) {
        List<Line> records = new ArrayList<>();
        Records text = Records.of(new CharArrayReader(block.chars(), 0, block.length()), format, before);
        try {
            for (Line line = text.next(); line != null; line = text.next()) {
                records.add(line);
            }
            return new Split(records, null, 0);
        } catch (RuntimeException e) {
            return new Split(records, e, text.number());
        }
    }

    private @Nullable Line nextOf(Records text) {
        try {
            Line line = text.next();
            ended.run();
            return line;
        } finally {
            number = text.number();
        }
    }

    /** A text that is split record by record, and the lines before it. */
    private record Records(CSVParser parser, Iterator<CSVRecord> each, int before) {
        static Records of(Reader text, CSVFormat format, int before) {
            try {
                CSVParser parser = CSVParser.parse(text, format);
                return new Records(parser, parser.iterator(), before);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        int number() {
            return (int) Math.min(before + parser.getCurrentLineNumber(), Integer.MAX_VALUE);
        }

        @Nullable
        Line next() {
            if (!each.hasNext()) {
                return null;
            }
            String[] fields = each.next().values();
            if (fields.length > MAX_FIELDS) {
                throw new UncheckedIOException(new RecordGuard.EndlessRecordException());
            }
            return new Line(fields, number());
        }
    }
}
