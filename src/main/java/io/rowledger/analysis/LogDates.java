package io.rowledger.analysis;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogTable;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/** Holds a log's times against the machine's clock: a log tells what was done, so it is not from years to come. */
public final class LogDates {
    /** Clocks of machines that never meet a network are off by months, seldom by more than this, s. */
    private static final double MAX_AHEAD_S = 2 * 365.25 * 86_400;

    /** No clock that runs was before this program: 2026-01-01, epoch seconds. An unset one begins at 1970 or 2000. */
    private static final double MIN_NOW_S = 1_767_225_600;

    private LogDates() {}

    /**
     * Refuses a log that ends years after now.
     *
     * @throws UnusableInputException for that
     */
    public static void requirePast(LogTable log, Clock clock) {
        if (!log.isTimed() || log.records() == 0) {
            return;
        }
        double endS = log.timeS(log.records() - 1);
        double nowS = Math.max(MIN_NOW_S, clock.millis() / 1e3);
        if (endS > nowS + MAX_AHEAD_S) {
            throw UnusableInputException.found("a log that ends on " + day(endS) + ", years after today, " + day(nowS))
                    .inFile(log.sources().get(log.sources().size() - 1).file())
                    .atColumn("time")
                    .expected("times of work that is done")
                    .hint("correct the times (a GPS week or a year may be wrong) or this machine's clock");
        }
    }

    private static String day(double timeS) {
        return Instant.ofEpochSecond((long) timeS)
                .atOffset(ZoneOffset.UTC)
                .toLocalDate()
                .toString();
    }
}
