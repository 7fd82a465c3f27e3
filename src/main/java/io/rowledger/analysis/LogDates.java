package io.rowledger.analysis;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogTable;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/** Compares a log's times with the computer's clock: a log of past work can't end years from now. */
public final class LogDates {
    /** Largest lead over the computer's clock, s: clocks without a network are off by months, seldom by more. */
    private static final double MAX_AHEAD_S = 2 * 365.25 * 86_400;

    /** 2026-01-01, epoch seconds: a computer's clock before this program was written is not set (1970 or 2000). */
    private static final double MIN_NOW_S = 1_767_225_600;

    private LogDates() {}

    /**
     * Checks that a log doesn't end years from now; a log without times passes.
     *
     * @throws UnusableInputException if it does
     */
    public static void requirePast(LogTable log, Clock clock) {
        boolean dated = !log.days().isEmpty();
        if ((!log.isTimed() && !dated) || log.records() == 0) {
            return;
        }
        double endS =
                dated ? log.days().get(1).atStartOfDay(ZoneOffset.UTC).toEpochSecond() : log.timeS(log.records() - 1);
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
