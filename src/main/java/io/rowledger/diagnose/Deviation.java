package io.rowledger.diagnose;

import io.rowledger.text.Message;
import java.util.List;

/**
 * A row, or the bar, that was off by more than the log resolves while no finding concerns it: the cause is not recognized.
 *
 * @param product index of the product in rig order
 * @param row from 1 at the left; 0 for the bar as a whole
 * @param fraction flow over what the other rows imply, or for the bar over the target, less 1
 * @param limit smallest deviation that is told, as a fraction
 * @param volumeL liquid too little (negative) or too much, L
 * @param evaluatedS time it was evaluated over, s
 * @param meter number of the meter, from 1, where it feeds several rows; else 0
 * @param together the rows of that meter, from 1; else empty
 * @param fromS begin of the spell in which the bar was off, epoch seconds; NaN for the whole job
 * @param toS its end
 */
public record Deviation(
        int product,
        int row,
        double fraction,
        double limit,
        double volumeL,
        double evaluatedS,
        int meter,
        List<Integer> together,
        double fromS,
        double toS) {
    /** Meters differ by less than this, as a fraction; common practice, no source. */
    private static final double METERS = 0.05;

    /** Copies the rows. */
    public Deviation {
        together = List.copyOf(together);
    }

    /** A row with a meter of its own, or the bar. */
    public Deviation(int product, int row, double fraction, double limit, double volumeL, double evaluatedS) {
        this(product, row, fraction, limit, volumeL, evaluatedS, 0, List.of(), Double.NaN, Double.NaN);
    }

    /** The same of all rows of a meter, which the log can't tell apart; {@code allL} of all of them together. */
    Deviation ofMeter(int number, List<Integer> rows, double allL) {
        return new Deviation(product, row, fraction, limit, allL, evaluatedS, number, rows, fromS, toS);
    }

    /** True for the bar in a part of the job. */
    public boolean isSpell() {
        return !Double.isNaN(fromS);
    }

    /** The same between two times, epoch seconds. */
    Deviation between(double beginS, double endS) {
        return new Deviation(product, row, fraction, limit, volumeL, evaluatedS, meter, together, beginS, endS);
    }

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
        if (meter > 0) {
            return Message.of(
                    "findings.unexplained.meter",
                    Message.of("findings.rows.meters", List.of(meter), together),
                    Message.percent(100 * (1 + fraction)),
                    Message.duration(evaluatedS),
                    together);
        }
        if (isSpell()) {
            return Message.of(
                    "findings.unexplained.barSpell",
                    Message.time(fromS),
                    Message.time(toS),
                    Message.percent(100 * (1 + fraction)),
                    Message.duration(evaluatedS));
        }
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
