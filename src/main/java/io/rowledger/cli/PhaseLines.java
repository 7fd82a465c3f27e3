package io.rowledger.cli;

import io.rowledger.analysis.Progress;
import java.io.PrintStream;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A line for each phase: seconds since the start, share of the job that is done, phase and size, and after the reading its rate.
 * Lines, not a bar that is drawn over itself: they are the same on every terminal and stay readable above what follows.
 */
final class PhaseLines implements Progress {
    private static final String READING = "reading the log";

    /**
     * Share of the whole time before each phase, percent: means of a job of 5,797 and one of 144,000 records. What is shown is no
     * more than a hint of how long the rest takes.
     */
    private static final Map<String, Integer> BEFORE = Map.of(
            READING,
            0,
            "rebuilding the track",
            18,
            "diagnosing rows",
            33,
            "computing coverage",
            59,
            "estimating uncertainty",
            67,
            "writing",
            75);

    private static final Pattern OF_ALL = Pattern.compile("([0-9]+)/([1-9][0-9]*)");
    private static final Pattern RECORDS = Pattern.compile("([0-9]+) records");

    private final PrintStream err;
    private final LongSupplier nanos;
    private final long start;
    private long phaseStart;
    private String phase = "";
    private int percent;

    PhaseLines(PrintStream err, LongSupplier nanos) {
        this.err = err;
        this.nanos = nanos;
        this.start = nanos.getAsLong();
        this.phaseStart = start;
    }

    @Override
    public synchronized void begins(String next, String detail) {
        long now = nanos.getAsLong();
        percent = Math.max(percent, percentBefore(next));
        err.println(String.format(Locale.ROOT, "%6.1f s %3d %%  %s", (now - start) / 1e9, percent, next)
                + (detail.isEmpty() ? "" : ": " + detail)
                + rate(detail, now - phaseStart));
        phase = next;
        phaseStart = now;
    }

    private int percentBefore(String next) {
        Matcher ended = OF_ALL.matcher(next);
        return ended.matches()
                ? (int) (100 * Long.parseLong(ended.group(1)) / Long.parseLong(ended.group(2)))
                : BEFORE.getOrDefault(next, 0);
    }

    /** Records a second of the reading that has just ended; nothing elsewhere. */
    private String rate(String detail, long took) {
        Matcher records = RECORDS.matcher(detail);
        return READING.equals(phase) && records.matches() && took > 0
                ? String.format(Locale.ROOT, ", %,.0f records/s", Long.parseLong(records.group(1)) / (took / 1e9))
                : "";
    }
}
