package io.rowledger.sim;

import java.util.Arrays;

/**
 * Ground truth by sampling: cells of 5 cm, each evaluated at its center, with a count of visits.
 *
 * <p>The raster is turned a little against the field so that no edge runs along a line of cells: then the sampling error
 * of an edge of length L is of the order of cell·√(cell·L), not cell·L. A cell touched again after more than
 * {@value #NEW_VISIT_S} s counts a new visit: a later pass, or the same pass crossing its own strip.
 */
public final class CoverRaster {
    static final double CELL_M = 0.05;
    private static final double NEW_VISIT_S = 2;
    private static final double TICK_S = 0.25;
    private static final double TURNED_RAD = 0.0487;

    private final double cos;
    private final double sin;
    private final double minU;
    private final double minV;
    private final int columns;
    private final int lines;
    private final byte[] visits;
    private final char[] seen;
    private final double[] crossings = new double[64];
    /** Cells visited once or more, and twice or more. */
    private long covered;

    private long overlap;

    /** A raster over {minX, minY, maxX, maxY}; its lines run near the given heading. */
    public CoverRaster(double[] bounds, double headingRad) {
        double turned = headingRad + TURNED_RAD;
        cos = Math.cos(turned);
        sin = Math.sin(turned);
        double[] us = new double[4];
        double[] vs = new double[4];
        for (int i = 0; i < 4; i++) {
            us[i] = u(bounds[(i & 1) * 2], bounds[1 + (i >> 1) * 2]);
            vs[i] = v(bounds[(i & 1) * 2], bounds[1 + (i >> 1) * 2]);
        }
        minU = Arrays.stream(us).min().orElseThrow();
        minV = Arrays.stream(vs).min().orElseThrow();
        columns = (int) Math.ceil((Arrays.stream(us).max().orElseThrow() - minU) / CELL_M) + 1;
        lines = (int) Math.ceil((Arrays.stream(vs).max().orElseThrow() - minV) / CELL_M) + 1;
        visits = new byte[Math.multiplyExact(columns, lines)];
        seen = new char[columns * lines];
    }

    private double u(double x, double y) {
        return x * cos - y * sin;
    }

    private double v(double x, double y) {
        return x * sin + y * cos;
    }

    /** Adds the strips of a step; neighboring rows that deliver are merged. */
    void step(StepState s) {
        int i = 0;
        while (i < s.rows) {
            if (!counts(s, i)) {
                i++;
                continue;
            }
            int last = i;
            while (last + 1 < s.rows && counts(s, last + 1) && s.rig.leftM()[last + 1] == s.rig.rightM()[last]) {
                last++;
            }
            int r = s.rows + last;
            fill(
                    new double[] {s.startX[i], s.endX[i], s.endX[r], s.startX[r]},
                    new double[] {s.startY[i], s.endY[i], s.endY[r], s.startY[r]},
                    s.timeS);
            i = last + 1;
        }
    }

    private static boolean counts(StepState s, int i) {
        return s.areaM2[i] > 0 && s.delivering(i);
    }

    /** Visits every cell whose centre lies in the polygon (even-odd, half open), at a time. */
    public void fill(double[] x, double[] y, double timeS) {
        int tick = (int) (timeS / TICK_S) + 1;
        if (tick > Character.MAX_VALUE) {
            throw new IllegalStateException("the raster's clock ends after 4.5 h; run without it");
        }
        scan(x, y, (line, from, to) -> {
            for (int k = line * columns + from; k < line * columns + to; k++) {
                if (seen[k] == 0 || (tick - seen[k]) * TICK_S > NEW_VISIT_S) {
                    visit(k);
                }
                seen[k] = (char) tick;
            }
        });
    }

    private void visit(int cell) {
        int before = visits[cell];
        covered += before == 0 ? 1 : 0;
        overlap += before == 1 ? 1 : 0;
        visits[cell] = (byte) Math.min(100, before + 1);
    }

    /** A run of cells of one line. */
    private interface Run {
        void cells(int line, int from, int to);
    }

