package io.rowledger.export;

import io.rowledger.analysis.Analysis;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.results.JsonNumbers;
import io.rowledger.track.Pass;
import io.rowledger.uncertainty.Intervals;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** {@code passes.csv}: one line a pass; SI, units in the header, times ISO 8601 in UTC. */
public final class PassesCsv {
    private PassesCsv() {}

    public static void write(Analysis a, OutputStream out) throws IOException {
        Writer csv = Cells.writer(out);
        List<String> header =
                new ArrayList<>(List.of("pass", "start", "end", "length_m", "heading_deg", "swept_area_m2"));
        a.rig().products().forEach(product -> {
            String key = Cells.text(product.key());
            header.add(key + ".volume_l");
            header.add(key + ".target_volume_l");
            header.add(key + ".deviation_pct");
        });
        Cells.boundsHeader(header, "swept_area_m2");
        a.rig().products().forEach(product -> {
            String key = Cells.text(product.key());
            Cells.boundsHeader(header, key + ".volume_l");
            Cells.boundsHeader(header, key + ".deviation_pct");
        });
        Cells.record(csv, header);
        List<Pass> passes = a.track().passes();
        for (int i = 0; i < passes.size(); i++) {
            Pass pass = passes.get(i);
            PassTotals totals = a.rates().passes().get(i);
            List<String> cells = new ArrayList<>();
            cells.add(Integer.toString(pass.number()));
            cells.add(Objects.requireNonNullElse(JsonNumbers.time(pass.startS()), ""));
            cells.add(Objects.requireNonNullElse(JsonNumbers.time(pass.endS()), ""));
            cells.add(JsonNumbers.text(pass.lengthM(), JsonNumbers.LENGTH_M));
            cells.add(JsonNumbers.text(compassDeg(pass.headingRad()), 1));
            cells.add(JsonNumbers.text(totals.sweptAreaM2(), JsonNumbers.AREA_M2));
            for (int p = 0; p < totals.volumeL().length; p++) {
                double volumeL = totals.volumeL()[p];
                double targetL = totals.targetVolumeL()[p];
                cells.add(JsonNumbers.text(volumeL, JsonNumbers.VOLUME_L));
                cells.add(JsonNumbers.text(targetL, JsonNumbers.VOLUME_L));
                cells.add(JsonNumbers.text(totals.deviationPct(p), JsonNumbers.PCT));
            }
            Intervals.OfPass of = a.intervals().passes().get(i);
            Cells.bounds(cells, of.sweptAreaM2(), 1, JsonNumbers.AREA_M2);
            for (Intervals.OfPassProduct product : of.products()) {
                Cells.bounds(cells, product.volumeL(), 1, JsonNumbers.VOLUME_L);
                Cells.bounds(cells, product.deviationPct(), 1, JsonNumbers.PCT);
            }
            Cells.record(csv, cells);
        }
        csv.flush();
    }

    /** Degrees clockwise from north in [0, 360), as rounded to a tenth. */
    private static double compassDeg(double headingRad) {
        double tenths = Math.rint(Math.toDegrees(headingRad) * 10);
        return ((tenths % 3600) + 3600) % 3600 / 10;
    }
}
