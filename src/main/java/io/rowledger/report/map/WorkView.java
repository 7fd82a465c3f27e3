package io.rowledger.report.map;

import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;

/**
 * What each row put down step by step, for maps near enough to show rows and for traces of passes.
 *
 * @param strips the ground of each row in each step
 * @param delivery what left each row in each step
 * @param product its place in the rig file
 * @param fallbackLPerM2 the rate that is compared with where a step has no target, L/m²
 */
public record WorkView(Strips strips, Delivery delivery, int product, double fallbackLPerM2) {
    /**
     * Volume ÷ target volume of rows over steps, sums over sums; NaN where nothing was swept or a flow is unknown.
     *
     * @param firstRow from 0
     * @param endRow one past the last row
     */
    public double ratio(int firstRow, int endRow, int firstStep, int endStep) {
        double volumeL = 0;
        double targetL = 0;
        for (int k = firstStep; k < endStep; k++) {
            if (!strips.poses().working(k)) {
                continue;
            }
            for (int r = firstRow; r < endRow; r++) {
                if (!delivery.known(product, r, k)) {
                    return Double.NaN;
                }
                double target = delivery.targetLPerM2(product, r, k);
                volumeL += delivery.flowLPerS(product, r, k) * strips.poses().durationS(k);
                targetL += (target > 0 ? target : fallbackLPerM2) * Math.max(0, strips.signedAreaM2(k, r));
            }
        }
        return targetL > 0 ? volumeL / targetL : Double.NaN;
    }
}
