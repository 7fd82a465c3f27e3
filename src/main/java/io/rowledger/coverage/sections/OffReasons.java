package io.rowledger.coverage.sections;

import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.track.Poses;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Why rows had no flow: shut off by section control, or a fault of the row or its meter.
 *
 * <p>A row without flow that was commanded on is not shut off, one commanded off is. Without a command it counts as shut off
 * unless a fault of the row is known at that time: a plugged row is no section control.
 */
public final class OffReasons {
    /**
     * A fault that explains rows without flow.
     *
     * @param meter true if only the meter reads zero, while liquid flows
     * @param rows rows from 1; empty for all rows
     * @param fromS start, s since the Unix epoch
     * @param toS end, s since the Unix epoch
     */
    public record Fault(boolean meter, List<Integer> rows, double fromS, double toS) {
        /** Copies the rows. */
        public Fault {
            rows = List.copyOf(rows);
        }

        boolean holds(int row, double timeS) {
            return timeS >= fromS && timeS <= toS && (rows.isEmpty() || rows.contains(row));
        }
    }

    /** Tells whether a condition holds for a row (from 1), in a record of the log and a step, at a time (s since the epoch). */
    private interface Condition {
        boolean holds(int row, int step, int logRecord, double timeS);
    }

    private final @Nullable LogTable log;
    private final @Nullable Delivery delivery;
    private final List<Fault> faults;

    private OffReasons(@Nullable LogTable log, @Nullable Delivery delivery, List<Fault> faults) {
        this.log = log;
        this.delivery = delivery;
        this.faults = List.copyOf(faults);
    }

    /** No commands and no faults are known: every row without flow counts as shut off. */
    public static OffReasons unknown() {
        return new OffReasons(null, null, List.of());
    }

    /** Commands of the log, if it has any, and known faults; every flow counts as known. */
    public static OffReasons of(LogTable log, List<Fault> faults) {
        return new OffReasons(log, null, faults);
    }

    /** Commands of the log, if it has any, known faults, and which flows the log does not tell. */
    public static OffReasons of(LogTable log, Delivery delivery, List<Fault> faults) {
        return new OffReasons(log, delivery, faults);
    }

    /** Returns the share of a strip, by rows and time, in which section control had its rows shut off (1). */
    public double shutOffShare(StripPolygon strip, Poses poses) {
        return share(strip, poses, (row, step, logRecord, timeS) -> isShutOff(row, step, logRecord, timeS));
    }

    /** Returns the share of a strip, by rows and time, in which only the meters of its rows read zero (1). */
    public double meterShare(StripPolygon strip, Poses poses) {
        return faults.stream().anyMatch(Fault::meter)
                ? share(strip, poses, (row, step, logRecord, timeS) -> meterReadsZero(row, logRecord, timeS))
                : 0;
    }

    /** Returns the share of a strip, by rows and time, in which the log does not tell the flow of a product (1). */
    public double unknownShare(StripPolygon strip, Poses poses) {
        return delivery == null
                ? 0
                : share(strip, poses, (row, step, logRecord, timeS) -> logRecord >= 0 && isUnknown(row, step));
    }

    private static double share(StripPolygon strip, Poses poses, Condition condition) {
        double countedS = 0;
        double allS = 0;
        for (int k = strip.firstStep(); k < strip.endStep(); k++) {
            double middleS = poses.timeS(k) + poses.durationS(k) / 2;
            for (int row = strip.firstRow(); row <= strip.lastRow(); row++) {
                countedS += condition.holds(row, k, poses.record(k), middleS) ? poses.durationS(k) : 0;
                allS += poses.durationS(k);
            }
        }
        return allS > 0 ? countedS / allS : 0;
    }

    private boolean isUnknown(int row, int step) {
        boolean unknown = false;
        for (int p = 0; delivery != null && p < delivery.products(); p++) {
            unknown |= !delivery.known(p, row - 1, step);
        }
        return unknown;
    }

    private boolean isShutOff(int row, int step, int logRecord, double timeS) {
        if (logRecord >= 0 && isUnknown(row, step)) {
            return false;
        }
        int command = command(row, logRecord);
        return command == 0 || (command < 0 && faults.stream().noneMatch(fault -> fault.holds(row, timeS)));
    }

    private boolean meterReadsZero(int row, int logRecord, double timeS) {
        return command(row, logRecord) != 0
                && faults.stream().anyMatch(fault -> fault.meter() && fault.holds(row, timeS));
    }

    /** Returns 1 for commanded on, 0 for commanded off, −1 if unknown. */
    private int command(int row, int logRecord) {
        return log == null || logRecord < 0 ? -1 : log.on(row - 1, logRecord);
    }
}
