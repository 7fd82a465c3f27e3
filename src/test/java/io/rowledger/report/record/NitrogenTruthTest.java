package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.document.pdf.Paper;
import io.rowledger.rate.Nutrients;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.rig.Product;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.Truth;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nitrogen of two products and an earlier application, log file to figures, against the simulator's own sums. */
class NitrogenTruthTest {
    private static final double LB_PER_AC = 0.45359237 / 4046.8564224;
    /** The project's own promise: half a percent of a row's nitrogen. */
    private static final double BOUND = 0.005;

    @Test
    void every_rows_nitrogen_and_the_fields_total_come_out_within_half_a_percent(@TempDir Path folder)
            throws IOException {
        SimProduct uan = SimProduct.uan32(30);
        SimProduct ats = SimProduct.ats(8);
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("field", "Two products");
        facts.put(
                "earlier",
                "- {date: 2026-04-28, what: Starter, rate: 5 gal/ac, density: 11.65 lb/gal, analysis: 10-34-0}");
        facts.put("credits", "- {what: Soybeans before, nitrogen: 30 lb/ac}");
        SimRig bar = SimRig.drawn(8);
        Truth truth = new Scenario(41, bar, PassPlan.rectangle(240, 8, 0, bar.widthM()))
                .products(uan, ats)
                .gnss(GnssModel.rtk(5))
                .job(facts)
                .run()
                .writeTo(folder)
                .truth();
        Analysis a = Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")),
                        folder.resolve("rig.yaml"),
                        folder.resolve("boundary.geojson")),
                2,
                Progress.SILENT);
        // By the simulator's products, not by the rig file: 32 % and 12 % N.
        double uanKgPerL = uan.densityKgPerL() * 0.32;
        double atsKgPerL = ats.densityKgPerL() * 0.12;
        List<Product> products = a.rig().products();
        double worst = 0;
        for (Truth.Row row : truth.rows()) {
            double real = row.volumeL()[0] * uanKgPerL + row.volumeL()[1] * atsKgPerL;
            double ours = 0;
            for (int p = 0; p < products.size(); p++) {
                double volumeL =
                        a.rates().rows().get(row.row() - 1).products().get(p).volumeL();
                ours += Nutrients.ofVolume(products.get(p), volumeL).kg().nitrogenKg();
            }
            worst = Math.max(worst, Math.abs(ours / real - 1));
        }
        assertTrue(worst <= BOUND, "worst row off by " + worst);

        Nutrients n = Nutrients.of(a.rig(), a.rates(), a.coverage().coveredAreaM2());
        double jobKg = truth.volumeL()[0] * uanKgPerL + truth.volumeL()[1] * atsKgPerL;
        double beforeKg = (5 * 11.65 * 0.10 + 30) * LB_PER_AC * truth.ground().coveredM2();
        assertEquals(jobKg, n.jobKg().nitrogenKg(), BOUND * jobKg);
        assertEquals(jobKg + beforeKg, n.totalNitrogenKg(), BOUND * (jobKg + beforeKg));
        double realPerM2 = (jobKg + beforeKg) / truth.ground().coveredM2();
        assertEquals(realPerM2, n.totalNitrogenKgPerM2(), BOUND * realPerM2);
        double onTheGroundKg = 0;
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        for (float kg : NitrogenRecordReport.input(a, options).ground().received()) {
            onTheGroundKg += kg;
        }
        assertEquals(jobKg, onTheGroundKg, BOUND * jobKg, "all places together");
        double sulfurKg = truth.volumeL()[1] * ats.densityKgPerL() * 0.26;
        assertEquals(sulfurKg, n.jobKg().sulfurKg(), BOUND * sulfurKg);
        double phosphateKg = 5 * 11.65 * 0.34 * LB_PER_AC * truth.ground().coveredM2();
        assertEquals(phosphateKg, n.earlierKg().phosphateKg(), BOUND * phosphateKg);
    }
}
