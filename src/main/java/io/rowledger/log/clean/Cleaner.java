package io.rowledger.log.clean;

import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.DropCount;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import java.util.List;

/**
 * Removes records with repeated or decreasing times, stale positions and unreachable positions. The remaining times rise
 * strictly.
 */
final class Cleaner {
    /**
     * Most accepted records that are removed as a clock spike when time runs back; they are removed only if more records
     * after them agree on the earlier time.
     */
    private static final int MAX_CLOCK_SPIKE_RECORDS = 50;

    /** Share of repeated times from which a note says that the time stamps are coarse. */
    private static final double MIN_COARSE_CLOCK_SHARE = 0.2;

    /** Share of decreasing times from which a note suggests a concatenated log. */
    private static final double MIN_CONCATENATED_SHARE = 0.01;

    private Cleaner() {}

    static void clean(FileLog file, DropCount drops, List<Message> notes) {
        RawLog log = file.log();
        int read = log.records;
        boolean[] kept = rising(log, drops);
        log.keep(kept);
        int sameTime = drops.count(DropReason.DUPLICATE) - drops.repeated();
        if (read > 0 && sameTime > MIN_COARSE_CLOCK_SHARE * read) {
            notes.add(Message.of("notes.log.duplicateTimes", sameTime, read));
        }
        if (drops.count(DropReason.OUT_OF_ORDER) > MIN_CONCATENATED_SHARE * read) {
            notes.add(Message.of(
                    "notes.log.timeBack",
                    drops.firstLine(DropReason.OUT_OF_ORDER),
                    drops.count(DropReason.OUT_OF_ORDER)));
        }
        byte[] down = file.states(LogQuantity.DOWN);
        log.keep(StalePositions.fresh(log, file.numbers(LogQuantity.SPEED), down, drops, notes));
        boolean[] reachable = PositionOutliers.reachable(log, file.states(LogQuantity.FIX), drops, notes);
        spreadGaps(log, reachable, down);
        log.keep(reachable);
        log.trim();
    }

    /** Returns flags of the records whose times rise strictly. */
    private static boolean[] rising(RawLog log, DropCount drops) {
        boolean[] kept = new boolean[log.records];
        int[] stack = new int[log.records];
        int size = 0;
        for (int i = 0; i < log.records; i++) {
            double timeS = log.timeS[i];
            if (size > 0 && timeS < log.timeS[stack[size - 1]]) {
                int spike = spike(log, stack, size, i);
                for (int k = 0; k < spike; k++) {
                    int dropped = stack[--size];
                    kept[dropped] = false;
                    drops.add(DropReason.OUT_OF_ORDER, log.line[dropped]);
                }
            }
            if (size > 0 && timeS < log.timeS[stack[size - 1]]) {
                drops.add(DropReason.OUT_OF_ORDER, log.line[i]);
                carryGap(log, i);
            } else if (size > 0 && timeS == log.timeS[stack[size - 1]]) {
                if (isCopy(log, i, stack[size - 1])) {
                    drops.addRepeated(log.line[i]);
                } else {
                    drops.add(DropReason.DUPLICATE, log.line[i]);
                }
                carryGap(log, i);
            } else {
                kept[i] = true;
                stack[size++] = i;
            }
        }
        return kept;
    }

    /** Returns true if every value of two records is the same. */
    private static boolean isCopy(RawLog log, int i, int j) {
        boolean same = log.latDeg[i] == log.latDeg[j] && log.lonDeg[i] == log.lonDeg[j];
        for (double[] column : log.numbers) {
            same &= Double.compare(column[i], column[j]) == 0;
        }
        for (byte[] column : log.states) {
            same &= column[i] == column[j];
        }
        return same;
    }

    /** Returns how many of the last accepted records are a clock spike; 0 if record i itself is wrong. */
    private static int spike(RawLog log, int[] stack, int size, int i) {
        int ahead = 0;
        while (ahead < size && log.timeS[stack[size - 1 - ahead]] >= log.timeS[i]) {
            if (++ahead > MAX_CLOCK_SPIKE_RECORDS) {
                return 0;
            }
        }
        double spikeS = log.timeS[stack[size - 1]];
        int agree = 0;
        for (int k = i; k < log.records && agree <= ahead; k++) {
            boolean rising = k == i || log.timeS[k] > log.timeS[k - 1];
            if (!rising || log.timeS[k] >= spikeS) {
                break;
            }
            agree++;
        }
        return agree > ahead ? ahead : 0;
    }

    /** Moves the gap flag of a removed record to the next one. */
    private static void carryGap(RawLog log, int i) {
        if (log.gapBefore[i] && i + 1 < log.records) {
            log.downBefore[i + 1] = log.downBefore[i] && (!log.gapBefore[i + 1] || log.downBefore[i + 1]);
            log.gapBefore[i + 1] = true;
        }
    }

    private static void spreadGaps(RawLog log, boolean[] kept, byte[] down) {
        for (int i = 0; i < log.records; i++) {
            int next = i;
            while (next < log.records && !kept[next]) {
                next++;
            }
            if (next > i && next < log.records) {
                log.downBefore[next] = downThrough(log, down, i, next);
                log.gapBefore[next] = true;
            }
            i = next;
        }
    }

    /** Returns true if the bar was down in records {@code from} to {@code next} − 1 and in all left out among them. */
    static boolean downThrough(RawLog log, byte[] down, int from, int next) {
        for (int i = from; i <= next; i++) {
            boolean lifted = i < next && (down.length == 0 || down[i] != 1);
            if (lifted || (log.gapBefore[i] && !log.downBefore[i])) {
                return false;
            }
        }
        return true;
    }
}
