package io.rowledger.export;

import io.rowledger.rate.Rates;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.rig.Product;
import io.rowledger.track.Pass;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;

/** {@code passes.csv}: one line a pass, the figures of {@code passes} in {@code summary.json} for a spreadsheet. */
public final class PassesCsv {
    private PassesCsv() {}

    private record Line(Pass pass, PassTotals totals, Intervals.OfPass intervals) {}

    public static void write(
            List<Product> products,
            List<Pass> passes,
            Rates rates,
            Intervals intervals,
            UnitFormat format,
            OutputStream out)
            throws IOException {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < passes.size(); i++) {
            lines.add(new Line(
                    passes.get(i), rates.passes().get(i), intervals.passes().get(i)));
        }
        CsvTable<Line> table = new CsvTable<Line>(format)
                .whole("pass", line -> line.pass.number())
                .time("start", line -> line.pass.startS())
                .time("end", line -> line.pass.endS())
                .figure("length", QuantityKind.LENGTH, line -> line.pass.lengthM())
                .figure("heading", "deg", 1, line -> compassDeg(line.pass.headingRad()))
                .figure("swept_area", QuantityKind.AREA, line -> line.totals.sweptAreaM2());
        for (int p = 0; p < products.size(); p++) {
            int product = p;
            String key = Cells.text(products.get(p).key()) + ".";
            table.figure(
                            key + "volume",
                            QuantityKind.VOLUME,
                            line -> line.totals.volumeL()[product])
                    .figure(
                            key + "target_volume",
                            QuantityKind.VOLUME,
                            line -> line.totals.targetVolumeL()[product])
                    .percent(key + "deviation", line -> line.totals.deviationPct(product));
        }
        table.bounds("swept_area", QuantityKind.AREA, line -> line.intervals.sweptAreaM2());
        for (int p = 0; p < intervals.products().size(); p++) {
            int product = p;
            String key = Cells.text(products.get(p).key()) + ".";
            table.bounds(
                            key + "volume",
                            QuantityKind.VOLUME,
                            line -> line.intervals.products().get(product).volumeL())
                    .percentBounds(
                            key + "deviation",
                            line -> line.intervals.products().get(product).deviationPct());
        }
        table.write(lines, out);
    }

    /** Degrees clockwise from north in [0, 360), rounded to a tenth. */
    private static double compassDeg(double headingRad) {
        double tenths = Math.rint(Math.toDegrees(headingRad) * 10);
        return ((tenths % 3600) + 3600) % 3600 / 10;
    }
}
