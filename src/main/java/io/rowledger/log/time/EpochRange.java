package io.rowledger.log.time;

/** Range of numbers in a time column that are times since the Unix epoch. */
public final class EpochRange {
    /** 1980-01-06, the first day of GPS time: no receiver wrote a log before it. */
    public static final double MIN_S = 315_964_800;

    /** Seconds since 1970 above this are milliseconds: in seconds they would lie in the year 5138. */
    private static final double MAX_S = 1e11;
    /** Ratio from one unit to the next smaller one. */
    private static final double NEXT = 1e3;

    private EpochRange() {}

    /** Returns the unit of a number of seconds, milli-, micro- or nanoseconds since 1970, from its size; s. */
    public static double unitS(double number) {
        if (number <= MAX_S) {
            return 1;
        }
        return number <= MAX_S * NEXT ? 1e-3 : number <= MAX_S * NEXT * NEXT ? 1e-6 : 1e-9;
    }
}
