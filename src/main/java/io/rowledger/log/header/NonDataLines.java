package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Non-data lines: comments, repeated headers, totals. */
public final class NonDataLines {
    private static final Set<String> TOTALS =
            Set.of("total", "totals", "sum", "sums", "average", "averages", "mean", "grand total", "end", "summary");
    /** Fewest known names in a line of column names. */
    private static final int NAMES = 3;

    private final String file;
    private final ColumnPlan plan;
    private final List<Integer> partStarts = new ArrayList<>();
    private int headers;
    private int totals;
    private int firstTotalLine;

    public NonDataLines(String file, ColumnPlan plan) {
        this.file = file;
        this.plan = plan;
    }

    /** Returns true if the line may be a non-data line (cheap check). */
    public boolean mayBe(String[] fields) {
        if (fields.length == 0) {
            return false;
        }
        return isOdd(fields, 0)
                && (starts(fields[0], '/')
                        || starts(fields[0], ';')
                        || starts(fields[0], '#')
                        || isOdd(fields, plan.keyIndex()));
    }

    private static boolean starts(String text, char c) {
        return !text.isEmpty() && text.charAt(0) == c;
    }

    private static boolean isOdd(String[] fields, int index) {
        if (index >= fields.length || fields[index].isEmpty()) {
            return true;
        }
        char c = fields[index].charAt(0);
        return c != ' ' && c != '-' && (c < '0' || c > '9');
    }

    /** Consumes a non-data line; returns false for a record. {@code records} is the number of records read so far. */
    public boolean take(String[] fields, int line, int records) {
        String first = fields[0].strip();
        if (fields.length == 1 && isZeros(first)) {
            return true;
        }
        if (first.startsWith("//") || first.startsWith("#") || (first.startsWith(";") && fields[0].startsWith(";"))) {
            return true;
        }
        if (isHeader(fields)) {
            headers++;
            partStarts.add(records);
            return true;
        }
        if (isUnits(fields)) {
            return true;
        }
        if (isTotals(fields)) {
            firstTotalLine = totals++ == 0 ? line : firstTotalLine;
            return true;
        }
        if (fields.length >= NAMES && isOtherHeader(fields)) {
            throw UnusableInputException.found("a second line of column names, other than the first")
                    .inFile(file)
                    .atLine(line)
                    .expected("one header, or the same one again")
                    .hint("cut the file before that line and give the parts as separate files");
        }
        return false;
    }

    private boolean isHeader(String[] fields) {
        List<String> headers = plan.rawHeaders();
        if (fields.length < headers.size()) {
            return false;
        }
        for (int i = 0; i < headers.size(); i++) {
            // Files that were joined keep their byte order marks.
            String field = i == 0 ? fields[i].replace("\uFEFF", "") : fields[i];
            if (!Headers.spaced(field).equals(headers.get(i))) {
                return false;
            }
        }
        return true;
    }

    /** Returns true for a line of zeros, as a power cut leaves it. */
    private static boolean isZeros(String text) {
        return !text.isEmpty() && text.chars().allMatch(c -> c == 0);
    }

    /** Returns true for a line of units below a repeated header. */
    private boolean isUnits(String[] fields) {
        return headers > 0 && Headers.isUnits(fields);
    }

    private boolean isTotals(String[] fields) {
        int time = plan.keyIndex();
        if (time < fields.length && !fields[time].isBlank() && !isTotal(fields[time])) {
            return false;
        }
        for (String field : fields) {
            if (isTotal(field)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isTotal(String field) {
        String word = field.strip().toLowerCase(Locale.ROOT);
        return TOTALS.contains(word.endsWith(":") ? word.substring(0, word.length() - 1) : word);
    }

    private boolean isOtherHeader(String[] fields) {
        for (ColumnPlan.Column column : plan.columns()) {
            LogQuantity quantity = column.role().quantity();
            boolean figure = quantity == LogQuantity.LAT || quantity == LogQuantity.LON || quantity == LogQuantity.FLOW;
            if (figure && column.index() < fields.length && startsNumeric(fields[column.index()])) {
                return false;
            }
        }
        return Headers.known(fields) >= NAMES;
    }

    private static boolean startsNumeric(String text) {
        String stripped = text.strip();
        char c = stripped.isEmpty() ? 'x' : stripped.charAt(0);
        return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.';
    }

    /** Returns the number of records before each repeated header. */
    public List<Integer> partStarts() {
        return partStarts;
    }

    /** Returns notes about the lines skipped. */
    public List<Message> notes() {
        List<Message> notes = new ArrayList<>();
        if (headers > 0) {
            notes.add(Message.of("notes.log.headers", file, headers + 1));
        }
        if (totals > 0) {
            notes.add(Message.of("notes.log.totals", totals, file, firstTotalLine));
        }
        return notes;
    }
}
