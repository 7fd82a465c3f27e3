package io.rowledger.log;

/**
 * How the fields of a file are divided, told from its first lines.
 *
 * @param delimiter comma, semicolon or tab
 */
record CsvShape(char delimiter) {
    private static final char[] CANDIDATES = {'\t', ';', ','};

    /** The delimiter that divides the first two lines into the same number of fields, the most of them if several do. */
    static CsvShape of(String start) {
        String[] lines = firstLines(start);
        char best = ',';
        int bestScore = 0;
        for (char candidate : CANDIDATES) {
            int inHeader = count(lines[0], candidate);
            int inRecord = lines[1].isEmpty() ? inHeader : count(lines[1], candidate);
            // Agreement outweighs number: "Row 1, gal/min;Row 2, gal/min" has as many commas as semicolons.
            int score = inHeader == 0 ? 0 : inHeader + (inHeader == inRecord ? 10_000 : 0);
            if (score > bestScore) {
                bestScore = score;
                best = candidate;
            }
        }
        return new CsvShape(best);
    }

    /** The delimiter in words. */
    String words() {
        return switch (delimiter) {
            case '\t' -> "tab";
            case ';' -> "semicolon";
            default -> "comma";
        };
    }

    private static String[] firstLines(String start) {
        String[] lines = {"", ""};
        int found = 0;
        for (String line : start.split("\\R", -1)) {
            if (!line.isBlank() && !line.startsWith("#") && found < 2) {
                lines[found++] = line;
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
