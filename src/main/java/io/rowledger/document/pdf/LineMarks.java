package io.rowledger.document.pdf;

/**
 * Finds the line of a template that a line of the filled page came from. A mark is put at the end of each line of the
 * template; filling copies it into the page like any other text.
 */
final class LineMarks {
    /** Begins a mark: from the Unicode private use area, in no template and in no value. */
    private static final char MARK = '\ue000';
    /** Digit 0 of the line's number. */
    private static final char ZERO = '\ue010';

    private LineMarks() {}

    /** The template with a mark at the end of each line that does not end inside a tag. */
    static String mark(String template) {
        StringBuilder out = new StringBuilder(template.length() + 4096);
        String[] lines = template.split("\n", -1);
        boolean inTag = false;
        for (int i = 0; i < lines.length; i++) {
            out.append(lines[i]);
            int open = lines[i].lastIndexOf("{{");
            int close = lines[i].lastIndexOf("}}");
            inTag = open > close || (inTag && close < 0);
            if (!inTag) {
                out.append(MARK);
                Integer.toString(i + 1).chars().forEach(digit -> out.append((char) (ZERO + digit - '0')));
            }
            out.append(i + 1 < lines.length ? "\n" : "");
        }
        return out.toString();
    }

    /** The filled page without marks. */
    static String strip(String page) {
        StringBuilder out = new StringBuilder(page.length());
        page.chars().filter(c -> c < MARK || c > ZERO + 9).forEach(c -> out.append((char) c));
        return out.toString();
    }

    /** The template's line for a line of the filled page, from 1; 0 where none is known. */
    static int lineOf(String markedPage, int pageLine) {
        String[] lines = markedPage.split("\n", -1);
        for (int i = Math.max(0, pageLine - 1); i < lines.length; i++) {
            int at = lines[i].indexOf(MARK);
            if (at >= 0) {
                int line = 0;
                for (int c = at + 1; c < lines[i].length(); c++) {
                    int digit = lines[i].charAt(c) - ZERO;
                    if (digit < 0 || digit > 9) {
                        break;
                    }
                    line = 10 * line + digit;
                }
                return line;
            }
        }
        return 0;
    }
}
