package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Maps the columns of a file to quantities and units, from the header line alone. Throws if something needed is missing,
 * ambiguous or without a unit.
 */
public final class ColumnPlan {
    /**
     * A column in use.
     *
     * @param index position in the line, from 0
     * @param header as written
     * @param role its meaning, with the product resolved
     * @param unit the unit's symbol, empty if there is none
     * @param toSi factor to SI (L/s for flows, L for volumes and counts); NaN if the values are not plain numbers
     * @param written the quantity in the header; differs from the role's if a flow is derived from it
     */
    public record Column(int index, String header, Role role, String unit, double toSi, LogQuantity written) {}

    private final List<String> headers;
    private final List<String> rawHeaders;
    private final List<Column> columns;
    private final List<String> products;
    private final RowMapping rows;
    private final int headerLine;
    private final List<String> ambiguousDates;
    private final List<String> withoutUnit;
    private final @Nullable Column day;

    ColumnPlan(
            List<String> headers,
            Headers found,
            List<Column> columns,
            List<String> products,
            RowMapping rows,
            List<String> ambiguousDates,
            List<String> withoutUnit) {
        this.headers = List.copyOf(headers);
        this.rawHeaders = found.raw();
        this.columns = List.copyOf(columns);
        this.products = List.copyOf(products);
        this.rows = rows;
        this.headerLine = found.line();
        this.ambiguousDates = List.copyOf(ambiguousDates);
        this.withoutUnit = List.copyOf(withoutUnit);
        this.day = null;
    }

    /** The plan of a log whose time column holds only days. */
    private ColumnPlan(ColumnPlan plan, Column day) {
        this.headers = plan.headers;
        this.rawHeaders = plan.rawHeaders;
        this.columns =
                plan.columns.stream().filter(column -> !column.equals(day)).toList();
        this.products = plan.products;
        this.rows = plan.rows;
        this.headerLine = plan.headerLine;
        this.ambiguousDates = plan.ambiguousDates;
        this.withoutUnit = plan.withoutUnit;
        this.day = day;
    }

    /** Returns the same plan with a time column that tells the day alone: the log is dated and has no times. */
    public ColumnPlan withDays() {
        return new ColumnPlan(this, timeColumn());
    }

    /** Returns the column that holds the day of each record and nothing else; null if the log has none. */
    public @Nullable Column dayColumn() {
        return day;
    }

    /** File and line of the header, for refusals. */
    record Place(String file, int line) {
        UnusableInputException found(String found) {
            return UnusableInputException.found(found).inFile(file).atLine(line);
        }
    }

    /** Returns all headers as written, unrecognized ones included. */
    public List<String> headers() {
        return headers;
    }

    /** Returns the fields of the header line itself, before units of a second line and rows of a long format are merged in. */
    List<String> rawHeaders() {
        return rawHeaders;
    }

    /** Returns the headers of two competing date columns, neither in use; empty otherwise. */
    public List<String> ambiguousDates() {
        return ambiguousDates;
    }

    /** Returns the columns in use, sorted by quantity, product and outlet. */
    public List<Column> columns() {
        return columns;
    }

    public List<String> products() {
        return products;
    }

    /** Returns the number of rows. */
    public int outlets() {
        return rows.rows();
    }

    /** Returns how column numbers stand for rows. */
    public RowMapping rows() {
        return rows;
    }

    /** Returns the headers of columns that are not used because their unit is missing or unknown. */
    public List<String> withoutUnit() {
        return withoutUnit;
    }

    /** Returns true if the log has no times: points in driving order with rates per area. */
    public boolean isUntimed() {
        return find(LogQuantity.TIME) == null && find(LogQuantity.TIME_OF_WEEK) == null;
    }

    public int headerLine() {
        return headerLine;
    }

    /** Returns the column of a quantity that is not per outlet, or null. */
    @Nullable
    public Column find(LogQuantity quantity) {
        for (Column column : columns) {
            if (column.role().quantity() == quantity && column.role().row() == 0) {
                return column;
            }
        }
        return null;
    }

    /** Returns the column that every record fills: the time, or the latitude of points without times. */
    public Column keyColumn() {
        Column lat = find(LogQuantity.LAT);
        return isUntimed() && lat != null ? lat : timeColumn();
    }

    /** Returns the index of {@link #keyColumn}; 0 if the log has neither time nor position and can't be used. */
    int keyIndex() {
        boolean none = isUntimed() && find(LogQuantity.LAT) == null;
        return none ? 0 : keyColumn().index();
    }

    /** Returns the time column: the time itself, or the seconds of the GPS week. */
    public Column timeColumn() {
        Column time = find(LogQuantity.TIME);
        Column column = time != null ? time : find(LogQuantity.TIME_OF_WEEK);
        if (column == null) {
            throw new IllegalStateException("a plan has a time");
        }
        return column;
    }
}
