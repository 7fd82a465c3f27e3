package io.rowledger.log.read;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogHints.Counts;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.RowMapping;
import io.rowledger.log.source.NumberParser;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

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

    /**
     * A record with less of the flow beside it than this stands at a start or stop: of its one interval with flow a share f was on,
     * which gives it f/2 and at most a half. Without it the edge is known to half an interval, with it only to a whole one.
     */
    private static final double MAX_EDGE_SHARE = 0.55;

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
        return written == LogQuantity.VOLUME || written == LogQuantity.BAR_VOLUME || written == LogQuantity.COUNT;
    }

    private static boolean isCounted(ColumnPlan.Column column) {
        return column.written().isVolume() || column.written().isCount();
    }

    private static Counts counts(ColumnPlan.Column column, LogHints hints) {
        Counts given = hints.counts();
        return switch (column.written()) {
            case VOLUME_TOTAL, BAR_VOLUME_TOTAL, COUNT_TOTAL -> Counts.TOTAL;
            case VOLUME_SINCE_LAST, BAR_VOLUME_SINCE_LAST, COUNT_SINCE_LAST -> Counts.SINCE_LAST;
            default -> given == null ? Counts.SINCE_LAST : given;
        };
    }

    private static UnusableInputException ask(LogPreview preview, ColumnPlan.Column column) {
        List<String> texts = preview.texts(column.index());
        double sum = 0;
        for (int i = 1; i < texts.size(); i++) {
            sum += NumberParser.parse(texts.get(i), preview.mark());
        }
        double first = texts.isEmpty() ? Double.NaN : NumberParser.parse(texts.get(0), preview.mark());
        double last = texts.isEmpty() ? Double.NaN : NumberParser.parse(texts.get(texts.size() - 1), preview.mark());
        String figures = texts.size() > 2
                ? texts.get(0) + ", " + texts.get(1) + " to " + texts.get(texts.size() - 1)
                : String.join(", then ", texts);
        String unit = column.unit();
        return preview.found(
                        column,
                        String.format(
                                Locale.ROOT,
                                "%s %s in the first %d records, which is %s out in all if each counts from the record before, and "
                                        + "%s if it is a running total",
                                figures,
                                unit,
                                texts.size(),
                                amount(sum, unit),
                                amount(last - first, unit)))
                .kind(RefusalKind.COUNTS)
                .expected("what the volume counts from")
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

    /** Returns how a column was read, for the table of columns; nothing for a plain flow. */
    static List<Message> remarks(ColumnPlan.Column column, LogHints hints) {
        if (!isCounted(column)) {
            return List.of();
        }
        boolean total = counts(column, hints) == Counts.TOTAL;
        boolean pulses = column.written().isCount();
        return List.of(
                pulses
                        ? Message.of(total ? "notes.column.pulsesTotal" : "notes.column.pulsesSince")
                        : Message.of(total ? "notes.column.volumeTotal" : "notes.column.volumeSince"));
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
    public static void toFlows(FileLog file) {
        RecordReader reader = file.reader();
        RawLog log = reader.log();
        int falls = 0;
        List<String> fell = new ArrayList<>();
        List<String> coarse = new ArrayList<>();
        String step = "";
        double evenedS = 0;
        for (int k = 0; k < log.numbers.length; k++) {
            ColumnPlan.Column column = reader.numberColumns().get(k);
            if (isCounted(column)) {
                CoarseTotals.Evened evened = CoarseTotals.even(log.numbers[k], log, working(file, column));
                if (evened != null) {
                    coarse.add(column.header());
                    step = amount(evened.stepL() / column.toSi(), column.unit());
                    evenedS = Math.max(evenedS, evened.overS());
                }
                int before = falls;
                falls += flows(log, log.numbers[k]);
                if (falls > before) {
                    fell.add(column.header());
                }
            }
        }
        if (falls > 0) {
            file.notes().add(Message.of("notes.log.totalizer", falls, named(fell)));
        }
        if (!coarse.isEmpty()) {
            file.evened(evenedS);
            file.notes().add(Message.of("notes.log.coarseTotal", named(coarse), step, Message.duration(evenedS)));
        }
    }

    private static String named(List<String> headers) {
        return headers.size() > 3
                ? headers.get(0) + " and " + (headers.size() - 1) + " more"
                : String.join(", ", headers);
    }

    /**
     * Returns whether liquid may flow through a meter, by record: the bar down, one of its rows commanded on and a width that is not
     * zero, as far as the log tells; null if it tells none of them.
     */
    private static boolean @Nullable [] working(FileLog file, ColumnPlan.Column column) {
        RawLog log = file.log();
        boolean[] working = new boolean[log.records];
        Arrays.fill(working, true);
        byte[] down = file.states(LogQuantity.DOWN);
        double[] widthM = column.role().row() == 0 ? file.numbers(LogQuantity.WIDTH) : new double[0];
        List<byte[]> on = new ArrayList<>();
        int product = Math.max(0, file.plan().products().indexOf(column.role().product()));
        RowMapping rows = file.plan().rows();
        for (int row : rows.rowsOfMeter(product, column.role().row())) {
            byte[] states = file.states(LogQuantity.ON, rows.sectionOf(row));
            if (!on.contains(states)) {
                on.add(states);
            }
        }
        boolean switched = on.stream().allMatch(states -> states.length > 0);
        if (down.length == 0 && widthM.length == 0 && !switched) {
            return null;
        }
        for (int i = 0; i < working.length; i++) {
            boolean off = switched;
            for (int s = 0; off && s < on.size(); s++) {
                off = on.get(s)[i] == 0;
            }
            working[i] = !off && (down.length == 0 || down[i] != 0) && (widthM.length == 0 || widthM[i] != 0);
        }
        return working;
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
        gatherEdges(log, total);
        return falls;
    }

    /**
     * Moves the little that stands at a record just before a start or just after a stop to the record beside it: an interval of
     * which a part was off is shared by both its records, and ground would count as covered where nothing ran yet.
     */
    private static void gatherEdges(RawLog log, double[] flow) {
        for (int i = 1; i + 1 < log.records; i++) {
            if (flow[i] > 0 && flow[i - 1] == 0 && isEdge(log, flow, i, 1)) {
                move(log, flow, i, i + 1);
            } else if (flow[i] > 0 && flow[i + 1] == 0 && isEdge(log, flow, i, -1)) {
                move(log, flow, i, i - 1);
            }
        }
    }

    /** Returns true if record i has a small part of the flow of the two records beyond it. */
    private static boolean isEdge(RawLog log, double[] flow, int i, int direction) {
        int second = i + 2 * direction;
        if (second < 1 || second + 1 >= log.records) {
            return false;
        }
        for (int k = Math.min(i - 1, second); k < Math.max(i + 1, second); k++) {
            if (log.gapBefore[k + 1] || lengthS(log, k) > MIN_PAUSE_RATIO * lengthS(log, i)) {
                return false;
            }
        }
        return flow[i + direction] > flow[i] && flow[i] < MAX_EDGE_SHARE * flow[second];
    }

    private static double lengthS(RawLog log, int i) {
        return log.timeS[i + 1] - log.timeS[i];
    }

    /** Moves the volume of a record to another: each stands for the half intervals on either side of it. */
    private static void move(RawLog log, double[] flow, int from, int to) {
        double fromS = log.timeS[from + 1] - log.timeS[from - 1];
        double toS = log.timeS[to + 1] - log.timeS[to - 1];
        flow[to] += flow[from] * fromS / toS;
        flow[from] = 0;
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