    private void scan(double[] x, double[] y, Run run) {
        int n = x.length;
        double[] pu = new double[n];
        double[] pv = new double[n];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            // In cells, with centres at whole numbers.
            pu[i] = (u(x[i], y[i]) - minU) / CELL_M - 0.5;
            pv[i] = (v(x[i], y[i]) - minV) / CELL_M - 0.5;
            low = Math.min(low, pv[i]);
            high = Math.max(high, pv[i]);
        }
        for (int line = Math.max(0, (int) Math.ceil(low));
                line <= Math.min(lines - 1, (int) Math.floor(high));
                line++) {
            int found = 0;
            for (int i = 0; i < n; i++) {
                int j = i + 1 == n ? 0 : i + 1;
                // Always from the lower end, so that two polygons that share an edge find the same crossing.
                int a = pv[i] < pv[j] ? i : j;
                int b = a == i ? j : i;
                if (pv[a] <= line && line < pv[b]) {
                    crossings[found++] = pu[a] + (line - pv[a]) / (pv[b] - pv[a]) * (pu[b] - pu[a]);
                }
            }
            sort(found);
            for (int i = 0; i + 1 < found; i += 2) {
                int from = Math.max(0, (int) Math.ceil(crossings[i]));
                int to = Math.min(columns, (int) Math.ceil(crossings[i + 1]));
                run.cells(line, from, to);
            }
        }
    }

    /** Sorts the first crossings; a strip has two or four. */
    private void sort(int count) {
        for (int i = 1; i < count; i++) {
            double one = crossings[i];
            int at = i;
            while (at > 0 && crossings[at - 1] > one) {
                crossings[at] = crossings[at - 1];
                at--;
            }
            crossings[at] = one;
        }
    }

    /** Sums up; {@code boundary} is a ring of {x, y} or null. Ends the raster's life: gaps are filled in place. */
    public Truth.Ground ground(double[][] boundary) {
        double cellM2 = CELL_M * CELL_M;
        double skips = Double.NaN;
        double inside = Double.NaN;
        double boundaryM2 = Double.NaN;
        if (boundary != null) {
            long[] counts = new long[2];
            double[] x = Arrays.stream(boundary).mapToDouble(p -> p[0]).toArray();
            double[] y = Arrays.stream(boundary).mapToDouble(p -> p[1]).toArray();
            scan(x, y, (line, from, to) -> {
                int visited = 0;
                for (int k = line * columns + from; k < line * columns + to; k++) {
                    visited += visits[k] == 0 ? 0 : 1;
                }
                counts[0] += Math.max(0, to - from) - visited;
                counts[1] += visited;
            });
            skips = counts[0] * cellM2;
            inside = counts[1] * cellM2;
            boundaryM2 = shoelaceM2(boundary);
        }
        return new Truth.Ground(
                covered * cellM2, overlap * cellM2, skips, inside, boundaryM2, enclosedCells() * cellM2);
    }

    static double shoelaceM2(double[][] ring) {
        double twice = 0;
        for (int i = 0; i < ring.length; i++) {
            double[] a = ring[i];
            double[] b = ring[(i + 1) % ring.length];
            twice += (a[0] - ring[0][0]) * (b[1] - ring[0][1]) - (b[0] - ring[0][0]) * (a[1] - ring[0][1]);
        }
        return Math.abs(twice) / 2;
    }

    /**
     * Unvisited cells that a flood from the first and the last line over unvisited cells does not reach: runs of such cells in a
     * line, joined where runs of neighboring lines touch.
     */
    private long enclosedCells() {
        Pools pools = new Pools();
        int[][] above = new int[3][columns / 2 + 1];
        int[][] here = new int[3][columns / 2 + 1];
        int runsAbove = 0;
        for (int line = 0; line < lines; line++) {
            int start = line * columns;
            int runs = 0;
            int touching = 0;
            for (int c = 0; c < columns; c++) {
                if (visits[start + c] != 0) {
                    continue;
                }
                int from = c;
                while (c < columns && visits[start + c] == 0) {
                    c++;
                }
                int pool = line == 0 || line == lines - 1 ? Pools.OUTSIDE : pools.open();
                while (touching < runsAbove && above[1][touching] <= from) {
                    touching++;
                }
                for (int i = touching; i < runsAbove && above[0][i] < c; i++) {
                    pool = pools.join(pool, above[2][i]);
                }
                pools.cells[pool] += c - from;
                here[0][runs] = from;
                here[1][runs] = c;
                here[2][runs++] = pool;
            }
            int[][] free = above;
            above = here;
            here = free;
            runsAbove = runs;
        }
        return pools.enclosed();
    }

    /** Connected cells by number; joined ones have the lowest of their numbers. */
    private static final class Pools {
        static final int OUTSIDE = 0;

        private int[] joined = new int[1024];
        private long[] cells = new long[1024];
        private int count = 1;

        int open() {
            if (count == joined.length) {
                joined = Arrays.copyOf(joined, 2 * count);
                cells = Arrays.copyOf(cells, 2 * count);
            }
            joined[count] = count;
            return count++;
        }

        int join(int one, int other) {
            int a = lowest(one);
            int b = lowest(other);
            joined[Math.max(a, b)] = Math.min(a, b);
            return Math.min(a, b);
        }

        private int lowest(int pool) {
            int at = pool;
            while (joined[at] != at) {
                joined[at] = joined[joined[at]];
                at = joined[at];
            }
            return at;
        }

        long enclosed() {
            long sum = 0;
            for (int pool = 1; pool < count; pool++) {
                sum += lowest(pool) == OUTSIDE ? 0 : cells[pool];
            }
            return sum;
        }
    }
}
