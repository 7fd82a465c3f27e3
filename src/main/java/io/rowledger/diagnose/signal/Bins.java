package io.rowledger.diagnose.signal;

import io.rowledger.stats.RobustStatistics;
import java.util.Arrays;

/** Working time in bins of a few seconds that never cross the end of a pass. */
public final class Bins {
    /** Long enough to average meters, short enough to place an onset, s. */
    public static final double BIN_S = 2.0;

    /** First entry of each bin, and the number of entries after the last: length bins + 1. */
    public final int[] from;

    final WorkingSamples work;

    Bins(WorkingSamples work) {
        this.work = work;
        int[] starts = new int[work.n + 1];
        int bins = 0;
        for (int q = 0; q < work.passes(); q++) {
            int begin = work.passFrom[q];
            int end = work.passFrom[q + 1];
            if (begin == end) {
                continue;
            }
            double seconds = work.timeS[end - 1] - work.timeS[begin] + work.intervalS;
            int parts = (int) Math.max(1, Math.round(seconds / BIN_S));
            double next = work.timeS[begin];
            for (int j = begin; j < end; j++) {
                if (work.timeS[j] >= next - 1e-6) {
                    starts[bins++] = j;
                    next = Math.max(next + seconds / parts, work.timeS[j] + 0.5 * seconds / parts);
                }
            }
        }
        starts[bins] = work.n;
        from = Arrays.copyOf(starts, bins + 1);
    }

    public int bins() {
        return from.length - 1;
    }

    public double startS(int b) {
        return work.timeS[from[b]] - work.durationS[from[b]] / 2;
    }

    public double endS(int b) {
        int last = from[b + 1] - 1;
        return work.timeS[last] + work.durationS[last] / 2;
    }

    /** Median of every row's ratios in every bin; NaN where fewer than half of its records were evaluated. */
    float[][] medians(float[][] ratio) {
        float[][] medians = new float[ratio.length][];
        for (int r = 0; r < ratio.length; r++) {
            medians[r] = medians(ratio[r]);
        }
        return medians;
    }

    /** The same for one row. */
    float[] medians(float[] ratio) {
        float[] medians = new float[bins()];
        double[] values = new double[64];
        for (int b = 0; b < medians.length; b++) {
            int count = 0;
            values = values.length < from[b + 1] - from[b] ? new double[from[b + 1] - from[b]] : values;
            for (int j = from[b]; j < from[b + 1]; j++) {
                if (!Float.isNaN(ratio[j])) {
                    values[count++] = ratio[j];
                }
            }
            medians[b] =
                    2 * count >= from[b + 1] - from[b] ? (float) RobustStatistics.median(values, count) : Float.NaN;
        }
        return medians;
    }

    RowTime picture(float[][] medians) {
        double[] start = new double[bins()];
        double[] end = new double[bins()];
        int[] pass = new int[bins()];
        for (int b = 0; b < start.length; b++) {
            start[b] = startS(b);
            end[b] = endS(b);
            pass[b] = work.pass[from[b]];
        }
        return new RowTime(start, end, pass, medians);
    }
}
