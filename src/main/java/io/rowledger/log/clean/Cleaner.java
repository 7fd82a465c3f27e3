package io.rowledger.log.clean;

import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.DropCount;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.util.List;
import java.util.Locale;

/**
 * Leaves out the records that can't be where or when they say: time that stands still or runs back, positions that stand
 * still while the machine moves, positions it could not have reached. What is left rises strictly in time.
 */
final class Cleaner {
    /**
     * When the clock runs back, the few records around it decide which side is wrong: up to this many records already
     * taken are given up if more than as many after them agree on the earlier time.
     */
    private static final int CLOCK_SPIKE_RECORDS = 50;

    /** Share of records with a repeated time from which the log is said to be written to coarse time stamps. */
    private static final double MANY_DUPLICATES = 0.2;

    /** Share of records from which time running back is a joined log rather than a stray line. */
    private static final double MANY_OUT_OF_ORDER = 0.01;

    private Cleaner() {}

    static void clean(FileLog file, DropCount drops, List<String> notes) {
        RawLog log = file.log();
        int read = log.records;
        boolean[] kept = rising(log, drops);
        log.keep(kept);
        if (read > 0 && drops.count(DropReason.DUPLICATE) > MANY_DUPLICATES * read) {
            notes.add(String.format(
                    Locale.ROOT,
                    "%d of %d records repeat the time stamp before them and were left out: the time column is written "
                            + "too coarsely. Tenths of a second in it would let every record count.",
                    drops.count(DropReason.DUPLICATE),
                    read));
        }
        if (drops.count(DropReason.OUT_OF_ORDER) > MANY_OUT_OF_ORDER * read) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Time runs back at line %d, and %d records were left out for it. If the file joins several logs, "
                            + "give them as files of their own and all will count.",
                    drops.firstLine(DropReason.OUT_OF_ORDER),
                    drops.count(DropReason.OUT_OF_ORDER)));
        }
        byte[] down = file.states(LogQuantity.DOWN);
        log.keep(StalePositions.live(log, file.numbers(LogQuantity.SPEED), down, drops, notes));
        boolean[] reachable = PositionOutliers.reachable(log, file.states(LogQuantity.FIX), drops, notes);
        spreadGaps(log, reachable, down);
        log.keep(reachable);
        log.trim();
    }

    /** Flags the records whose times rise strictly. */
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
                drops.add(DropReason.DUPLICATE, log.line[i]);
                carryGap(log, i);
            } else {
                kept[i] = true;
                stack[size++] = i;
            }
        }
        return kept;
    }

    /** How many of the last records taken are a spike of the clock, 0 where record i is the one that is wrong. */
    private static int spike(RawLog log, int[] stack, int size, int i) {
        int ahead = 0;
        while (ahead < size && log.timeS[stack[size - 1 - ahead]] >= log.timeS[i]) {
            if (++ahead > CLOCK_SPIKE_RECORDS) {
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

    /** A gap before a record that is left out for its time is a gap before the next one too. */
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

    /** True where the bar was down in the records from {@code from} to before {@code next}, and in all left out among them. */
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
