package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.rate.Nutrients;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import java.util.ArrayList;
import java.util.List;

/**
 * Nitrogen of the job and what came before it, as sums over sums. Per area means per covered area, each place once.
 *
 * @param jobKg this job, all products, kg; NaN where a product's nitrogen is unknown
 * @param jobKgPerM2 the same per covered area
 * @param beforeKgPerM2 earlier applications and credits, kg/m²; NaN where an entry does not tell
 * @param unknown why the job's nitrogen is unknown, or empty
 */
record NitrogenSums(double jobKg, double jobKgPerM2, double beforeKgPerM2, String unknown) {
    static NitrogenSums of(Analysis a) {
        Nutrients nutrients = nutrients(a);
        List<String> why = new ArrayList<>();
        for (Nutrients.OfProduct one : nutrients.products()) {
            if (Double.isNaN(one.kg().nitrogenKg())) {
                why.add("the rig file gives no " + lacks(one.product()) + " for "
                        + TextTruncation.name(one.product().name()));
            }
        }
        return new NitrogenSums(
                nutrients.jobKg().nitrogenKg(),
                nutrients.jobNitrogenKgPerM2(),
                Nutrients.beforeKgPerM2(a.rig().job()),
                String.join(" and ", why));
    }

    /** The job's nutrients over the covered ground. */
    static Nutrients nutrients(Analysis a) {
        return Nutrients.of(a.rig(), a.rates(), a.coverage().coveredAreaM2());
    }

    private static String lacks(Product product) {
        List<String> lacks = new ArrayList<>();
        if (Double.isNaN(product.densityKgPerL())) {
            lacks.add("density");
        }
        if (Double.isNaN(product.nitrogenFraction())) {
            lacks.add("analysis");
        }
        return String.join(" and no ", lacks);
    }

    boolean known() {
        return Double.isFinite(jobKg);
    }

    /** This job and everything before it, kg/m²; NaN where a part is unknown. */
    double totalKgPerM2() {
        return jobKgPerM2 + beforeKgPerM2;
    }

    /** True where somebody entered nitrogen from before. */
    static boolean hasBefore(Job job) {
        return !job.earlier().isEmpty() || !job.credits().isEmpty();
    }
}
