package io.rowledger.diagnose.signal;

import java.util.Arrays;

/**
 * The different positive readings of a column in rising order. A console's readings repeat: a table of those seen so far, with open
 * addressing, leaves few to sort.
 */
final class DistinctReadings {
    private static final int FIRST_SIZE = 1 << 12;

    /** Bits of 0.0, which is never kept: an empty place. */
    private static final long EMPTY = 0;

    private long[] table = new long[FIRST_SIZE];
    private int count;

    private DistinctReadings() {}

    static double[] of(double[] column) {
        DistinctReadings seen = new DistinctReadings();
        for (double x : column) {
            if (x > 0) {
                seen.add(Double.doubleToRawLongBits(x));
            }
        }
        double[] distinct = new double[seen.count];
        int n = 0;
        for (long bits : seen.table) {
            if (bits != EMPTY) {
                distinct[n++] = Double.longBitsToDouble(bits);
            }
        }
        Arrays.sort(distinct);
        return distinct;
    }

    private void add(long bits) {
        int at = place(table, bits);
        if (table[at] == EMPTY) {
            table[at] = bits;
            count++;
            if (2 * count > table.length) {
                grow();
            }
        }
    }

    /** Where the bits are, or the empty place where they belong. */
    private static int place(long[] table, long bits) {
        long mixed = bits * 0x9E3779B97F4A7C15L;
        int at = (int) (mixed >>> 40) & (table.length - 1);
        while (table[at] != EMPTY && table[at] != bits) {
            at = (at + 1) & (table.length - 1);
        }
        return at;
    }

    private void grow() {
        long[] larger = new long[2 * table.length];
        for (long bits : table) {
            if (bits != EMPTY) {
                larger[place(larger, bits)] = bits;
            }
        }
        table = larger;
    }
}
