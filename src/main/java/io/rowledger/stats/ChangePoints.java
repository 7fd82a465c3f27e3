package io.rowledger.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the level of a sequence changes: binary segmentation with the CUSUM statistic.
 *
 * <p>A segment of n values is cut where the cumulative sum of deviations from its mean is largest once standardised,
 * |mean₁ − mean₂|·√(n₁·n₂/n), as long as that exceeds a threshold, and its halves are cut in turn. Cumulative sums: E. S.
 * Page, Continuous inspection schemes, Biometrika 41 (1954) 100-115; binary segmentation: A. J. Scott, M. Knott,
 * Biometrics 30 (1974) 507-512. Costs O(n log n).
 */
public final class ChangePoints {
    private final double threshold;
    private final double minJump;
    private final int minLength;

    /**
     * Segmentation with these limits.
     *
     * @param threshold the statistic must exceed this, in the unit of the values
     * @param minJump smaller changes of level are ignored
     * @param minLength shortest segment, values
     */
    public ChangePoints(double threshold, double minJump, int minLength) {
        this.threshold = threshold;
        this.minJump = minJump;
        this.minLength = Math.max(1, minLength);
    }

    /** The starts of the segments of the first n values, rising; the first is 0. */
    public int[] starts(double[] values, int n) {
        double[] sum = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + values[i];
        }
        List<Integer> starts = new ArrayList<>();
        starts.add(0);
        cut(sum, 0, n, starts);
        return starts.stream().mapToInt(Integer::intValue).sorted().toArray();
    }

    private void cut(double[] sum, int from, int end, List<Integer> starts) {
        int n = end - from;
        int best = -1;
        double most = threshold;
        double total = sum[end] - sum[from];
        for (int i = from + minLength; i <= end - minLength; i++) {
            double n1 = i - from;
            double n2 = end - i;
            double jump = (total - (sum[i] - sum[from])) / n2 - (sum[i] - sum[from]) / n1;
            double statistic = Math.abs(jump) * Math.sqrt(n1 * n2 / n);
            if (statistic > most && Math.abs(jump) * Math.sqrt(n / Math.min(n1, n2)) >= minJump) {
                most = statistic;
                best = i;
            }
        }
        if (best >= 0) {
            starts.add(best);
            cut(sum, from, best, starts);
            cut(sum, best, end, starts);
        }
    }
}
