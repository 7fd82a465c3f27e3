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
 * A log with a line per row and time, given as one with a column per row: the lines of one time become one. Lines of one
 * time stand together; a log sorted by row is refused.
 */
public final class LongFormatLines implements Lines {
    /** Lines looked at to learn how many rows there are. */
    private static final int FIRST_LINES = 2000;

    private static final Pattern ROW_WORD =
            Pattern.compile("(?i)(row|outlet|knife|nozzle|section|channel|coulter|meter)");

    /** "Row 3", "R03": the number with a word before it. */
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

    /** The log as one with a column per row, or null where it is one already. */
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
            if (name.isPresent()) {
                LogQuantity measured = name.get().role().measured();
                if (measured.metersFlow()
                        && name.get().role().row() > 0
                        && !name.get().weak()) {
                    return null;
                }
                row = measured == LogQuantity.ROW && row < 0 ? i : row;
                boolean time = measured == LogQuantity.TIME
                        || measured == LogQuantity.DATE
                        || measured == LogQuantity.GPS_WEEK
                        || measured == LogQuantity.TIME_OF_WEEK;
                if (time) {
                    key.add(i);
                }
                if (measured == LogQuantity.LAT || measured == LogQuantity.LON) {
                    place.add(i);
                }
            } else {
                Optional<ColumnName> numbered = ColumnName.of(numbered(names.get(i), 1));
                if (numbered.isPresent() && numbered.get().role().row() == 1) {
                    perRow.add(i);
                    flow |= numbered.get().role().measured().metersFlow();
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

    /** A header with a row's number in it: "row 3 flow [gal/min]". */
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

    /** Reads the first lines and returns the highest row number among them. */
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
            throw UnusableInputException.found(
                            "a line for each row, sorted by row: neighboring lines are of different times")
                    .inFile(file)
                    .atLine(first.getFirst().number())
                    .expected("the lines of one time one after the other")
                    .hint("sort the file by time, then by row, and save it again");
        }
        return numbers.isEmpty() ? 1 : numbers.last();
    }

    /** The line's row number; 0 where there is none, as on a line that is no record. */
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
                    .hint(
                            "raise the row number in each line by one; where 0 stands for the whole bar, take its lines out");
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

    /** Headers of the log it is read as. */
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

    /** Fills in a row's fields; false where the row is there already, so that another record begins. */
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

    /** A row of the rig without a line in the whole file is no row that stood still, as a column that is missing. */
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
