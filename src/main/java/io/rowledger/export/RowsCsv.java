package io.rowledger.export;

import io.rowledger.analysis.Analysis;
import io.rowledger.rate.RowTotals;
import io.rowledger.results.JsonNumbers;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;

/** {@code rows.csv}: one line a row, the table of {@code summary.json} for a spreadsheet; SI, units in the header. */
public final class RowsCsv {
    private RowsCsv() {}

    public static void write(Analysis a, OutputStream out) throws IOException {
        Writer csv = Cells.writer(out);
        Cells.record(csv, header(a));
        for (int r = 0; r < a.rates().rows().size(); r++) {
            RowTotals row = a.rates().rows().get(r);
            List<String> cells = new ArrayList<>();
            cells.add(Integer.toString(row.row()));
            cells.add(JsonNumbers.text(row.sweptAreaM2(), JsonNumbers.AREA_M2));
            cells.add(JsonNumbers.text(row.appliedAreaM2(), JsonNumbers.AREA_M2));
            turn(cells, row.turn());
            turn(cells, row.turnRemaining());
            for (int p = 0; p < row.products().size(); p++) {
                RowTotals.ProductTotals product = row.products().get(p);
                cells.add(JsonNumbers.text(product.volumeL(), JsonNumbers.VOLUME_L));
                cells.add(JsonNumbers.text(product.targetVolumeL(), JsonNumbers.VOLUME_L));
                cells.add(JsonNumbers.text(row.meanRateLPerM2(p) * Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE));
                cells.add(JsonNumbers.text(product.deviationPct(), JsonNumbers.PCT));
            }
            bounds(cells, a.intervals().rows().get(r));
            Cells.record(csv, cells);
        }
        csv.flush();
    }

    private static void bounds(List<String> cells, Intervals.OfRow of) {
        Cells.bounds(cells, of.sweptAreaM2(), 1, JsonNumbers.AREA_M2);
        Cells.bounds(cells, of.appliedAreaM2(), 1, JsonNumbers.AREA_M2);
        for (Intervals.OfRowProduct product : of.products()) {
            Cells.bounds(cells, product.volumeL(), 1, JsonNumbers.VOLUME_L);
            Cells.bounds(cells, product.meanRateLPerM2(), Factor.SQUARE_METRES_PER_HECTARE, JsonNumbers.RATE);
            Cells.bounds(cells, product.deviationPct(), 1, JsonNumbers.PCT);
        }
    }

    private static List<String> header(Analysis a) {
        List<String> header = new ArrayList<>(List.of(
                "row",
                "swept_area_m2",
                "applied_area_m2",
                "turn_error_mean_abs_pct",
                "turn_error_max_over_pct",
                "turn_error_max_under_pct",
                "turn_error_remaining_mean_abs_pct",
                "turn_error_remaining_max_over_pct",
                "turn_error_remaining_max_under_pct"));
        a.rig().products().forEach(product -> {
            String key = Cells.text(product.key());
            header.add(key + ".volume_l");
            header.add(key + ".target_volume_l");
            header.add(key + ".mean_rate_l_per_ha");
            header.add(key + ".deviation_pct");
        });
        Cells.boundsHeader(header, "swept_area_m2");
        Cells.boundsHeader(header, "applied_area_m2");
        a.rig().products().forEach(product -> {
            String key = Cells.text(product.key());
            Cells.boundsHeader(header, key + ".volume_l");
            Cells.boundsHeader(header, key + ".mean_rate_l_per_ha");
            Cells.boundsHeader(header, key + ".deviation_pct");
        });
        return header;
    }

    private static void turn(List<String> cells, RowTotals.TurnError error) {
        cells.add(JsonNumbers.text(error.meanAbs() * 100, JsonNumbers.PCT));
        cells.add(JsonNumbers.text(error.maxOver() * 100, JsonNumbers.PCT));
        cells.add(JsonNumbers.text(error.maxUnder() * 100, JsonNumbers.PCT));
    }
}
