package io.rowledger.diagnose.signal;

/**
 * What a row is like where no finding concerns it.
 *
 * @param product index of the product in rig order
 * @param row from 1 at the left
 * @param medianRatio median of its ratio to what its other rows imply, of rounded readings the ratio of the sums; NaN where it
 *     was never evaluated
 * @param spread robust standard deviation of the same, of means over a few seconds: 1.4826 × MAD
 * @param responseS time constant with which its flow follows speed and target, s; NaN where nothing moved enough to tell
 * @param evaluatedS time over which it was evaluated, s
 * @param outlier true where its median ratio stands apart from the other rows' (modified z beyond 3.5) and by more than
 *     meters usually differ
 */
public record RowBaseline(
        int product,
        int row,
        double medianRatio,
        double spread,
        double responseS,
        double evaluatedS,
        boolean outlier) {}
