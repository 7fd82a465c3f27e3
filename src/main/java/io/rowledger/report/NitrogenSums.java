package io.rowledger.report;

import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
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
        double jobKg = 0;
        List<String> why = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            Product product = a.rig().products().get(p);
            jobKg += ProductSums.of(a, p).volumeL() * product.nitrogenKgPerL();
            String lacks = lacks(product);
            if (!lacks.isEmpty()) {
                why.add("the rig file gives no " + lacks + " for " + product.name());
            }
        }
        double beforeKgPerM2 = 0;
        for (EarlierApplication earlier : a.rig().job().earlier()) {
            beforeKgPerM2 += earlier.nitrogenKgPerM2();
        }
        for (Credit credit : a.rig().job().credits()) {
            beforeKgPerM2 += credit.nitrogenKgPerM2();
        }
        return new NitrogenSums(jobKg, jobKg / a.coverage().coveredAreaM2(), beforeKgPerM2, String.join(" and ", why));
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
