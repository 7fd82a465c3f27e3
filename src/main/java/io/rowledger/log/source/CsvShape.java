package io.rowledger.log.source;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/**
 * How the fields of a file are divided, told from its first lines.
 *
 * @param delimiter comma, semicolon or tab
 */
public record CsvShape(char delimiter) {
    private static final char[] CANDIDATES = {'\t', ';', ','};
    /** A time, a place and a flow need so many delimiters. */
    private static final int MIN_COUNT = 3;
    /** Lines looked at: more than any preamble has. */
    private static final int MAX_LINES = 60;

    /**
     * The delimiter that divides two neighboring lines into the same number of fields, the most of them if several do:
     * the first two, or where none does (a preamble stands above the header) the first two that have one.
     */
    public static CsvShape of(String start) {
        List<String> lines = firstLines(start);
        for (int i = 0; i + 1 < lines.size(); i++) {
            int most = 0;
            char best = ',';
            for (char candidate : CANDIDATES) {
                int inHeader = count(lines.get(i), candidate);
                // Agreement outweighs number: "Row 1, gal/min;Row 2, gal/min" has as many commas as semicolons.
                if (inHeader > most && inHeader == count(lines.get(i + 1), candidate)) {
                    most = inHeader;
                    best = candidate;
                }
            }
            if (most >= (i == 0 ? 1 : MIN_COUNT)) {
                return new CsvShape(best);
            }
        }
        String first = lines.isEmpty() ? "" : lines.get(0);
        char best = ',';
        for (char candidate : CANDIDATES) {
            best = count(first, candidate) > count(first, best) ? candidate : best;
        }
        return new CsvShape(best);
    }

    /** The delimiter in words. */
    public String words() {
        return switch (delimiter) {
            case '\t' -> "tab";
            case ';' -> "semicolon";
            default -> "comma";
        };
    }

    /** The CSV format of a file of this shape; lines that start with # are comments, empty lines are skipped. */
    public CSVFormat format() {
        return CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreEmptyLines(true)
                .setCommentMarker('#')
                .get();
    }

    private static List<String> firstLines(String start) {
        List<String> lines = new ArrayList<>();
        for (String line : start.split("\\R", MAX_LINES)) {
            boolean comment = line.startsWith("#") || line.startsWith("//") || line.startsWith(";");
            if (!line.isBlank() && !comment && lines.size() < MAX_LINES) {
                lines.add(line);
            }
        }
        return lines;
    }

    private static int count(String line, char wanted) {
        int count = 0;
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == wanted && !quoted) {
                count++;
            }
        }
        return count;
    }
}
