package io.rowledger.diagnose;

import io.rowledger.text.Message;

/**
 * A row, or the bar, that was off by more than the log resolves while no finding concerns it: the cause is not recognized.
 *
 * @param product index of the product in rig order
 * @param row from 1 at the left; 0 for the bar as a whole
 * @param fraction flow over what the other rows imply, or for the bar over the target, less 1
 * @param limit smallest deviation that is told, as a fraction
 * @param volumeL liquid too little (negative) or too much, L
 * @param evaluatedS time it was evaluated over, s
 */
public record Deviation(int product, int row, double fraction, double limit, double volumeL, double evaluatedS) {
    /** Meters differ by less than this, as a fraction; common practice, no source. */
    private static final double METERS = 0.05;

    /**
     * The smallest deviation that is told.
     *
     * @param rounding how far rounding can move a mean, over the usual flow, as a fraction
     */
    public static double limit(double rounding) {
        return METERS + rounding;
    }

    /** The deviation in a sentence. */
    public Message text() {
        return row == 0
                ? Message.of(
                        "findings.unexplained.bar", Message.percent(100 * (1 + fraction)), Message.duration(evaluatedS))
                : Message.of(
                        "findings.unexplained.row",
                        row,
                        Message.percent(100 * (1 + fraction)),
                        Message.duration(evaluatedS));
    }
}
