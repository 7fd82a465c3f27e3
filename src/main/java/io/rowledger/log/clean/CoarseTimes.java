package io.rowledger.log.clean;

import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import java.util.Arrays;

/**
 * Spreads the records of times that are cut to the minute, or to 10 s and more: n records of one stamp become evenly spaced
 * within it. Records of the first stamp end with it, because the log began within it.
 */
final class CoarseTimes {
    /** Finest resolution that is spread, s; at 1 s the other records of a second are left out as duplicates. */
    private static final double MIN_RESOLUTION_S = 10;
    /** Fewest records for a decision. */
    private static final int MIN_RECORDS = 10;
    /** Shortest interval about which a note is made, s: turns and skips between two records are lost. */
    private static final double MIN_SPARSE_S = 20;

    private final RawLog log;
    private final int[] starts;
    private final int stamps;

    private CoarseTimes(RawLog log) {
        this.log = log;
        int[] first = new int[log.records + 1];
        int n = 0;
        for (int i = 0; i < log.records; i++) {
            if (i == 0 || log.timeS[i] != log.timeS[i - 1]) {
                first[n++] = i;
            }
        }
        first[n] = log.records;
        this.starts = first;
        this.stamps = n;
    }

    /** Spreads the times of a file in place, before its records are cleaned. */
    static void spread(FileLog file) {
        RawLog log = file.log();
        if (log.records < MIN_RECORDS) {
            return;
        }
        CoarseTimes times = new CoarseTimes(log);
        double resolutionS = times.resolutionS();
        int usual = times.usualRecords();
        if (resolutionS < MIN_RESOLUTION_S || usual < 2) {
            return;
        }
        times.spread(resolutionS, resolutionS / usual);
        file.notes().add(Message.of("notes.log.coarseTimes", file.shortName(), Message.duration(resolutionS)));
    }

    /** Notes a log whose records are too far apart to show turns. */
    static void noteSparse(FileLog file) {
        double intervalS = file.log().intervalS();
        if (intervalS >= MIN_SPARSE_S && !file.plan().isUntimed()) {
            file.notes().add(Message.of("notes.log.sparse", file.shortName(), Message.duration(intervalS)));
        }
    }

    /** Returns the median step between different times if every time is a multiple of it; 0 otherwise. */
    private double resolutionS() {
        double[] steps = new double[Math.max(0, stamps - 1)];
        for (int g = 1; g < stamps; g++) {
            steps[g - 1] = log.timeS[starts[g]] - log.timeS[starts[g - 1]];
        }
        Arrays.sort(steps);
        double step = steps.length == 0 ? 0 : steps[steps.length / 2];
        for (int g = 0; g < stamps && step > 0; g++) {
            double multiple = log.timeS[starts[g]] / step;
            if (multiple != Math.rint(multiple)) {
                return 0;
            }
        }
        return step;
    }

    private int usualRecords() {
        int[] sizes = new int[stamps];
        Arrays.setAll(sizes, g -> starts[g + 1] - starts[g]);
        Arrays.sort(sizes);
        return sizes[stamps / 2];
    }

    private void spread(double resolutionS, double intervalS) {
        for (int g = 0; g < stamps; g++) {
            int size = starts[g + 1] - starts[g];
            double stepS = Math.min(intervalS, resolutionS / size);
            double fromS = log.timeS[starts[g]] + (g == 0 ? resolutionS - size * stepS : 0);
            for (int i = 0; i < size; i++) {
                log.timeS[starts[g] + i] = fromS + i * stepS;
            }
        }
    }
}
