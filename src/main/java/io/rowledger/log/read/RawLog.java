package io.rowledger.log.read;

import java.util.Arrays;

/**
 * The readable records of one file as growing columns, in file order, before cleaning. One index counts them all; a
 * record is written into its slot and counted by {@link #accept}.
 */
public final class RawLog {
    private static final int FIRST_CAPACITY = 4096;

    public int records;
    public double[] timeS = new double[FIRST_CAPACITY];
    public double[] latDeg = new double[FIRST_CAPACITY];
    public double[] lonDeg = new double[FIRST_CAPACITY];
    public int[] line = new int[FIRST_CAPACITY];
    /** True where the path is broken before the record. */
    public boolean[] gapBefore = new boolean[FIRST_CAPACITY];
    /** True where records were left out right before this one, and the bar was down in all of them. */
    public boolean[] downBefore = new boolean[FIRST_CAPACITY];

    public final double[][] numbers;
    public final byte[][] states;

    RawLog(int numberColumns, int stateColumns) {
        numbers = new double[numberColumns][FIRST_CAPACITY];
        states = new byte[stateColumns][FIRST_CAPACITY];
    }

    /** The median interval between records, s; 0 where there is one record or none. */
    public double intervalS() {
        double[] steps = new double[Math.max(0, records - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timeS[i + 1] - timeS[i];
        }
        Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    /** Counts the record just written and makes room for the next. */
    void accept() {
        records++;
        if (records == timeS.length) {
            resize(records * 2);
        }
    }

    /** Keeps the records whose flag is set and drops the others from every column. */
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

    /** Puts every column into another order: record i is the one that stood at {@code order[i]}. */
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

    /** Cuts every column to the records it has. */
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
