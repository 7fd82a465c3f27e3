package io.rowledger.report.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.report.sections.PlaceEnds;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StopOrderTest {
    private record OnALine(double fromM, double toM) implements StopOrder.Stop<OnALine> {
        @Override
        public PlaceEnds ends() {
            return new PlaceEnds(fromM, 0, toM, 0, Math.abs(toM - fromM), 1);
        }

        @Override
        public OnALine reversed() {
            return new OnALine(toM, fromM);
        }
    }

    /** The example of {@link StopOrder}. */
    @Test
    void stops_on_a_line_are_visited_along_it() {
        List<OnALine> order =
                StopOrder.of(List.of(new OnALine(50, 50), new OnALine(20, 10), new OnALine(30, 30)), 0, 0);
        assertEquals(List.of(new OnALine(10, 20), new OnALine(30, 30), new OnALine(50, 50)), order);
    }

    /** Every order and direction of four stops tried one by one: 24 orders of 16 directions. */
    @Test
    void no_other_order_takes_less_driving() {
        Random random = new Random(5);
        for (int round = 0; round < 20; round++) {
            List<Anywhere> stops = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                stops.add(new Anywhere(
                        random.nextDouble(), random.nextDouble(), random.nextDouble(), random.nextDouble()));
            }
            double least = Double.POSITIVE_INFINITY;
            for (List<Anywhere> order : permutations(stops)) {
                for (int ways = 0; ways < 16; ways++) {
                    List<Anywhere> turned = new ArrayList<>();
                    for (int i = 0; i < 4; i++) {
                        turned.add(
                                (ways >> i & 1) == 0
                                        ? order.get(i)
                                        : order.get(i).reversed());
                    }
                    least = Math.min(least, driven(turned));
                }
            }
            assertEquals(least, driven(StopOrder.of(stops, 0, 0)), 1e-12);
        }
    }

    @Test
    void many_stops_are_each_visited_once() {
        List<OnALine> stops = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            stops.add(new OnALine(i, i + 0.5));
        }
        List<OnALine> shuffled = new ArrayList<>(stops);
        Collections.shuffle(shuffled, new Random(1));
        assertEquals(stops, StopOrder.of(shuffled, -1, 0));
    }

    private record Anywhere(double x0, double y0, double x1, double y1) implements StopOrder.Stop<Anywhere> {
        @Override
        public PlaceEnds ends() {
            return new PlaceEnds(x0, y0, x1, y1, 1, 1);
        }

        @Override
        public Anywhere reversed() {
            return new Anywhere(x1, y1, x0, y0);
        }
    }

    private static double driven(List<Anywhere> order) {
        double x = 0;
        double y = 0;
        double sum = 0;
        for (Anywhere stop : order) {
            sum += Math.hypot(stop.x0 - x, stop.y0 - y);
            x = stop.x1;
            y = stop.y1;
        }
        return sum;
    }

    private static List<List<Anywhere>> permutations(List<Anywhere> of) {
        if (of.isEmpty()) {
            return List.of(List.of());
        }
        List<List<Anywhere>> all = new ArrayList<>();
        for (Anywhere first : of) {
            List<Anywhere> rest = new ArrayList<>(of);
            rest.remove(first);
            for (List<Anywhere> tail : permutations(rest)) {
                List<Anywhere> order = new ArrayList<>(List.of(first));
                order.addAll(tail);
                all.add(order);
            }
        }
        return all;
    }
}
