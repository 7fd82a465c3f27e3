package io.rowledger.log.source;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/**
 * The delimiter of a file, detected from its first lines.
 *
 * @param delimiter comma, semicolon, tab or vertical bar
 */
public record CsvShape(char delimiter) {
    private static final char[] CANDIDATES = {'\t', ';', ',', '|'};
    /** Fewest delimiters of a header below a preamble: time, latitude, longitude, flow. */
    private static final int MIN_COUNT = 3;
    /** Lines examined; more than any preamble has. */
    private static final int MAX_LINES = 60;

    /**
     * Returns the delimiter that splits two neighboring lines into the same number of fields (the larger number if several
     * do). Tries the first two lines first, then the following pairs, because a preamble may precede the header.
     */
    public static CsvShape of(String start) {
        List<String> lines = firstLines(start);
        for (int i = 0; i + 1 < lines.size(); i++) {
            int most = 0;
            char best = ',';
            for (char candidate : CANDIDATES) {
                int inHeader = count(lines.get(i), candidate);
                // Equal counts matter more than large ones: "Row 1, gal/min;Row 2, gal/min" has as many commas as
                // semicolons.
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

    /** Returns the delimiter's name. */
    public String words() {
        return switch (delimiter) {
            case '\t' -> "tab";
            case ';' -> "semicolon";
            case '|' -> "vertical bar";
            default -> "comma";
        };
    }

    /** Returns the CSV format; lines that start with # are comments, empty lines are skipped. */
    public CSVFormat format() {
        return CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreEmptyLines(true)
                .setCommentMarker('#')
                .get();
    }

    static boolean isCandidate(int c) {
        return new String(CANDIDATES).indexOf(c) >= 0;
    }

    /** Returns the first lines that are neither blank nor comments. */
    static List<String> firstLines(String start) {
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
