package io.rowledger.export;

import io.rowledger.log.Metering;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.RowTotals.TurnError;
import io.rowledger.rig.Product;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.function.Function;

/** {@code rows.csv}: one line a row, the figures of {@code rows} in {@code summary.json} for a spreadsheet. */
public final class RowsCsv {
    private static final Intervals.OfRowProduct UNKNOWN = new Intervals.OfRowProduct(
            Interval.unknown(Double.NaN), Interval.unknown(Double.NaN), Interval.unknown(Double.NaN));

    private RowsCsv() {}

    /**
     * Writes the table.
     *
     * @param metering where rows share a meter, what it metered stays empty for single rows
     */
    public static void write(
            List<Product> products,
            List<RowTotals> rows,
            Intervals intervals,
            Metering metering,
            UnitFormat format,
            OutputStream out)
            throws IOException {
        boolean known = metering == Metering.PER_ROW;
        Function<RowTotals, Intervals.OfRow> bounds = row -> intervals.rows().get(row.row() - 1);
        CsvTable<RowTotals> table = new CsvTable<RowTotals>(format)
                .whole("row", RowTotals::row)
                .figure("swept_area", QuantityKind.AREA, RowTotals::sweptAreaM2)
                .figure("applied_area", QuantityKind.AREA, RowTotals::appliedAreaM2);
        turnError(table, "turn_error", RowTotals::turn);
        turnError(table, "turn_error_remaining", RowTotals::turnRemaining);
        for (int p = 0; p < products.size(); p++) {
            int product = p;
            String key = Cells.text(products.get(p).key()) + ".";
            table.figure(
                            key + "volume",
                            QuantityKind.VOLUME,
                            row -> known ? of(row, product).volumeL() : Double.NaN)
                    .figure(
                            key + "target_volume",
                            QuantityKind.VOLUME,
                            row -> of(row, product).targetVolumeL())
                    .figure(
                            key + "mean_rate",
                            QuantityKind.RATE,
                            row -> known ? row.meanRateLPerM2(product) : Double.NaN)
                    .percent(key + "deviation", row -> known ? of(row, product).deviationPct() : Double.NaN);
        }
        table.bounds("swept_area", QuantityKind.AREA, row -> bounds.apply(row).sweptAreaM2())
                .bounds(
                        "applied_area",
                        QuantityKind.AREA,
                        row -> bounds.apply(row).appliedAreaM2());
        for (int p = 0; p < intervals.products().size(); p++) {
            int product = p;
            String key = Cells.text(products.get(p).key()) + ".";
            Function<RowTotals, Intervals.OfRowProduct> of =
                    row -> known ? bounds.apply(row).products().get(product) : UNKNOWN;
            table.bounds(
                            key + "volume",
                            QuantityKind.VOLUME,
                            row -> of.apply(row).volumeL())
                    .bounds(
                            key + "mean_rate",
                            QuantityKind.RATE,
                            row -> of.apply(row).meanRateLPerM2())
                    .percentBounds(key + "deviation", row -> of.apply(row).deviationPct());
        }
        table.write(rows, out);
    }

    private static RowTotals.ProductTotals of(RowTotals row, int product) {
        return row.products().get(product);
    }

    private static void turnError(CsvTable<RowTotals> table, String name, Function<RowTotals, TurnError> error) {
        table.percent(name + "_mean_abs", row -> error.apply(row).meanAbs() * 100)
                .percent(name + "_max_over", row -> error.apply(row).maxOver() * 100)
                .percent(name + "_max_under", row -> error.apply(row).maxUnder() * 100);
    }
}
