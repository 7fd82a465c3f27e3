package io.rowledger.report.map;

/** Classes of rates by ascending bounds, as legends and tables of areas use them. */
public final class RateClasses {
    /** Relative slack against single-precision sums: a rate that equals a bound to six digits belongs below it (1). */
    public static final double FLOAT_SLACK = 1e-6;

    private RateClasses() {}

    /** The class of a rate: how many of the ascending bounds it exceeds. */
    public static int classOf(double ratePerM2, double[] boundsPerM2) {
        int k = 0;
        while (k < boundsPerM2.length && ratePerM2 > boundsPerM2[k] * (1 + FLOAT_SLACK)) {
            k++;
        }
        return k;
    }
}
