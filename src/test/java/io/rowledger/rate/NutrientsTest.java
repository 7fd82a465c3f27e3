package io.rowledger.rate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.rate.RowTotals.ProductTotals;
import io.rowledger.rate.RowTotals.TurnError;
import io.rowledger.rig.Band;
import io.rowledger.rig.BarLengths;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Worked by hand with round figures. */
class NutrientsTest {
    /** 1.25 kg/L of 32 %: 0.4 kg N a liter. */
    private static final Product UAN = new Product("uan", "UAN", 1.25, 0.32, 0, 0, 0, Double.NaN, 0);
    /** 1.4 kg/L of 10-34-0: 0.14 kg N and 0.476 kg P2O5 a liter. */
    private static final Product APP = new Product("app", "Starter", 1.4, 0.10, 0.34, 0, 0, Double.NaN, 0);
    /** 1.3 kg/L of 12-0-0-26: 0.156 kg N and 0.338 kg S a liter. */
    private static final Product ATS = new Product("ats", "ATS", 1.3, 0.12, 0, 0, 0.26, Double.NaN, 0);

    private static final double NAN = Double.NaN;

    private static Nutrients of(Job job, List<Product> products, double... liter) {
        List<Band> bands = List.of(new Band(1, -0.5, -1, 0, 1, null), new Band(2, 0.5, 0, 1, 1, null));
        Rig rig = Rig.of("test", BarLengths.mounted(0, 0, 0), bands, products, job);
        TurnError none = new TurnError(0, 0, 0, 0, 0);
        // The first row took a quarter of every product.
        List<RowTotals> rows = List.of(
                new RowTotals(1, 1, 1, none, none, share(0.25, liter)),
                new RowTotals(2, 1, 1, none, none, share(0.75, liter)));
        return Nutrients.of(rig, new Rates(rows, List.of(), List.of(), 2, 0), 10_000);
    }

    private static List<ProductTotals> share(double share, double... liter) {
        return java.util.Arrays.stream(liter)
                .mapToObj(l -> new ProductTotals(share * l, NAN, NAN, 0))
                .toList();
    }

    @Test
    void several_products_add_up_nutrient_by_nutrient() {
        Nutrients n = of(Job.NONE, List.of(UAN, APP, ATS), 200, 50, 40);
        assertEquals(250, n.products().get(0).massKg(), 1e-9);
        assertEquals(80, n.products().get(0).kg().nitrogenKg(), 1e-9);
        assertEquals(80 + 7 + 6.24, n.jobKg().nitrogenKg(), 1e-9);
        assertEquals(23.8, n.jobKg().phosphateKg(), 1e-9);
        assertEquals(0, n.jobKg().potashKg(), 1e-9);
        assertEquals(13.52, n.jobKg().sulfurKg(), 1e-9);
        assertEquals(0.009324, n.jobNitrogenKgPerM2(), 1e-12);
        assertEquals(List.of(), n.missing());
    }

    @Test
    void what_came_before_and_credits_lie_on_the_covered_ground() {
        Job job = new Job(
                Map.of(),
                List.of(
                        new EarlierApplication("2026-04-20", "Starter", 0.001, 0.004, 0, 0, ""),
                        new EarlierApplication("2025-11-03", "Manure", 0.003, NAN, NAN, NAN, "")),
                List.of(new Credit("Soybeans", 0.002, "")),
                0.018,
                0.02,
                Map.of(),
                List.of(),
                Map.of(),
                List.of());
        Nutrients n = of(job, List.of(UAN), 250);
        // On a hectare: 100 kg by this job, 40 kg before, 20 kg credit.
        assertEquals(100, n.jobKg().nitrogenKg(), 1e-9);
        assertEquals(40, n.earlierKg().nitrogenKg(), 1e-9);
        assertEquals(20, n.creditKg(), 1e-9);
        assertEquals(160, n.totalNitrogenKg(), 1e-9);
        assertEquals(0.016, n.totalNitrogenKgPerM2(), 1e-12);
        assertEquals(0.006, Nutrients.beforeKgPerM2(job), 1e-12);
        // Nobody said how much phosphate the manure held, so the sum isn't known; the nitrogen is.
        assertTrue(Double.isNaN(n.earlierKg().phosphateKg()));
    }

    @Test
    void without_density_or_analysis_the_total_is_unknown_and_says_why() {
        Product noDensity = new Product("uan", "UAN", NAN, 0.32, 0, 0, 0, NAN, 0);
        Product neither = new Product("mix", "Mix", NAN, NAN, NAN, NAN, NAN, NAN, 0);
        Nutrients n = of(Job.NONE, List.of(APP, noDensity, neither), 50, 200, 10);
        assertEquals(7, n.products().get(0).kg().nitrogenKg(), 1e-9);
        assertTrue(Double.isNaN(n.jobKg().nitrogenKg()), "a part is not a total");
        assertTrue(Double.isNaN(n.totalNitrogenKgPerM2()));
        assertEquals(
                List.of(
                        "UAN has no density in the rig file, so its nitrogen and the job's are not known.",
                        "Mix has no density and no analysis in the rig file, so its nitrogen and the job's are not known."),
                n.missing());
    }

    @Test
    void a_product_that_was_not_put_on_leaves_the_total_known() {
        Product neither = new Product("mix", "Mix", NAN, NAN, NAN, NAN, NAN, NAN, 0);
        Nutrients n = of(Job.NONE, List.of(UAN, neither), 100, 0);
        assertEquals(40, n.jobKg().nitrogenKg(), 1e-9);
        assertEquals(List.of(), n.missing());
    }
}
