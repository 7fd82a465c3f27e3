package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.Line;
import io.rowledger.log.source.Lines;
import io.rowledger.log.source.NumberParser;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Converts long format (one line per row and time) to wide format (one column per row). The lines of one time must be
 * adjacent; a log sorted by row is refused.
 */
public final class LongFormatLines implements Lines {
    /** Lines examined to find the number of rows. */
    private static final int FIRST_LINES = 2000;

    private static final Pattern ROW_WORD =
            Pattern.compile("(?i)(row|outlet|knife|nozzle|section|channel|coulter|meter)");

    /** "Row 3", "R03": a number after a word. */
    private static final Pattern ROW_NAMED = Pattern.compile(
            "(?i)\\s*(?:row|outlet|knife|nozzle|section|channel|coulter|meter|r)\\W{0,3}0*(\\d{1,3})\\s*");

    private final String file;
    private final Lines lines;
    private final int width;
    private final int rowIndex;
    private final int[] common;
    private final int[] perRow;
    private final int[] key;
    private final int[] place;
    private final int rows;
    private final int rowsOfRig;
    private final boolean[] seen;
    private final List<String> headers;
    private final Deque<Line> first = new ArrayDeque<>();
    private @Nullable Line ahead;

    private LongFormatLines(String file, Lines lines, Shape shape, List<String> names, LogOptions options) {
        this.file = file;
        this.lines = lines;
        this.width = names.size();
        this.rowIndex = shape.rowIndex;
        this.perRow = shape.perRow.stream().mapToInt(Integer::intValue).toArray();
        this.key = shape.key.stream().mapToInt(Integer::intValue).toArray();
        this.place = shape.place.stream().mapToInt(Integer::intValue).toArray();
        int[] others = new int[width];
        int n = 0;
        for (int i = 0; i < width; i++) {
            if (i != rowIndex && !shape.perRow.contains(i)) {
                others[n++] = i;
            }
        }
        this.common = Arrays.copyOf(others, n);
        this.rowsOfRig = options.rowsExpected();
        this.rows = Math.max(rowsOfRig, lookAhead());
        this.seen = new boolean[rows];
        List<String> wide = new ArrayList<>();
        for (int i : common) {
            wide.add(names.get(i));
        }
        for (int i : perRow) {
            for (int row = 1; row <= rows; row++) {
                wide.add(numbered(names.get(i), row));
            }
        }
        this.headers = List.copyOf(wide);
    }

    private record Shape(int rowIndex, List<Integer> perRow, List<Integer> key, List<Integer> place) {}

    /** Returns the log in wide format, or null if it is not in long format. */
    public static @Nullable LongFormatLines of(String file, Headers headers, Lines lines, LogOptions options) {
        Shape shape = shape(headers.names(), options);
        return shape == null ? null : new LongFormatLines(file, lines, shape, headers.names(), options);
    }

    private static @Nullable Shape shape(List<String> names, LogOptions options) {
        int row = -1;
        List<Integer> perRow = new ArrayList<>();
        List<Integer> key = new ArrayList<>();
        List<Integer> place = new ArrayList<>();
        boolean flow = false;
        for (int i = 0; i < names.size(); i++) {
            String header = names.get(i);
            Optional<ColumnName> name = chosen(header, options).or(() -> ColumnName.of(header));
            // "flow" beside a row number is the flow of that row.
            if (name.isPresent() && !name.get().role().quantity().isOfBar()) {
                LogQuantity quantity = name.get().role().quantity();
                if (quantity.isFlowSource()
                        && name.get().role().row() > 0
                        && !name.get().weak()) {
                    return null;
                }
                row = quantity == LogQuantity.ROW && row < 0 ? i : row;
                boolean time = quantity == LogQuantity.TIME
                        || quantity == LogQuantity.DATE
                        || quantity == LogQuantity.GPS_WEEK
                        || quantity == LogQuantity.TIME_OF_WEEK;
                if (time) {
                    key.add(i);
                }
                if (quantity == LogQuantity.LAT || quantity == LogQuantity.LON) {
                    place.add(i);
                }
            } else {
                Optional<ColumnName> numbered = ColumnName.of(numbered(names.get(i), 1));
                if (numbered.isPresent() && numbered.get().role().row() == 1) {
                    perRow.add(i);
                    flow |= numbered.get().role().quantity().isFlowSource();
                }
            }
        }
        return row >= 0 && flow && !key.isEmpty() ? new Shape(row, perRow, key, place) : null;
    }

    private static Optional<ColumnName> chosen(String header, LogOptions options) {
        for (Map.Entry<String, String> entry : options.columns().entrySet()) {
            if (ColumnName.plain(entry.getValue()).equals(ColumnName.plain(header))) {
                return ColumnName.of(entry.getKey());
            }
        }
        return Optional.empty();
    }

    /** Returns the header with a row number inserted: "row 3 flow [gal/min]". */
    private static String numbered(String header, int row) {
        int dot = header.indexOf('.');
        String product = dot > 0 ? header.substring(0, dot + 1) : "";
        String name = header.substring(product.length());
        Matcher word = ROW_WORD.matcher(name);
        String number = String.format(Locale.ROOT, "%02d", row);
        return product
                + (word.find()
                        ? name.substring(0, word.end()) + " " + number + name.substring(word.end())
                        : "row " + number + " " + name);
    }

