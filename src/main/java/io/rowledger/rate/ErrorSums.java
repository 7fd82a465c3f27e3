package io.rowledger.rate;

/** Running sums of a relative error, weighted by area. */
final class ErrorSums {
    private double areaM2;
    private double absM2;
    private double maxOver;
    private double maxUnder;
    private double beyond5M2;
    private double beyond10M2;

    void add(double error, double area) {
        double abs = Math.abs(error);
        areaM2 += area;
        absM2 += abs * area;
        maxOver = Math.max(maxOver, error);
        maxUnder = Math.min(maxUnder, error);
        beyond5M2 += abs > 0.05 ? area : 0;
        beyond10M2 += abs > 0.10 ? area : 0;
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
