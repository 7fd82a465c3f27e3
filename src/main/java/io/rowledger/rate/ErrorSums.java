package io.rowledger.rate;

/** Running sums of a relative error, weighted by area. */
final class ErrorSums {
    private double areaM2;
    private double absM2;
    private double maxOver;
    private double maxUnder;
    private double beyond5M2;
    private double beyond10M2;

    /**
     * Adds an error.
     *
     * @param error as a fraction
     * @param errorAreaM2 its weight, m²
     * @param extreme true if it may be the largest over or under
     */
    void add(double error, double errorAreaM2, boolean extreme) {
        double abs = Math.abs(error);
        areaM2 += errorAreaM2;
        absM2 += abs * errorAreaM2;
        if (extreme) {
            maxOver = Math.max(maxOver, error);
            maxUnder = Math.min(maxUnder, error);
        }
        beyond5M2 += abs > DeviationLimits.WATCH ? errorAreaM2 : 0;
        beyond10M2 += abs > DeviationLimits.ACT ? errorAreaM2 : 0;
    }

    void add(ErrorSums other) {
        areaM2 += other.areaM2;
        absM2 += other.absM2;
        maxOver = Math.max(maxOver, other.maxOver);
        maxUnder = Math.min(maxUnder, other.maxUnder);
        beyond5M2 += other.beyond5M2;
        beyond10M2 += other.beyond10M2;
    }

    RowTotals.TurnError error() {
        double mean = areaM2 > 0 ? absM2 / areaM2 : Double.NaN;
        return new RowTotals.TurnError(mean, maxOver, maxUnder, beyond5M2, beyond10M2);
    }
}
