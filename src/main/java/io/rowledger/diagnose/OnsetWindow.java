package io.rowledger.diagnose;

/**
 * What happened around the onset of a finding, a sample a record: for a chart.
 *
 * @param product index of the product in rig order
 * @param row the row shown, from 1 at the left; 0 where the finding concerns the whole bar (then flows are sums over
 *     all rows and {@code peersLPerS} is NaN)
 * @param onsetS the finding's first sign, seconds since the Unix epoch
 * @param timeS time of each sample, seconds since the Unix epoch, rising
 * @param flowLPerS the row's metered flow, L/s, lag taken out
 * @param peersLPerS what the other rows' median implies for this row's band and place, L/s; NaN where too few delivered
 * @param targetLPerS what the target asks of the row at its own speed, L/s; NaN without a target
 * @param speedMps forward speed of the bar, m/s
 */
public record OnsetWindow(
        int product,
        int row,
        double onsetS,
        double[] timeS,
        double[] flowLPerS,
        double[] peersLPerS,
        double[] targetLPerS,
        double[] speedMps) {}
