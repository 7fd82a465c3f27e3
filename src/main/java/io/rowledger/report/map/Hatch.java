package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Outline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Hatching at 45 degrees, all of one kind in one phase, so that lines run on from one outline into the next.
 *
 * @param rising true for lines that rise to the right on paper
 * @param apartPt distance between two lines along an axis, points
 * @param rgb color of the lines
 * @param linePt width of the lines, points
 */
record Hatch(boolean rising, double apartPt, int rgb, double linePt) {
    /** An edge of a ring on paper, points. */
    private record Edge(double x0, double y0, double x1, double y1) {}

    /** A hatched outline: lines are cut at its edges by counting crossings, so holes stay open. */
    void fill(Canvas canvas, Outline outline, double left, double top, double right, double bottom) {
        List<Edge> edges = edges(outline);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Edge edge : edges) {
            double a = across(edge.x0, edge.y0);
            double b = across(edge.x1, edge.y1);
            low = Math.min(low, Math.min(a, b));
            high = Math.max(high, Math.max(a, b));
        }
        low = Math.max(low, rising ? left + top : left - bottom);
        high = Math.min(high, rising ? right + bottom : right - top);
        Outline lines = new Outline();
        double[] at = new double[edges.size()];
        for (double sum = Math.ceil(low / apartPt) * apartPt; sum < high; sum += apartPt) {
            int found = 0;
            for (Edge edge : edges) {
                double a = across(edge.x0, edge.y0) - sum;
                double b = across(edge.x1, edge.y1) - sum;
                if (a > 0 != b > 0) {
                    at[found++] = edge.x0 + a / (a - b) * (edge.x1 - edge.x0);
                }
            }
            Arrays.sort(at, 0, found);
            for (int i = 0; i + 1 < found; i += 2) {
                lines.move(at[i], y(at[i], sum)).line(at[i + 1], y(at[i + 1], sum));
            }
        }
        stroke(canvas, lines);
    }

    /** The class of a point on paper. */
    interface ClassAt {
        boolean hatched(double x, double y);
    }

    /** Hatches a part of a box wherever a test says so, tried every {@code stepPt} along each line. */
    void fill(Canvas canvas, double left, double top, double right, double bottom, double stepPt, ClassAt at) {
        Outline lines = new Outline();
        double low = rising ? left + top : left - bottom;
        double high = rising ? right + bottom : right - top;
        for (double sum = Math.ceil(low / apartPt) * apartPt; sum < high; sum += apartPt) {
            double x0 = Math.max(left, rising ? sum - bottom : sum + top);
            double x1 = Math.min(right, rising ? sum - top : sum + bottom);
            double begun = Double.NaN;
            for (double x = x0; x <= x1; x += stepPt) {
                boolean here = at.hatched(x, y(x, sum));
                if (here && Double.isNaN(begun)) {
                    begun = x;
                } else if (!here && !Double.isNaN(begun)) {
                    lines.move(begun, y(begun, sum)).line(x, y(x, sum));
                    begun = Double.NaN;
                }
            }
            if (!Double.isNaN(begun)) {
                lines.move(begun, y(begun, sum)).line(x1, y(x1, sum));
            }
        }
        stroke(canvas, lines);
    }

    private void stroke(Canvas canvas, Outline lines) {
        if (!lines.isEmpty()) {
            canvas.stroke(lines, rgb, linePt);
        }
    }

    private double across(double x, double y) {
        return rising ? x + y : x - y;
    }

    private double y(double x, double sum) {
        return rising ? sum - x : x - sum;
    }

    private static List<Edge> edges(Outline outline) {
        List<Edge> edges = new ArrayList<>();
        outline.walk(new Outline.Walker() {
            private double startX;
            private double startY;
            private double lastX;
            private double lastY;

            @Override
            public void move(double x, double y) {
                startX = x;
                startY = y;
                lastX = x;
                lastY = y;
            }

            @Override
            public void line(double x, double y) {
                edges.add(new Edge(lastX, lastY, x, y));
                lastX = x;
                lastY = y;
            }

            @Override
            public void box(double x, double y, double width, double height) {
                move(x, y);
                line(x + width, y);
                line(x + width, y + height);
                line(x, y + height);
                close();
            }

            @Override
            public void close() {
                line(startX, startY);
            }
        });
        return edges;
    }
}
