package io.rowledger.log.header;

import io.rowledger.log.source.CsvShape;
import io.rowledger.log.source.Line;
import java.io.IOException;
import java.io.StringReader;
import org.apache.commons.csv.CSVParser;
import org.jspecify.annotations.Nullable;

/** A header in a comment line, as some loggers write it: "# time,lat,lon". */
public final class CommentedHeader {
    /** Fewest known names in a comment that is a header. */
    private static final int NAMES = 3;

    private CommentedHeader() {}

    /** Returns the last comment above the first record that holds column names, or null. */
    public static @Nullable Line in(String start, CsvShape shape) {
        Line header = null;
        int number = 0;
        for (String text : start.split("\\R", -1)) {
            number++;
            String line = text.strip();
            boolean comment = line.startsWith("#") || line.startsWith("//") || line.startsWith(";");
            if (!comment && !line.isEmpty()) {
                break;
            }
            String bare = line.replaceFirst("^(#+|//+|;+)\\s*", "");
            if (bare.indexOf(shape.delimiter()) > 0) {
                String[] fields = fields(bare, shape);
                header = Headers.known(fields) >= NAMES ? new Line(fields, number) : header;
            }
        }
        return header;
    }

    private static String[] fields(String line, CsvShape shape) {
        try (CSVParser parser = CSVParser.parse(new StringReader(line), shape.format())) {
            return parser.iterator().next().values();
        } catch (IOException | java.io.UncheckedIOException | java.util.NoSuchElementException e) {
            return new String[0];
        }
    }
}
