package io.rowledger.diagnose.setup;

/**
 * One measure of the setup as the log shows it.
 *
 * @param what which
 * @param product index of the product in rig order, −1 where it is not about one
 * @param key path of the line in the rig file, such as {@code rig.hitch_to_drop}
 * @param was what the rig file says, SI (m, s or a share); NaN where it says nothing that is a number
 * @param is what the log says, SI; NaN where it can't tell
 * @param low lower end of the 90 % interval; NaN where it can't tell
 * @param high upper end of the 90 % interval
 * @param differs true where the log contradicts the rig file
 * @param basis what the estimate rests on, or why the log can't tell and what driving would let it; a sentence or two
 * @param alternative what else would look the same; empty where nothing is told
 */
public record SetupParameter(
        SetupMeasurement what,
        int product,
        String key,
        double was,
        double is,
        double low,
        double high,
        boolean differs,
        String basis,
        String alternative) {
    /** True where the log has an answer. */
    public boolean told() {
        return !Double.isNaN(is);
    }

    /** What the rig file would have to be changed by, SI. */
    public double change() {
        return is - was;
    }

    static SetupParameter untold(SetupMeasurement what, int product, String key, double was, String why) {
        return new SetupParameter(what, product, key, was, Double.NaN, Double.NaN, Double.NaN, false, why, "");
    }

    /** A measure with a normal error; it differs where it is that many sigmas and at least so much away. */
    static SetupParameter of(
            SetupMeasurement what,
            int product,
            String key,
            double was,
            Estimate estimate,
            String basis,
            String alternative) {
        double half = Estimate.Z90 * estimate.sigma();
        return new SetupParameter(
                what,
                product,
                key,
                was,
                estimate.value(),
                estimate.value() - half,
                estimate.value() + half,
                estimate.differsFrom(was),
                basis,
                alternative);
    }
}
