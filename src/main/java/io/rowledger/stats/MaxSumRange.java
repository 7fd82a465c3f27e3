package io.rowledger.stats;

/**
 * The contiguous range with the largest sum of gains (maximum subarray): from when to when a fault shows. Kadane's
 * algorithm, J. Bentley, Programming pearls: algorithm design techniques, Comm. ACM 27 (1984) 865-873.
 *
 * @param from first index
 * @param end one past the last; equal to from where no gain is positive
 * @param sum of the gains in it
 */
public record MaxSumRange(int from, int end, double sum) {
    /** Of these gains; empty if none is positive. */
    public static MaxSumRange of(double[] gains) {
        MaxSumRange best = new MaxSumRange(0, 0, 0);
        int from = 0;
        double sum = 0;
        for (int i = 0; i < gains.length; i++) {
            if (sum <= 0) {
                from = i;
                sum = 0;
            }
            sum += gains[i];
            if (sum > best.sum) {
                best = new MaxSumRange(from, i + 1, sum);
            }
        }
        return best;
    }

    /** Extends the range over adjacent gains above -little. */
    public MaxSumRange widened(double[] gains, double little) {
        int low = from;
        int high = end;
        while (!isEmpty() && low > 0 && gains[low - 1] > -little) {
            low--;
        }
        while (!isEmpty() && high < gains.length && gains[high] > -little) {
            high++;
        }
        return new MaxSumRange(low, high, sum);
    }

    /** True if no gain was positive. */
    public boolean isEmpty() {
        return end <= from;
    }
}
