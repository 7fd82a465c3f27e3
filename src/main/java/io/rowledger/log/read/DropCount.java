package io.rowledger.log.read;

import io.rowledger.log.source.LogSource;
import java.util.EnumMap;

/** Number of records left out of one file per reason, with the first line of each. */
public final class DropCount {
    private final EnumMap<DropReason, int[]> byReason = new EnumMap<>(DropReason.class);

    private int repeated;

    DropCount() {
        for (DropReason reason : DropReason.values()) {
            byReason.put(reason, new int[2]);
        }
    }

    public void add(DropReason reason, int line) {
        int[] entry = entry(reason);
        if (entry[0]++ == 0 || line < entry[1]) {
            entry[1] = line;
        }
    }

    /** Counts a duplicate that holds nothing new. */
    public void addRepeated(int line) {
        add(DropReason.DUPLICATE, line);
        repeated++;
    }

    /** Returns the number of duplicates that hold nothing new. */
    public int repeated() {
        return repeated;
    }

    public int count(DropReason reason) {
        return entry(reason)[0];
    }

    /** Returns the line of the first record dropped for the reason, 0 if none was. */
    public int firstLine(DropReason reason) {
        return entry(reason)[1];
    }

    /** Returns the most frequent reason. */
    public DropReason most() {
        DropReason most = DropReason.UNREADABLE;
        for (DropReason reason : DropReason.values()) {
            if (count(reason) > count(most)) {
                most = reason;
            }
        }
        return most;
    }

    LogSource.Dropped total() {
        return new LogSource.Dropped(
                count(DropReason.NO_FIX),
                count(DropReason.DUPLICATE),
                count(DropReason.OUT_OF_ORDER),
                count(DropReason.JUMP),
                count(DropReason.FROZEN),
                count(DropReason.UNREADABLE));
    }

    private int[] entry(DropReason reason) {
        int[] entry = byReason.get(reason);
        if (entry == null) {
            throw new IllegalStateException("no counter for " + reason);
        }
        return entry;
    }
}
