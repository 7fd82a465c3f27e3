package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.RowTime;

/** Pictures of deviation made by hand, for tests of what comes after. */
public final class HandMadePicture {
    private HandMadePicture() {}

    /** Bins by their ends and passes; ratios by row, then bin. */
    public static RowTime of(double[] startS, double[] endS, int[] pass, float[][] ratio) {
        return new RowTime(startS, endS, pass, ratio);
    }
}
