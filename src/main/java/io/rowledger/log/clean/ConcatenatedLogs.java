package io.rowledger.log.clean;

import io.rowledger.log.read.RawLog;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Sorts logs that were concatenated into one file, each with its header, by time. */
final class ConcatenatedLogs {
    /** Longest step between two parts without a break, s. */
    private static final double MAX_CONTINUATION_S = 5;

    private ConcatenatedLogs() {}

    private record Part(int from, int to, double startS) {}

    /** Sorts the parts; {@code starts} are the numbers of records before each repeated header. */
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
                    && Math.abs(part.startS - log.timeS[order[n - 1]]) <= MAX_CONTINUATION_S;
            log.gapBefore[part.from] |= !carriesOn;
            log.downBefore[part.from] &= carriesOn;
            for (int i = part.from; i < part.to; i++) {
                order[n++] = i;
            }
        }
        log.arrange(order);
    }
}
