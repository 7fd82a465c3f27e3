package io.rowledger.uncertainty;

import java.util.Arrays;

/**
 * Areas of many overlapping quadrangles from parallel scan lines: covered at least once, covered twice or more, and skipped
 * within a domain.
 *
 * <p>Line j lies at v = first + j·spacing; a quadrangle cuts each line in one interval, and the sum of the intervals' lengths
 * times the spacing is its area. Only differences between two samples of nearly the same ground are used, and both have the
 * same lines, so that the error of the sampling cancels.
 *
 * <p>Hot kernel: some ten thousand quadrangles, a hundred times per job; columns, no objects. {@code ScanLinesBenchmark}
 * measures it.
 */
final class ScanLines {
    private final double firstV;
    private final double spacingM;
    private final double[][] starts;
    private final double[][] ends;
    private final int[] count;
    private double coveredM2;
    private double overlapM2;
    private double skipM2;

    /**
     * Lines over [fromV, toV].
     *
     * @param lines number of lines
     */
    ScanLines(double fromV, double toV, int lines) {
        spacingM = (toV - fromV) / lines;
        firstV = fromV + spacingM / 2;
        starts = new double[lines][16];
        ends = new double[lines][16];
        count = new int[lines];
    }

    int lines() {
        return count.length;
    }

    double spacingM() {
        return spacingM;
    }

    /** Returns v of line j. */
    double v(int j) {
        return firstV + j * spacingM;
    }

    /** Returns the index of the first line at or above v; it may lie outside the lines. */
    int lineFrom(double v) {
        return (int) Math.ceil((v - firstV) / spacingM);
    }

    /** Removes all quadrangles. */
    void clear() {
        Arrays.fill(count, 0);
    }

    /** Adds a quadrangle: u and v of its corners in order. */
    void add(double[] u, double[] v) {
        double lowest = Math.min(Math.min(v[0], v[1]), Math.min(v[2], v[3]));
        double highest = Math.max(Math.max(v[0], v[1]), Math.max(v[2], v[3]));
        int from = Math.max(0, lineFrom(lowest));
        int to = Math.min(count.length - 1, lineFrom(highest));
        for (int j = from; j <= to; j++) {
            double y = v(j);
            double left = Double.POSITIVE_INFINITY;
            double right = Double.NEGATIVE_INFINITY;
            for (int a = 0; a < 4; a++) {
                int b = (a + 1) & 3;
                if (v[a] <= y != v[b] <= y) {
                    double at = u[a] + (y - v[a]) / (v[b] - v[a]) * (u[b] - u[a]);
                    left = Math.min(left, at);
                    right = Math.max(right, at);
                }
            }
            if (left < right) {
                put(j, left, right);
            }
        }
    }

    private void put(int j, double left, double right) {
        int n = count[j]++;
        if (n == starts[j].length) {
            starts[j] = Arrays.copyOf(starts[j], 2 * n);
            ends[j] = Arrays.copyOf(ends[j], 2 * n);
        }
        starts[j][n] = left;
        ends[j][n] = right;
    }

    /**
     * Sums the lines.
     *
     * @param domain per line, ascending pairs [from, to) of the ground to be covered
     * @param openGapM 0 if the domain is a boundary; else the longest gap between covered ground, m, that is a skip whether
     *     inside the domain or not; ground before the first and after the last interval is not evaluated then
     */
    void sum(double[][] domain, double openGapM) {
        coveredM2 = 0;
        overlapM2 = 0;
        skipM2 = 0;
        for (int j = 0; j < count.length; j++) {
            sumLine(j, domain[j], openGapM);
        }
        coveredM2 *= spacingM;
        overlapM2 *= spacingM;
        skipM2 *= spacingM;
    }

    private void sumLine(int j, double[] domain, double openGapM) {
        int n = count[j];
        double[] s = starts[j];
        double[] e = ends[j];
        Arrays.sort(s, 0, n);
        Arrays.sort(e, 0, n);
        int depth = 0;
        int si = 0;
        int di = 0;
        double at = Double.NEGATIVE_INFINITY;
        boolean boundary = openGapM == 0;
        for (int ei = 0; ei < n; ) {
            boolean opens = si < n && s[si] <= e[ei];
            double next = opens ? s[si] : e[ei];
            if (depth == 0) {
                if (next > at && (boundary || at > Double.NEGATIVE_INFINITY)) {
                    while (di < domain.length && domain[di + 1] <= at) {
                        di += 2;
                    }
                    skipM2 += !boundary && next - at <= openGapM ? next - at : within(domain, di, at, next);
                }
            } else {
                coveredM2 += next - at;
                overlapM2 += depth > 1 ? next - at : 0;
            }
            at = next;
            depth += opens ? 1 : -1;
            si += opens ? 1 : 0;
            ei += opens ? 0 : 1;
        }
        if (boundary) {
            skipM2 += within(domain, di, at, Double.POSITIVE_INFINITY);
        }
    }

    /** Length of [from, to] within the domain's pairs from index di on. */
    private static double within(double[] domain, int di, double from, double to) {
        double sum = 0;
        for (int i = di; i < domain.length && domain[i] < to; i += 2) {
            sum += Math.max(0, Math.min(to, domain[i + 1]) - Math.max(from, domain[i]));
        }
        return sum;
    }

    /** Returns the area covered at least once, m². */
    double coveredM2() {
        return coveredM2;
    }

    /** Returns the area covered twice or more, m². */
    double overlapM2() {
        return overlapM2;
    }

    /** Returns the area of the domain that is not covered, m². */
    double skipM2() {
        return skipM2;
    }
}
