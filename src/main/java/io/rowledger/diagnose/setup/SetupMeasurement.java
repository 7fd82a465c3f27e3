package io.rowledger.diagnose.setup;

/**
 * One setup parameter as the log shows it, beside the rig file's value.
 *
 * @param parameter which parameter
 * @param product index of the product in rig order; −1 if the parameter belongs to no product
 * @param key path of the line in the rig file, such as {@code rig.hitch_to_drop}
 * @param given the rig file's value, SI (m, s, or a share of a row width); NaN if it is not a number
 * @param estimate the log's value, SI; NaN if the log does not determine it
 * @param low lower end of the 90 % interval; NaN if not determined
 * @param high upper end of the 90 % interval; NaN if not determined
 * @param differs true if the log contradicts the rig file
 * @param basis what the estimate rests on, or why the log does not determine it and what driving would
 * @param alternative what else would look the same; empty if the parameter is not determined
 */
public record SetupMeasurement(
        SetupParameter parameter,
        int product,
        String key,
        double given,
        double estimate,
        double low,
        double high,
        boolean differs,
        String basis,
        String alternative) {
    /** Returns true if the log determines the parameter. */
    public boolean determined() {
        return !Double.isNaN(estimate);
    }

    /** Returns estimate − given, SI: what the rig file's value would have to change by. */
    public double change() {
        return estimate - given;
    }

    static SetupMeasurement undetermined(SetupParameter parameter, int product, String key, double given, String why) {
        return new SetupMeasurement(parameter, product, key, given, Double.NaN, Double.NaN, Double.NaN, false, why, "");
    }

    /** A measurement with a normal error; {@link Estimate#differsFrom} decides whether it contradicts the rig file. */
    static SetupMeasurement of(
            SetupParameter parameter,
            int product,
            String key,
            double given,
            Estimate estimate,
            String basis,
            String alternative) {
        double half = Estimate.Z90 * estimate.sigma();
        return new SetupMeasurement(
                parameter,
                product,
                key,
                given,
                estimate.value(),
                estimate.value() - half,
                estimate.value() + half,
                estimate.differsFrom(given),
                basis,
                alternative);
    }
}
