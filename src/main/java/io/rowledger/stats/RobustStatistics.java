package io.rowledger.stats;

import java.util.Arrays;

/**
 * Median, spread and outlyingness that a few bad values cannot move.
 *
 * <p>MAD is the median of the absolute deviations from the median; 1.4826 = 1/Φ⁻¹(0.75) times it estimates σ of a normal
 * distribution. The modified z is 0.6745·(x − median)/MAD, an outlier beyond 3.5: B. Iglewicz, D. C. Hoaglin, How to
 * Detect and Handle Outliers, ASQC Basic References in Quality Control vol. 16, 1993, section 3.3. Where more than half
 * of the values are equal the MAD is 0; then σ is 1.2533 = √(π/2) times the mean absolute deviation from the median.
 */
public final class RobustStatistics {
    /** 1/Φ⁻¹(0.75). */
    public static final double MAD_TO_SIGMA = 1.482602218505602;

    /** √(π/2): mean absolute deviation of a normal distribution to its σ. */
    public static final double MEAN_DEVIATION_TO_SIGMA = 1.2533141373155001;

    /** Beyond this modified z a value is an outlier (Iglewicz and Hoaglin 1993). */
    public static final double OUTLIER_Z = 3.5;

    private RobustStatistics() {}

    /** Median of the first n values, the mean of the middle two where n is even; reorders them. NaN for none. */
    public static double median(double[] values, int n) {
        if (n == 0) {
            return Double.NaN;
        }
        int middle = n / 2;
        double upper = select(values, n, middle);
        if ((n & 1) == 1) {
            return upper;
        }
        double lower = values[0];
        for (int i = 1; i < middle; i++) {
            lower = Math.max(lower, values[i]);
        }
        return (lower + upper) / 2;
    }

    /** Median; leaves the values as they are. */
    public static double median(double[] values) {
        return median(values.clone(), values.length);
    }

    /** Robust σ: 1.4826 × MAD, or 1.2533 × mean absolute deviation where the MAD is 0. NaN for no values. */
    public static double sigma(double[] values) {
        double median = median(values);
        double[] off = Arrays.stream(values).map(x -> Math.abs(x - median)).toArray();
        double mean = Arrays.stream(off).average().orElse(Double.NaN);
        double mad = median(off, off.length);
        return mad > 0 ? MAD_TO_SIGMA * mad : MEAN_DEVIATION_TO_SIGMA * mean;
    }

    /** Modified z of x among the values; 0 where all of them equal x. */
    public static double modifiedZ(double x, double[] values) {
        double off = x - median(values);
        return off == 0 ? 0 : off / sigma(values);
    }

    /** The k-th smallest of the first n, from 0; reorders them. C. A. R. Hoare, Algorithm 65: Find, Comm. ACM 4 (1961) 321. */
    public static double select(double[] a, int n, int k) {
        int low = 0;
        int high = n - 1;
        while (low < high) {
            double pivot = a[(low + high) >>> 1];
            int i = low;
            int j = high;
            while (i <= j) {
                while (a[i] < pivot) {
                    i++;
                }
                while (a[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double kept = a[i];
                    a[i++] = a[j];
                    a[j--] = kept;
                }
            }
            if (k <= j) {
                high = j;
            } else if (k >= i) {
                low = i;
            } else {
                break;
            }
        }
        return a[k];
    }
}
