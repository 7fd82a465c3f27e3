package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogHints.Counts;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Flows written as volumes or pulses, since the record before or in all, as flows at the records.
 *
 * <p>A record answers for the half intervals on either side of it. With V the volume of an interval and dt its length,
 * taken as flowing evenly, what flowed in those two halves is (V₀ + V₁)/2, so the flow at the record is
 *
 * <p>q = (V₀ + V₁) / (dt₀ + dt₁):
 *
 * <p>volumes stay what they were, and the flow is that of the record's own time rather than half an interval late. At a
 * gap, at either end, where a total falls (a meter reset or rolled over) and beside a pause, the one whole interval
 * counts.
 */
public final class TotalizerFlow {
    /** An interval so much longer than its neighbor is a pause of the logger, not part of the record's own time. */
    private static final double PAUSE = 3;

    private TotalizerFlow() {}

    /** Asks where it is open what the volumes count from, or how many pulses make a litre. */
    static void settle(LogPreview sample) {
        for (ColumnPlan.Column column : sample.plan().columns()) {
            if (isCounted(column)) {
                if (column.written().isCount() && Double.isNaN(column.toSi())) {
                    throw sample.found(column, "pulses, and nothing that says how many make a gallon or a liter")
                            .expected("the calibration figure of the row meters")
                            .hint("write log: {pulses: 2800 per gal} in the rig file, with your meter's figure");
                }
                if (isOpen(column.written()) && sample.hints().counts() == null) {
                    throw ask(sample, column);
                }
            }
        }
    }

    private static boolean isOpen(LogQuantity written) {
        return written == LogQuantity.VOLUME || written == LogQuantity.COUNT;
    }

    private static boolean isCounted(ColumnPlan.Column column) {
        return column.role().measured() == LogQuantity.FLOW && column.written() != LogQuantity.FLOW;
    }

    private static Counts counts(ColumnPlan.Column column, LogHints hints) {
        Counts said = hints.counts();
        return switch (column.written()) {
            case VOLUME_TOTAL, COUNT_TOTAL -> Counts.TOTAL;
            case VOLUME_SINCE_LAST, COUNT_SINCE_LAST -> Counts.SINCE_LAST;
            default -> said == null ? Counts.SINCE_LAST : said;
        };
    }

    private static UnusableInputException ask(LogPreview sample, ColumnPlan.Column column) {
        List<String> texts = sample.texts(column.index());
        String figures = texts.size() > 1 ? texts.get(0) + ", then " + texts.get(1) : String.join("", texts);
        double first = texts.isEmpty() ? Double.NaN : NumberParser.parse(texts.get(0), sample.mark());
        double second = texts.size() > 1 ? NumberParser.parse(texts.get(1), sample.mark()) : Double.NaN;
        String unit = column.unit();
        return sample.found(
                        column,
                        String.format(
                                Locale.ROOT,
                                "%s %s, which is %s out from the first record to the second if it counts from the record "
                                        + "before, and %s if it is a total",
                                figures,
                                unit,
                                amount(second, unit),
                                amount(second - first, unit)))
                .expected("a word on what it counts from")
                .hint(
                        "write log: {counts: since_last} in the rig file for the first, log: {counts: total} for the second");
    }

    private static String amount(double value, String unit) {
        return !Double.isFinite(value)
                ? "an unknown amount"
                : new java.math.BigDecimal(value)
                                .round(new java.math.MathContext(4))
                                .stripTrailingZeros()
                                .toPlainString()
                        + " " + unit;
    }

    /** How a column was read, for the table of columns; empty for a plain flow. */
    static String remark(ColumnPlan.Column column, LogHints hints) {
        if (!isCounted(column)) {
            return "";
        }
        String what = column.written().isCount() ? "pulses" : "volume";
        return counts(column, hints) == Counts.TOTAL
                ? what + " in all, as a flow"
                : what + " since the record before, as a flow";
    }

    /** Before cleaning: adds up what counts from the record before, so that no record left out takes its volume along. */
    public static void addUp(RecordReader reader, LogHints hints) {
        RawLog log = reader.log();
        for (int k = 0; k < log.numbers.length; k++) {
            ColumnPlan.Column column = reader.numberColumns().get(k);
            if (isCounted(column) && counts(column, hints) == Counts.SINCE_LAST) {
                double total = 0;
                for (int i = 0; i < log.records; i++) {
                    double volume = log.numbers[k][i];
                    total += Double.isNaN(volume) ? 0 : volume;
                    log.numbers[k][i] = Double.isNaN(volume) ? Double.NaN : total;
                }
            }
        }
    }

    /** After cleaning, when times rise: totals to flows, L/s. */
    public static void differences(RecordReader reader, List<String> notes) {
        RawLog log = reader.log();
        int falls = 0;
        List<String> fell = new ArrayList<>();
        for (int k = 0; k < log.numbers.length; k++) {
            ColumnPlan.Column column = reader.numberColumns().get(k);
            if (isCounted(column)) {
                int before = falls;
                falls += flows(log, log.numbers[k]);
                if (falls > before) {
                    fell.add(column.header());
                }
            }
        }
        if (falls > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "A total fell %s, in %s: the meter was reset or started over. What flowed in that interval is taken from "
                            + "the one beside it.",
                    falls == 1 ? "once" : falls + " times",
                    fell.size() > 3 ? fell.get(0) + " and " + (fell.size() - 1) + " more" : String.join(", ", fell)));
        }
    }

    private static int flows(RawLog log, double[] total) {
        int falls = 0;
        double volumeBefore = Double.NaN;
        double lengthBeforeS = 0;
        double last = log.records > 0 ? total[0] : Double.NaN;
        for (int i = 0; i < log.records; i++) {
            double volume = Double.NaN;
            double lengthS = 0;
            if (i + 1 < log.records) {
                lengthS = log.timeS[i + 1] - log.timeS[i];
                volume = log.gapBefore[i + 1] ? Double.NaN : total[i + 1] - last;
                if (volume < 0) {
                    falls++;
                    volume = Double.NaN;
                }
                last = total[i + 1];
            }
            total[i] = flow(volumeBefore, lengthBeforeS, volume, lengthS);
            volumeBefore = volume;
            lengthBeforeS = lengthS;
        }
        return falls;
    }

    private static double flow(double before, double beforeS, double after, double afterS) {
        if (Double.isNaN(before) || (beforeS > PAUSE * afterS && !Double.isNaN(after))) {
            return after / afterS;
        }
        if (Double.isNaN(after) || afterS > PAUSE * beforeS) {
            return before / beforeS;
        }
        return (before + after) / (beforeS + afterS);
    }
}
