package io.rowledger.report.findings;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.finding.Finding;
import io.rowledger.log.LogTable;
import io.rowledger.report.common.JobTimes;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import io.rowledger.units.UnitFormat;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * What a job's results keep of its diagnosis, so that a later job can be compared with it.
 *
 * @param field the field's name as entered, or empty
 * @param rig the rig's name
 * @param zone the zone times are printed in
 * @param startS start of the first pass, seconds since the Unix epoch; NaN for a log without one
 * @param endS end of the last pass
 * @param rows number of rows
 * @param fastestPassMps mean speed of the fastest pass, m/s; NaN without one
 * @param products one a product, in rig order
 * @param findings most certain first
 * @param notes what could not be evaluated and why
 */
public record SavedDiagnosis(
        String field,
        String rig,
        String zone,
        double startS,
        double endS,
        int rows,
        double fastestPassMps,
        List<ProductState> products,
        List<SavedFinding> findings,
        List<Message> notes) {
    /** Copies the lists. */
    public SavedDiagnosis {
        products = List.copyOf(products);
        findings = List.copyOf(findings);
        notes = List.copyOf(notes);
    }

    /**
     * One product.
     *
     * @param key its key in the rig file
     * @param name its name
     * @param meters the rows of each meter that feeds several, from 1: figures of these rows are the meter's
     * @param picture deviation by row and time
     * @param rows how each row did over the job, from the left
     * @param baselines what rows are like when healthy; may lack rows
     */
    public record ProductState(
            String key,
            String name,
            List<List<Integer>> meters,
            RowPicture picture,
            List<RowHealth> rows,
            List<RowBaseline> baselines) {
        /** Copies the lists. */
        public ProductState {
            meters = meters.stream().map(List::copyOf).toList();
            rows = List.copyOf(rows);
            baselines = List.copyOf(baselines);
        }
    }

    /** A finding with the key of its product and its figures. */
    public record SavedFinding(String product, Finding finding, List<Figure> figures) {
        /** Copies the figures. */
        public SavedFinding {
            figures = List.copyOf(figures);
        }
    }

    /** The saved diagnosis of a job. */
    public static SavedDiagnosis of(Rig rig, LogTable log, Track track, Diagnosis d, ZoneId zone) {
        JobTimes times = JobTimes.of(track, log, zone);
        List<ProductState> products = new ArrayList<>();
        for (int p = 0; p < d.pictures().size(); p++) {
            Product product = rig.products().get(p);
            RowTime picture = d.pictures().get(p);
            int index = p;
            products.add(new ProductState(
                    product.key(),
                    product.name(),
                    MeterLanes.of(log, p, rig.rows()).rows().stream()
                            .filter(lane -> lane.size() > 1)
                            .toList(),
                    RowPicture.of(picture),
                    RowHealth.of(picture),
                    d.baselines().stream().filter(row -> row.product() == index).toList()));
        }
        List<SavedFinding> findings = new ArrayList<>();
        for (int i = 0; i < d.findings().size(); i++) {
            Product product = rig.products().get(d.windows().get(i).product());
            findings.add(new SavedFinding(
                    product.key(), d.findings().get(i), d.figures().get(i)));
        }
        double fastest = Double.NaN;
        for (Pass pass : UnitFormat.isKnown(times.startS()) ? track.passes() : List.<Pass>of()) {
            double speed = pass.lengthM() / (pass.endS() - pass.startS());
            fastest = Double.isNaN(fastest) ? speed : Math.max(fastest, speed);
        }
        return new SavedDiagnosis(
                rig.job().facts().getOrDefault("field", "").strip(),
                rig.name(),
                zone.getId(),
                times.startS(),
                times.endS(),
                rig.rows(),
                fastest,
                products,
                findings,
                d.notes());
    }
}
