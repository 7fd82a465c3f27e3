package io.rowledger.document.chart;

/** Round numbers for axes and scale bars: 1, 2 and 5 times a power of ten. */
public final class Axis {
    private Axis() {}

    /** The largest round number not above x (positive). */
    public static double roundDown(double x) {
        double power = Math.pow(10, Math.floor(Math.log10(x)));
        double lead = x / power;
        return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
    }

    /** The smallest round number not below x (positive). */
    public static double roundUp(double x) {
        double power = Math.pow(10, Math.floor(Math.log10(x)));
        double lead = x / power;
        return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }

    /** A step that puts about {@code n} marks on a span. */
    public static double step(double span, int n) {
        return roundUp(span / n);
    }

    /** Decimals a mark of this step needs. */
    public static int decimals(double step) {
        return (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    }
}
