package io.rowledger.log.read;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogHints.Counts;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Converts volumes or pulses, incremental or running totals, to flows.
 *
 * <p>A record stands for the half intervals on either side of it. With V the volume of an interval and dt its length, the
 * volume of those halves at even flow is (V₀ + V₁)/2, so the flow at the record is
 *
 * <p>q = (V₀ + V₁) / (dt₀ + dt₁):
 *
 * <p>This keeps volumes and puts the flow at the record's own time instead of half an interval late. At a gap, at either
 * end, where a total falls (a meter reset or rolled over) and beside a pause, the one whole interval is used.
 */
public final class TotalizerFlow {
    /** Ratio to the neighboring interval from which an interval is a pause of the logger. */
    private static final double MIN_PAUSE_RATIO = 3;

    private TotalizerFlow() {}

    /** Throws if the start of volumes or the number of pulses per liter is unknown. */
    static void requireHints(LogPreview preview) {
        for (ColumnPlan.Column column : preview.plan().columns()) {
            if (isCounted(column)) {
                if (column.written().isCount() && Double.isNaN(column.toSi())) {
                    throw preview.found(column, "pulses without a number of pulses per gallon or liter")
                            .kind(RefusalKind.PULSES)
                            .expected("the calibration of the row meters")
                            .hint("write log: {pulses: 2800 per gal} in the rig file, with your meter's number");
                }
                if (isOpen(column.written()) && preview.hints().counts() == null) {
                    throw ask(preview, column);
                }
            }
        }
    }

    private static boolean isOpen(LogQuantity written) {
        return written == LogQuantity.VOLUME || written == LogQuantity.COUNT;
    }

    private static boolean isCounted(ColumnPlan.Column column) {
        return column.written().isVolume() || column.written().isCount();
    }

    private static Counts counts(ColumnPlan.Column column, LogHints hints) {
        Counts given = hints.counts();
        return switch (column.written()) {
            case VOLUME_TOTAL, COUNT_TOTAL -> Counts.TOTAL;
            case VOLUME_SINCE_LAST, COUNT_SINCE_LAST -> Counts.SINCE_LAST;
            default -> given == null ? Counts.SINCE_LAST : given;
        };
    }

    private static UnusableInputException ask(LogPreview preview, ColumnPlan.Column column) {
        List<String> texts = preview.texts(column.index());
        String figures = texts.size() > 1 ? texts.get(0) + ", then " + texts.get(1) : String.join("", texts);
        double first = texts.isEmpty() ? Double.NaN : NumberParser.parse(texts.get(0), preview.mark());
        double second = texts.size() > 1 ? NumberParser.parse(texts.get(1), preview.mark()) : Double.NaN;
        String unit = column.unit();
        return preview.found(
                        column,
                        String.format(
                                Locale.ROOT,
                                "%s %s, which is %s out from the first record to the second if it counts from the record "
                                        + "before, and %s if it is a total",
                                figures,
                                unit,
                                amount(second, unit),
                                amount(second - first, unit)))
                .kind(RefusalKind.COUNTS)
                .expected("the start that the volume counts from")
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

    /** Returns how a column was read, for the table of columns; empty for a plain flow. */
    static String remark(ColumnPlan.Column column, LogHints hints) {
        if (!isCounted(column)) {
            return "";
        }
        String what = column.written().isCount() ? "pulses" : "volume";
        return counts(column, hints) == Counts.TOTAL
                ? what + " in all, as a flow"
                : what + " since the record before, as a flow";
    }

    /** Converts increments to totals before cleaning, so that no volume is lost with a record left out. */
    public static void toTotals(RecordReader reader, LogHints hints) {
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

    /** Converts totals to flows, L/s, after cleaning. Times must rise. */
    public static void toFlows(RecordReader reader, List<Message> notes) {
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
            notes.add(Message.of(
                    "notes.log.totalizer",
                    falls,
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
        if (Double.isNaN(before) || (beforeS > MIN_PAUSE_RATIO * afterS && !Double.isNaN(after))) {
            return after / afterS;
        }
        if (Double.isNaN(after) || afterS > MIN_PAUSE_RATIO * beforeS) {
            return before / beforeS;
        }
        return (before + after) / (beforeS + afterS);
    }
}
