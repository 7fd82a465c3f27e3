package io.rowledger.report.record;

import io.rowledger.rate.Nutrients;
import io.rowledger.report.record.NitrogenGrid.Shares;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import java.util.List;

/**
 * The received ground compared with the plan, or without a plan with the products' targets.
 *
 * @param perM2 plan or mean target, kg/m² of nitrogen or L/m² as in the grid; NaN if there is neither
 * @param earlierPerM2 earlier applications and credits that count toward the plan, kg/m²; 0 against a target
 * @param isPlan true for a plan of the job block, false for a target
 * @param shares shares of the covered ground
 */
record PlanComparison(double perM2, double earlierPerM2, boolean isPlan, Shares shares) {
    /**
     * Compares the ground with the plan of the job block, or without one with the targets.
     *
     * @param meanTargetLPerM2 mean target of each product, L/m²; NaN without a target
     */
    static PlanComparison of(NitrogenGrid ground, List<Product> products, Job job, List<Double> meanTargetLPerM2) {
        double earlier = Nutrients.beforeKgPerM2(job);
        if (ground.isNitrogen() && Double.isFinite(job.planKgPerM2()) && Double.isFinite(earlier)) {
            return new PlanComparison(job.planKgPerM2(), earlier, true, ground.against(job.planKgPerM2(), earlier));
        }
        double targetPerM2 = 0;
        for (int p = 0; p < products.size(); p++) {
            double perL = ground.isNitrogen() ? products.get(p).nitrogenKgPerL() : p == 0 ? 1 : 0;
            targetPerM2 += perL == 0 ? 0 : perL * meanTargetLPerM2.get(p);
        }
        return new PlanComparison(targetPerM2, 0, false, ground.againstTarget());
    }

    /** True if there is a plan or target and ground to compare with it. */
    boolean known() {
        return Double.isFinite(perM2) && Double.isFinite(shares.within());
    }
}
