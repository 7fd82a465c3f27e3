package io.rowledger.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * What a console in the cab writes of the machine's truth: it averages, holds, rounds and thins out. The simulation itself knows
 * nothing of it. Sizes are common practice, no source.
 *
 * @param averagingS length of the moving average of each flow, s; 0 for none
 * @param holdS time for which a flow is held before it is read again, s; 0 for none
 * @param quantumPerMin flows are multiples of this in the log's unit per minute; 0 for what the log's decimals hold
 * @param every of the receiver's records, one in so many is written
 * @param skewS each row is read so much later than the row to its left, modulo one second, s
 */
public record Console(double averagingS, double holdS, double quantumPerMin, int every, double skewS) {
    private static final double L_PER_GAL = 231 * 0.016387064;

    /** A console that writes what it is given. */
    public static final Console NONE = new Console(0, 0, 0, 1, 0);

    /** Checks the ranges. */
    public Console {
        if (averagingS < 0 || holdS < 0 || quantumPerMin < 0 || every < 1 || skewS < 0) {
            throw new IllegalArgumentException("a console that can't be");
        }
    }

    /** Flows rounded to a quantum in the log's unit per minute. */
    public Console rounded(double quantum) {
        return new Console(averagingS, holdS, quantum, every, skewS);
    }

    /** Flows averaged over the last seconds. */
    public Console averaged(double seconds) {
        return new Console(seconds, holdS, quantumPerMin, every, skewS);
    }

    /** Flows read anew only now and then. */
    public Console held(double seconds) {
        return new Console(averagingS, seconds, quantumPerMin, every, skewS);
    }

    /** One record in so many written. */
    public Console oneIn(int records) {
        return new Console(averagingS, holdS, quantumPerMin, records, skewS);
    }

    /** Rows read one after the other. */
    public Console skewed(double seconds) {
        return new Console(averagingS, holdS, quantumPerMin, every, seconds);
    }

    /** The records as written; those given are not changed. */
    List<SimRecord> write(List<SimRecord> records, boolean customary) {
        if (equals(NONE) || records.isEmpty()) {
            return records;
        }
        List<SimRecord> shown = new ArrayList<>(records.size());
        records.forEach(record -> shown.add(record.copy()));
        int products = records.get(0).flowLPerS.length;
        int rows = records.get(0).flowLPerS[0].length;
        for (int p = 0; p < products; p++) {
            for (int i = 0; i < rows; i++) {
                double[] flow = new double[records.size()];
                for (int k = 0; k < flow.length; k++) {
                    flow[k] = records.get(k).flowLPerS[p][i];
                }
                flow = column(flow, records, i * skewS % 1, customary);
                for (int k = 0; k < flow.length; k++) {
                    shown.get(k).flowLPerS[p][i] = flow[k];
                }
            }
            double[] total = new double[records.size()];
            for (int k = 0; k < total.length; k++) {
                total[k] = records.get(k).totalLPerS[p];
            }
            total = column(total, records, 0, customary);
            for (int k = 0; k < total.length; k++) {
                shown.get(k).totalLPerS[p] = total[k];
            }
        }
        List<SimRecord> written = new ArrayList<>();
        for (int k = 0; k < shown.size(); k += every) {
            written.add(shown.get(k));
        }
        return written;
    }

    private double[] column(double[] flow, List<SimRecord> records, double lateS, boolean customary) {
        double[] out = new double[flow.length];
        Deque<Integer> window = new ArrayDeque<>();
        double sum = 0;
        int source = 0;
        double readAtS = Double.NEGATIVE_INFINITY;
        double held = 0;
        double quantum = quantumPerMin * (customary ? L_PER_GAL : 1) / 60;
        for (int k = 0; k < flow.length; k++) {
            double nowS = records.get(k).timeS;
            while (source + 1 <= k && records.get(source + 1).timeS <= nowS - lateS + 1e-9) {
                source++;
            }
            window.addLast(source);
            sum += flow[source];
            while (window.size() > 1
                    && records.get(window.getFirst()).timeS < records.get(source).timeS - averagingS + 1e-9) {
                sum -= flow[window.removeFirst()];
            }
            double value = averagingS > 0 ? sum / window.size() : flow[source];
            if (nowS - readAtS >= holdS - 1e-9) {
                held = value;
                readAtS = nowS;
            }
            out[k] = quantum > 0 ? Math.rint(held / quantum) * quantum : held;
        }
        return out;
    }
}