    /** Buffers the first lines and returns their highest row number. */
    private int lookAhead() {
        TreeSet<Integer> numbers = new TreeSet<>();
        int alone = 0;
        int groups = 0;
        Line before = null;
        int inGroup = 0;
        while (first.size() < FIRST_LINES) {
            Line line = lines.next();
            if (line == null) {
                break;
            }
            first.add(line);
            int row = row(line);
            if (row > 0) {
                numbers.add(row);
                boolean same = before != null && sameTime(before, line);
                if (!same) {
                    alone += inGroup == 1 ? 1 : 0;
                    groups++;
                    inGroup = 0;
                }
                inGroup++;
                before = line;
            }
        }
        boolean oneRow = first.size() == FIRST_LINES && numbers.size() == 1;
        if ((numbers.size() > 1 || oneRow) && 2 * alone > groups && groups > 2) {
            throw UnusableInputException.found("a line for each row, sorted by row instead of by time")
                    .inFile(file)
                    .atLine(first.getFirst().number())
                    .expected("all lines of one time together")
                    .hint("sort the file by time, then by row, and save it again");
        }
        return numbers.isEmpty() ? 1 : numbers.last();
    }

    /** Returns the row number of a line; 0 if it has none (not a record). */
    private int row(Line line) {
        if (line.fields().length < width) {
            return 0;
        }
        String text = line.fields()[rowIndex];
        Matcher named = ROW_NAMED.matcher(text);
        double row = NumberParser.parse(named.matches() ? named.group(1) : text, '.');
        if (row == 0) {
            throw UnusableInputException.found("a line for row 0")
                    .inFile(file)
                    .atLine(line.number())
                    .expected("rows numbered from 1 at the left")
                    .hint("add one to each row number; if 0 is the whole bar, delete its lines");
        }
        return row >= 1 && row <= 999 && row == Math.rint(row) ? (int) row : 0;
    }

    private boolean sameTime(Line a, Line b) {
        for (int i : key) {
            if (!a.fields()[i].equals(b.fields()[i])) {
                return false;
            }
        }
        return true;
    }

    /** Returns the headers in wide format. */
    public List<String> headers() {
        return headers;
    }

    @Override
    public @Nullable Line next() {
        Line start = take();
        if (start == null) {
            missing();
            return null;
        }
        int row = row(start);
        if (row == 0) {
            return new Line(Arrays.copyOf(start.fields(), start.fields().length), start.number());
        }
        String[] wide = new String[headers.size()];
        Arrays.fill(wide, "");
        for (int c = 0; c < common.length; c++) {
            wide[c] = start.fields()[common[c]];
        }
        put(wide, start, row);
        Line line = take();
        while (line != null && row(line) > 0 && sameTime(start, line) && put(wide, line, row(line))) {
            checkPlace(start, line);
            line = take();
        }
        ahead = line;
        return new Line(wide, start.number());
    }

    /** Stores the fields of a row; returns false if the row is already there, so that a new record begins. */
    private boolean put(String[] wide, Line line, int row) {
        if (row > rows) {
            throw UnusableInputException.found("row " + row + ", where the lines before have rows up to " + rows)
                    .inFile(file)
                    .atLine(line.number())
                    .expected("a line for each row at each time")
                    .hint("correct the number, or the rows in the rig file");
        }
        seen[row - 1] = true;
        int at = common.length + row - 1;
        if (!wide[at].isEmpty()) {
            return false;
        }
        for (int p = 0; p < perRow.length; p++) {
            wide[at + p * rows] = line.fields()[perRow[p]];
        }
        return true;
    }

    /** Refuses a log that has no line at all for some row of the rig, as it would a missing column. */
    private void missing() {
        List<String> never = new ArrayList<>();
        for (int row = 1; row <= rowsOfRig; row++) {
            if (!seen[row - 1]) {
                never.add(Integer.toString(row));
            }
        }
        if (!never.isEmpty() && never.size() < rowsOfRig) {
            throw UnusableInputException.found("no line of row " + String.join(", ", never)
                            + " in the whole log, where the rig " + "file has " + rowsOfRig + " rows")
                    .inFile(file)
                    .expected("a line for each row of the rig, numbered from 1 at the left")
                    .hint("correct the rows in the rig file, or export the log with all rows");
        }
    }

    private void checkPlace(Line start, Line line) {
        for (int i : place) {
            if (!start.fields()[i].equals(line.fields()[i])) {
                throw UnusableInputException.found("a position for each row: \"" + start.fields()[i] + "\" and \""
                                + line.fields()[i] + "\" at the same time")
                        .inFile(file)
                        .atLine(line.number())
                        .expected("the antenna's position, the same for all rows of one time")
                        .hint("export the log with the position of the receiver");
            }
        }
    }

    private @Nullable Line take() {
        Line line = ahead;
        if (line != null) {
            ahead = null;
            return line;
        }
        Line buffered = first.poll();
        return buffered != null ? buffered : lines.next();
    }
}
