package io.rowledger.log.clean;

import io.rowledger.log.read.RawLog;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Logs that were joined into one file, each with its header, put in the order of their times. */
final class ConcatenatedLogs {
    /** A part that starts within so long after the one before carries straight on. */
    private static final double CARRIES_ON_S = 5;

    private ConcatenatedLogs() {}

    private record Part(int from, int to, double startS) {}

    /** Puts the parts in order; {@code starts} are the records before each further header. */
    static void inOrder(RawLog log, List<Integer> starts) {
        if (starts.isEmpty()) {
            return;
        }
        List<Part> parts = new ArrayList<>();
        int from = 0;
        for (int k = 0; k <= starts.size(); k++) {
            int to = k < starts.size() ? Math.min(starts.get(k), log.records) : log.records;
            if (to > from) {
                parts.add(new Part(from, to, log.timeS[from]));
                from = to;
            }
        }
        parts.sort(Comparator.comparingDouble(Part::startS));
        int[] order = new int[log.records];
        int n = 0;
        for (Part part : parts) {
            boolean carriesOn = n > 0
                    && part.from == order[n - 1] + 1
                    && Math.abs(part.startS - log.timeS[order[n - 1]]) <= CARRIES_ON_S;
            log.gapBefore[part.from] |= !carriesOn;
            log.downBefore[part.from] &= carriesOn;
            for (int i = part.from; i < part.to; i++) {
                order[n++] = i;
            }
        }
        log.arrange(order);
    }
}
