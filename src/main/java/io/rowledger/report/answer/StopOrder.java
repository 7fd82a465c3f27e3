package io.rowledger.report.answer;

import io.rowledger.report.sections.PlaceEnds;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The order of stops that takes the least driving between them. Each stop is driven from one of its ends to the other, in
 * either direction; the way back home is not counted.
 *
 * <p>Exact up to {@value #MAX_EXACT} stops (Held and Karp, "A dynamic programming approach to sequencing problems", 1962, with a
 * direction per stop); beyond that always the nearest end next. Distances are straight lines.
 *
 * <p>By hand: from 0 m, stops at 10 to 20 m, 50 m and 30 m along a line are best visited as 10 to 20, 30, 50.
 */
final class StopOrder {
    private static final int MAX_EXACT = 10;

    private StopOrder() {}

    /**
     * The stops in that order, each in the direction in which it is driven.
     *
     * @param eastM where driving begins, m
     * @param northM where driving begins, m
     */
    static <T extends Stop<T>> List<T> of(List<T> stops, double eastM, double northM) {
        return stops.size() <= MAX_EXACT ? exact(stops, eastM, northM) : nearest(stops, eastM, northM);
    }

    /** A stop with two ends. */
    interface Stop<T> {
        /** Its ends as driven. */
        PlaceEnds ends();

        /** The same stop driven the other way. */
        T reversed();
    }

    private static <T extends Stop<T>> List<T> nearest(List<T> stops, double eastM, double northM) {
        List<T> left = new ArrayList<>(stops);
        List<T> order = new ArrayList<>();
        double x = eastM;
        double y = northM;
        while (!left.isEmpty()) {
            T best = null;
            int at = 0;
            double bestM = Double.POSITIVE_INFINITY;
            for (int i = 0; i < left.size(); i++) {
                for (T way : ways(left.get(i))) {
                    double distanceM =
                            Math.hypot(way.ends().startEastM() - x, way.ends().startNorthM() - y);
                    if (best == null || distanceM < bestM) {
                        best = way;
                        at = i;
                        bestM = distanceM;
                    }
                }
            }
            if (best == null) {
                break;
            }
            left.remove(at);
            order.add(best);
            x = best.ends().endEastM();
            y = best.ends().endNorthM();
        }
        return order;
    }

    private static <T extends Stop<T>> List<T> ways(T stop) {
        return List.of(stop, stop.reversed());
    }

    private static <T extends Stop<T>> List<T> exact(List<T> stops, double eastM, double northM) {
        List<T> ways = new ArrayList<>();
        stops.forEach(stop -> ways.addAll(ways(stop)));
        int n = stops.size();
        int all = 1 << n;
        double[][] least = new double[all][ways.size()];
        int[][] before = new int[all][ways.size()];
        for (double[] row : least) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        for (int w = 0; w < ways.size(); w++) {
            PlaceEnds ends = ways.get(w).ends();
            least[1 << (w / 2)][w] = Math.hypot(ends.startEastM() - eastM, ends.startNorthM() - northM);
            before[1 << (w / 2)][w] = -1;
        }
        for (int done = 1; done < all; done++) {
            for (int w = 0; w < ways.size(); w++) {
                if (Double.isInfinite(least[done][w])) {
                    continue;
                }
                for (int next = 0; next < ways.size(); next++) {
                    int with = done | (1 << (next / 2));
                    double sum = least[done][w]
                            + between(ways.get(w).ends(), ways.get(next).ends());
                    if (with != done && sum < least[with][next]) {
                        least[with][next] = sum;
                        before[with][next] = w;
                    }
                }
            }
        }
        return path(ways, least[all - 1], before);
    }

    private static double between(PlaceEnds from, PlaceEnds to) {
        return Math.hypot(to.startEastM() - from.endEastM(), to.startNorthM() - from.endNorthM());
    }

    private static <T extends Stop<T>> List<T> path(List<T> ways, double[] least, int[][] before) {
        List<T> order = new ArrayList<>();
        int last = 0;
        for (int w = 0; w < ways.size(); w++) {
            last = least[w] < least[last] ? w : last;
        }
        int done = before.length - 1;
        for (int w = ways.isEmpty() ? -1 : last; w >= 0; ) {
            order.add(0, ways.get(w));
            int previous = before[done][w];
            done &= ~(1 << (w / 2));
            w = previous;
        }
        return order;
    }
}
