package io.rowledger.log.source;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a workbook's one sheet with data (ISO/IEC 29500, .xlsx). Cells formatted as dates and times come as ISO
 * 8601 text without a zone, other numbers as stored. The library throws exceptions of many kinds for damaged files: each
 * is a damaged workbook.
 */
final class SpreadsheetRows implements Iterator<List<String>>, Closeable {
    /** Rows and columns from which a sheet counts as a log. */
    private static final int MIN_ROWS = 2;

    private static final int MIN_COLUMNS = 2;
    /** Columns read: more than any log has. */
    private static final int MAX_COLUMNS = 2000;
    /** Parts of a format that are not its codes: texts, conditions, colors, escaped letters. */
    private static final Pattern NOT_CODES = Pattern.compile("\"[^\"]*\"|\\[[^hms\\]][^\\]]*\\]|\\\\.");

    private static final Pattern DATE_CODES = Pattern.compile("[yd]|mmm");
    private static final Pattern TIME_CODES = Pattern.compile("[hs]");

    private final String name;
    private final ReadableWorkbook workbook;
    private final Stream<Row> stream;
    private final Iterator<Row> rows;
    private int width;
    private int number = 1;
    private @Nullable Row pending;

    /**
     * Opens the workbook.
     *
     * @throws UnusableInputException if it has no sheet with data, or several
     */
    SpreadsheetRows(Path file) throws IOException {
        this.name = file.toString();
        try {
            workbook = open(file);
        } catch (RuntimeException e) {
            throw damaged();
        }
        try {
            stream = sheet().openStream();
            rows = stream.iterator();
            pending = nextRow();
        } catch (IOException | RuntimeException e) {
            workbook.close();
            throw e instanceof UnusableInputException message ? message : damaged();
        }
    }

    /** Opens the workbook with its formats; the part that holds them is optional (ECMA-376 part 1, 12.3.20; from memory). */
    private static ReadableWorkbook open(Path file) throws IOException {
        try {
            return new ReadableWorkbook(file.toFile(), new ReadingOptions(true, true));
        } catch (RuntimeException e) {
            return new ReadableWorkbook(file.toFile(), new ReadingOptions(false, true));
        }
    }

    private Sheet sheet() throws IOException {
        List<Sheet> filled = new ArrayList<>();
        for (Sheet sheet : workbook.getSheets().toList()) {
            if (sheet.getVisibility() == SheetVisibility.VISIBLE && holdsTable(sheet)) {
                filled.add(sheet);
            }
        }
        if (filled.size() != 1) {
            List<String> names = filled.stream().map(Sheet::getName).toList();
            throw UnusableInputException.found(
                            filled.isEmpty()
                                    ? "a workbook without a sheet of data"
                                    : "a workbook with several sheets of data: " + String.join(", ", names))
                    .inFile(name)
                    .expected("one sheet with the log, column names in its first row")
                    .hint(
                            filled.isEmpty()
                                    ? "export the log again"
                                    : "delete or hide the other sheets, or save the one with the log as CSV");
        }
        return filled.get(0);
    }

    private static boolean holdsTable(Sheet sheet) throws IOException {
        try (Stream<Row> some = sheet.openStream()) {
            return some.filter(row -> row.getPhysicalCellCount() >= MIN_COLUMNS)
                            .limit(MIN_ROWS)
                            .count()
                    == MIN_ROWS;
        }
    }

    private @Nullable Row nextRow() {
        return rows.hasNext() ? rows.next() : null;
    }

    @Override
    public boolean hasNext() {
        return pending != null;
    }

    @Override
    public List<String> next() {
        Row row = pending;
        if (row == null) {
            throw new NoSuchElementException();
        }
        try {
            if (number < row.getRowNum()) {
                // Blank rows are not stored; line numbers are to be the sheet's row numbers.
                number++;
                return List.of("");
            }
            List<String> fields = new ArrayList<>();
            int columns = Math.min(MAX_COLUMNS, row.getCellCount());
            for (int c = 0; c < columns; c++) {
                fields.add(row.getOptionalCell(c).map(this::text).orElse(""));
            }
            width = Math.max(width, fields.size());
            while (fields.size() < width) {
                fields.add("");
            }
            number++;
            pending = nextRow();
            return fields;
        } catch (RuntimeException e) {
            throw damaged();
        }
    }

    private String text(Cell cell) {
        CellType type = cell.getType();
        if (type == CellType.ERROR || type == CellType.EMPTY) {
            return "";
        }
        String raw = cell.getRawValue();
        boolean number = raw != null && isNumber(raw);
        if (type == CellType.NUMBER || (type == CellType.FORMULA && number)) {
            return time(cell, raw == null ? "" : raw);
        }
        if (type == CellType.BOOLEAN) {
            return "1".equals(raw) || "true".equalsIgnoreCase(raw) ? "true" : "false";
        }
        String text = cell.getText();
        return text == null ? "" : text.strip();
    }

    private static boolean isNumber(String raw) {
        try {
            return Double.isFinite(Double.parseDouble(raw));
        } catch (NumberFormatException e) {
            return false;
        }
    }

    /** A number as stored, or as a date or time if its format shows one. */
    private static String time(Cell cell, String raw) {
        String format = cell.getDataFormatString();
        String codes = format == null
                ? ""
                : NOT_CODES.matcher(format.toLowerCase(Locale.ROOT)).replaceAll("");
        boolean date = DATE_CODES.matcher(codes).find();
        boolean clock = TIME_CODES.matcher(codes).find();
        if ((!date && !clock) || codes.contains("general") || !isNumber(raw)) {
            return raw;
        }
        double days = Double.parseDouble(raw);
        LocalDateTime at = days >= 0 && days < MAX_DAYS ? cell.asDate() : null;
        if (at == null) {
            return raw;
        }
        // Stored as a fraction of a day: good to some microseconds, written to the millisecond.
        LocalDateTime rounded = at.plusNanos(500_000).truncatedTo(ChronoUnit.MILLIS);
        if (!date) {
            return TIME.format(rounded);
        }
        return clock || days != Math.rint(days) ? DATE_TIME.format(rounded) : DATE.format(rounded);
    }

    /** Days of a spreadsheet's calendar up to the year 9999. */
    private static final double MAX_DAYS = 2_958_466;

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss.SSS", Locale.ROOT);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter DATE_TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSS", Locale.ROOT);

    private UnusableInputException damaged() {
        return UnusableInputException.found("a workbook that can't be read")
                .kind(RefusalKind.DAMAGED)
                .inFile(name)
                .expected("a spreadsheet as .xlsx")
                .hint("open it in the spreadsheet and save it again, or save the sheet as CSV");
    }

    @Override
    public void close() throws IOException {
        stream.close();
        workbook.close();
    }
}
