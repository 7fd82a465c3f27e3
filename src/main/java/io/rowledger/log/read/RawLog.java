package io.rowledger.log.read;

import java.util.Arrays;

/**
 * The readable records of one file as growing columns, in file order. {@link RecordReader} writes a record into slot
 * {@link #records} of every column and counts it with {@link #accept}. The fields are public because the reader and the
 * cleaning steps work on whole columns of millions of records in tight loops; nothing outside the log packages sees this
 * class.
 */
public final class RawLog {
    private static final int INITIAL_CAPACITY = 4096;

    public int records;
    public double[] timeS = new double[INITIAL_CAPACITY];
    public double[] latDeg = new double[INITIAL_CAPACITY];
    public double[] lonDeg = new double[INITIAL_CAPACITY];
    public int[] line = new int[INITIAL_CAPACITY];
    /** True if the path is broken before the record. */
    public boolean[] gapBefore = new boolean[INITIAL_CAPACITY];
    /** True if records were left out directly before this one and the bar was down in all of them. */
    public boolean[] downBefore = new boolean[INITIAL_CAPACITY];

    public final double[][] numbers;
    public final byte[][] states;

    RawLog(int numberColumns, int stateColumns) {
        numbers = new double[numberColumns][INITIAL_CAPACITY];
        states = new byte[stateColumns][INITIAL_CAPACITY];
    }

    /** Returns the median interval between records, s; 0 for fewer than two records. */
    public double intervalS() {
        double[] steps = new double[Math.max(0, records - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timeS[i + 1] - timeS[i];
        }
        Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    /** Counts the record just written and grows the columns if needed. */
    void accept() {
        records++;
        if (records == timeS.length) {
            resize(records * 2);
        }
    }

    /** Removes the records whose flag is not set from every column. */
    public void keep(boolean[] kept) {
        int to = 0;
        for (int from = 0; from < records; from++) {
            if (kept[from]) {
                timeS[to] = timeS[from];
                latDeg[to] = latDeg[from];
                lonDeg[to] = lonDeg[from];
                line[to] = line[from];
                gapBefore[to] = gapBefore[from];
                downBefore[to] = downBefore[from];
                to++;
            }
        }
        for (double[] column : numbers) {
            int n = 0;
            for (int from = 0; from < records; from++) {
                if (kept[from]) {
                    column[n++] = column[from];
                }
            }
        }
        for (byte[] column : states) {
            int n = 0;
            for (int from = 0; from < records; from++) {
                if (kept[from]) {
                    column[n++] = column[from];
                }
            }
        }
        records = to;
    }

    /** Reorders every column: record i becomes the one at {@code order[i]}. */
    public void arrange(int[] order) {
        timeS = arranged(timeS, order);
        latDeg = arranged(latDeg, order);
        lonDeg = arranged(lonDeg, order);
        int[] lines = line.clone();
        boolean[] gaps = gapBefore.clone();
        boolean[] downs = downBefore.clone();
        for (int i = 0; i < order.length; i++) {
            line[i] = lines[order[i]];
            gapBefore[i] = gaps[order[i]];
            downBefore[i] = downs[order[i]];
        }
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] = arranged(numbers[k], order);
        }
        for (byte[] column : states) {
            byte[] before = column.clone();
            for (int i = 0; i < order.length; i++) {
                column[i] = before[order[i]];
            }
        }
    }

    private static double[] arranged(double[] column, int[] order) {
        double[] arranged = new double[column.length];
        for (int i = 0; i < order.length; i++) {
            arranged[i] = column[order[i]];
        }
        return arranged;
    }

    /** Trims every column to the number of records. */
    public void trim() {
        resize(records);
    }

    private void resize(int capacity) {
        timeS = Arrays.copyOf(timeS, capacity);
        latDeg = Arrays.copyOf(latDeg, capacity);
        lonDeg = Arrays.copyOf(lonDeg, capacity);
        line = Arrays.copyOf(line, capacity);
        gapBefore = Arrays.copyOf(gapBefore, capacity);
        downBefore = Arrays.copyOf(downBefore, capacity);
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] = Arrays.copyOf(numbers[k], capacity);
        }
        for (int k = 0; k < states.length; k++) {
            states[k] = Arrays.copyOf(states[k], capacity);
        }
    }
}
