package io.rowledger.diagnose.setup;

import io.rowledger.text.Message;

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
        Message basis,
        Message alternative) {
    /** Returns true if the log determines the parameter. */
    public boolean determined() {
        return !Double.isNaN(estimate);
    }

    /** Returns estimate − given, SI: what the rig file's value would have to change by. */
    public double change() {
        return estimate - given;
    }

    static SetupMeasurement undetermined(SetupParameter parameter, int product, String key, double given, Message why) {
        return new SetupMeasurement(
                parameter,
                product,
                key,
                given,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                false,
                why,
                Message.of("findings.none"));
    }

    /** Returns the same measurement with another verdict. */
    SetupMeasurement withDiffers(boolean verdict) {
        return new SetupMeasurement(parameter, product, key, given, estimate, low, high, verdict, basis, alternative);
    }

    /** A measurement with a normal error; {@link Estimate#differsFrom} decides whether it contradicts the rig file. */
    static SetupMeasurement of(
            SetupParameter parameter,
            int product,
            String key,
            double given,
            Estimate estimate,
            Message basis,
            Message alternative) {
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
