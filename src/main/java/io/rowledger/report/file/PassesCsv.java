package io.rowledger.report.file;

import io.rowledger.interval.Intervals;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.report.Analysis;
import io.rowledger.track.Pass;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** {@code passes.csv}: one line a pass; SI, units in the header, times ISO 8601 in UTC. */
final class PassesCsv {
    private PassesCsv() {}

    static void write(Analysis a, OutputStream out) throws IOException {
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
            cells.add(Objects.requireNonNullElse(Decimals.time(pass.startS()), ""));
            cells.add(Objects.requireNonNullElse(Decimals.time(pass.endS()), ""));
            cells.add(Decimals.text(pass.lengthM(), Decimals.LENGTH_M));
            cells.add(Decimals.text(compassDeg(pass.headingRad()), 1));
            cells.add(Decimals.text(totals.sweptAreaM2(), Decimals.AREA_M2));
            for (int p = 0; p < totals.volumeL().length; p++) {
                double volumeL = totals.volumeL()[p];
                double targetL = totals.targetVolumeL()[p];
                cells.add(Decimals.text(volumeL, Decimals.VOLUME_L));
                cells.add(Decimals.text(targetL, Decimals.VOLUME_L));
                cells.add(Decimals.text(targetL > 0 ? (volumeL / targetL - 1) * 100 : Double.NaN, Decimals.PCT));
            }
            Intervals.OfPass of = a.intervals().passes().get(i);
            Cells.bounds(cells, of.sweptAreaM2(), 1, Decimals.AREA_M2);
            for (Intervals.OfPassProduct product : of.products()) {
                Cells.bounds(cells, product.volumeL(), 1, Decimals.VOLUME_L);
                Cells.bounds(cells, product.deviationPct(), 1, Decimals.PCT);
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
