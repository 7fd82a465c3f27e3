package io.rowledger.coverage.grid;

/**
 * Distribution of one product's received rate over the covered ground, weighted by area.
 *
 * @param meanRateLPerM2 volume ÷ covered area, L/m²
 * @param cvPct coefficient of variation over the covered area, percent
 * @param within5Pct share of covered area whose received rate is within 5 % of the target there, percent; NaN without a
 *     target
 * @param within10Pct the same for 10 %
 * @param within20Pct the same for 20 %
 * @param underPct share below target − 10 %, percent
 * @param overPct share above target + 10 %, percent
 * @param histogramM2 covered area per class of received ÷ target, m²: class i is [i·0.05, (i+1)·0.05), the last is open
 * @param gridVolumeL sum over the grid, L
 * @param logVolumeL sum of flow × time over the log's working steps, L
 */
public record ReceivedStatistics(
        double meanRateLPerM2,
        double cvPct,
        double within5Pct,
        double within10Pct,
        double within20Pct,
        double underPct,
        double overPct,
        double[] histogramM2,
        double gridVolumeL,
        double logVolumeL) {
    /** Returns the relative difference of grid volume and log volume. */
    public double conservationError() {
        return logVolumeL == 0 ? gridVolumeL : gridVolumeL / logVolumeL - 1;
    }
}
