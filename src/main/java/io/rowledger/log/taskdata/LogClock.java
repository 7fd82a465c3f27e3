package io.rowledger.log.taskdata;

import io.rowledger.finding.RegularFile;
import io.rowledger.text.Message;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The time of a time log's records. The terminal stamps them with its own clock, which shows local time; where the receiver's
 * UTC stands beside it, the middle difference of the two is taken off, so that a record keeps the terminal's fine steps and
 * gets the receiver's time of day. Without it the clock's zone must come from the task or the rig file.
 */
final class LogClock {
    /** Largest difference between the two clocks that reading them one after the other explains, ms. */
    private static final long JITTER_MS = 2500;
    /** Share of records that may differ by more (1): the receiver's first fixes. */
    private static final double MAX_OFF = 0.02;
    /** Smallest error of the terminal's clock that is reported, ms. */
    private static final long WRONG_CLOCK_MS = 30_000;

    /** Largest offset of a zone from UTC, ms: 14 h on the Line Islands, and an hour to spare. */
    private static final long MAX_ZONE_MS = 15 * 3600_000L;

    private static final long DAY_MS = 86_400_000L;
    /**
     * Difference from exactly one day up to which the day count of the receiver is taken to be one off, ms: terminals that
     * count from day 1 instead of 0 do that.
     */
    private static final long MAX_DAY_OFF_MS = 600_000;

    private static final long QUARTER_HOUR_MS = 15 * 60_000L;

    private final TimeLog log;
    /** Terminal less UTC, ms; null where the zone is not known, or each record has its own UTC. */
    private final @Nullable Long offsetMs;

    private final boolean each;
    /** True if the receiver repeats a time in more than a few records while the terminal's clock goes on. */
    private final boolean frozen;

    private final List<Message> notes = new ArrayList<>();

    /**
     * Looks at all records.
     *
     * @param taskOffsetMs what the task's own times say the terminal is ahead of UTC, ms; null where they don't
     */
    LogClock(TimeLog log, String name, @Nullable Long taskOffsetMs) {
        this.log = log;
        long[] differences = new long[log.utcMs.length];
        int n = 0;
        int stale = 0;
        int changed = 0;
        for (int i = 0; i < Math.min(log.records, log.utcMs.length); i++) {
            changed = i > 0 && log.utcMs[i] == log.utcMs[changed] ? changed : i;
            if (log.utcMs[i] == Long.MIN_VALUE || log.status(i) == 0) {
                continue;
            }
            if (log.clockMs[i] - log.clockMs[changed] > JITTER_MS) {
                stale++;
            } else {
                differences[n++] = log.clockMs[i] - log.utcMs[i];
            }
        }
        frozen = stale > MAX_OFF * (stale + n);
        if (n == 0) {
            offsetMs = taskOffsetMs;
            each = false;
            return;
        }
        Arrays.sort(differences, 0, n);
        long middle = differences[n / 2];
        int off = 0;
        for (int i = 0; i < n; i++) {
            off += Math.abs(differences[i] - middle) > JITTER_MS ? 1 : 0;
        }
        each = off > MAX_OFF * n && !frozen;
        boolean dayOff = !each && Math.abs(Math.abs(middle) - DAY_MS) <= MAX_DAY_OFF_MS;
        middle -= dayOff ? Long.signum(middle) * DAY_MS : 0;
        offsetMs = each ? null : Long.valueOf(middle);
        long wrong = Math.abs(middle - Math.round((double) middle / QUARTER_HOUR_MS) * QUARTER_HOUR_MS);
        if (frozen) {
            notes.add(Message.of("notes.taskdata.clock.frozen", RegularFile.name(name), stale, log.records));
        }
        if (each) {
            notes.add(Message.of("notes.taskdata.clock.set", RegularFile.name(name)));
        } else if (dayOff) {
            notes.add(Message.of("notes.taskdata.clock.day", RegularFile.name(name)));
        } else if (Math.abs(middle) > MAX_ZONE_MS) {
            long days = Math.max(1, Math.round(Math.abs(middle) / (double) DAY_MS));
            notes.add(Message.of("notes.taskdata.clock.days", RegularFile.name(name), days));
        } else if (wrong > WRONG_CLOCK_MS) {
            notes.add(Message.of("notes.taskdata.clock.off", RegularFile.name(name), Message.duration(wrong / 1000.0)));
        }
    }

    /** Corrections of the clock, for a person. */
    List<Message> notes() {
        return notes;
    }

    /** The time of a record as ISO 8601: with a Z where it is UTC, without where the zone is not known; empty for none. */
    String text(int i) {
        if (each) {
            return log.utcMs[i] == Long.MIN_VALUE ? "" : iso(log.utcMs[i]) + "Z";
        }
        return offsetMs == null ? iso(log.clockMs[i]) : iso(log.clockMs[i] - offsetMs) + "Z";
    }

    private static String iso(long ms) {
        String text = Instant.ofEpochMilli(ms).toString();
        return text.substring(0, text.length() - 1);
    }
}
