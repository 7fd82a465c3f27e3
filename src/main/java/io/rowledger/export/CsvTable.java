package io.rowledger.export;

import io.rowledger.results.JsonNumbers;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/**
 * A table for a spreadsheet: its columns in order, each with a header and what stands below it. Figures are in the units of
 * the printed reports, which the header names: {@code swept_area[ac]}. Times are ISO 8601 with the reports' offset from
 * UTC. A cell is empty where a figure isn't known.
 *
 * @param <T> a line of the table
 */
final class CsvTable<T> {
    private final UnitFormat format;
    private final List<Column<T>> columns = new ArrayList<>();

    CsvTable(UnitFormat format) {
        this.format = format;
    }

    private record Column<T>(String header, Function<T, String> cell) {}

    /** Text as entered, made harmless to spreadsheets; null is an empty cell. */
    CsvTable<T> text(String header, Function<T, @Nullable String> value) {
        columns.add(new Column<>(header, line -> {
            String text = value.apply(line);
            return text == null ? "" : Cells.text(text);
        }));
        return this;
    }

    CsvTable<T> whole(String header, ToIntFunction<T> value) {
        columns.add(new Column<>(header, line -> Integer.toString(value.applyAsInt(line))));
        return this;
    }

    /** A point in time, epoch seconds. */
    CsvTable<T> time(String header, ToDoubleFunction<T> epochS) {
        columns.add(new Column<>(header, line -> {
            Instant time = JsonNumbers.instant(epochS.applyAsDouble(line));
            return time == null ? "" : DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time.atZone(format.zone()));
        }));
        return this;
    }

    /** A figure in SI, in the reader's unit. */
    CsvTable<T> figure(String name, QuantityKind kind, ToDoubleFunction<T> si) {
        columns.add(new Column<>(
                name + "[" + unit(kind) + "]",
                line -> JsonNumbers.text(kind.from(si.applyAsDouble(line), format.system()), decimals(kind))));
        return this;
    }

    /** A figure in a unit that both systems share, such as {@code %} or {@code deg}. */
    CsvTable<T> figure(String name, String unit, int decimals, ToDoubleFunction<T> value) {
        columns.add(
                new Column<>(name + "[" + unit + "]", line -> JsonNumbers.text(value.applyAsDouble(line), decimals)));
        return this;
    }

    CsvTable<T> percent(String name, ToDoubleFunction<T> percent) {
        return figure(name, "%", JsonNumbers.PCT, percent);
    }

    /** Low and high bound of a figure in SI. */
    CsvTable<T> bounds(String name, QuantityKind kind, Function<T, Interval> interval) {
        return figure(name + "_low", kind, line -> interval.apply(line).low())
                .figure(name + "_high", kind, line -> interval.apply(line).high());
    }

    /** Low and high bound of a percentage. */
    CsvTable<T> percentBounds(String name, Function<T, Interval> interval) {
        return percent(name + "_low", line -> interval.apply(line).low())
                .percent(name + "_high", line -> interval.apply(line).high());
    }

    /** Writes header and lines as RFC 4180 has them, in UTF-8. The stream stays open. */
    void write(Iterable<T> lines, OutputStream out) throws IOException {
        Writer csv = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        Cells.record(csv, columns.stream().map(Column::header).toList());
        for (T line : lines) {
            Cells.record(
                    csv, columns.stream().map(column -> column.cell.apply(line)).toList());
        }
        csv.flush();
    }

    /** The unit's sign; the name of the column says that it is nitrogen. */
    private String unit(QuantityKind kind) {
        return kind.unit(format.system()).replace(" N", "");
    }

    /** As many as the JSON files hold in SI, in the larger units of people. */
    private static int decimals(QuantityKind kind) {
        return switch (kind) {
            case AREA -> 4;
            case VOLUME, NITROGEN -> 3;
            case LENGTH -> 1;
            default -> 2;
        };
    }
}
