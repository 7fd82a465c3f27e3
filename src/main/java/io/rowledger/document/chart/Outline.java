package io.rowledger.document.chart;

import java.util.Arrays;

/** Outlines as a column of moves, lines and closings; holds hundreds of thousands of corners without an object each. */
public final class Outline {
    /** Start a new outline. */
    public static final byte MOVE = 0;
    /** A straight line to the next corner. */
    public static final byte LINE = 1;
    /** Back to the outline's start; has no corner of its own. */
    public static final byte CLOSE = 2;
    /** A box: its corner, then its width and height. */
    public static final byte BOX = 3;

    private byte[] verbs = new byte[16];
    private double[] numbers = new double[32];
    private int verbCount;
    private int numberCount;

    /** Starts an outline. */
    public Outline move(double x, double y) {
        return add(MOVE, x, y);
    }

    /** Goes on to (x, y). */
    public Outline line(double x, double y) {
        return add(LINE, x, y);
    }

    /** Goes back to the outline's start. */
    public Outline close() {
        verb(CLOSE);
        return this;
    }

    /** Adds a box. */
    public Outline box(double x, double y, double width, double height) {
        add(BOX, x, y);
        numbers(width, height);
        return this;
    }

    /** Adds a circle as a polygon of sixteen corners: small marks only. */
    public Outline dot(double x, double y, double radius) {
        for (int i = 0; i < 16; i++) {
            double angle = i * Math.PI / 8;
            add(i == 0 ? MOVE : LINE, x + radius * Math.cos(angle), y + radius * Math.sin(angle));
        }
        return close();
    }

    /** True where there is nothing to draw. */
    public boolean isEmpty() {
        return verbCount == 0;
    }

    /** Walks over the path. */
    public void walk(Walker walker) {
        int n = 0;
        for (int i = 0; i < verbCount; i++) {
            switch (verbs[i]) {
                case MOVE -> walker.move(numbers[n], numbers[n + 1]);
                case LINE -> walker.line(numbers[n], numbers[n + 1]);
                case BOX -> walker.box(numbers[n], numbers[n + 1], numbers[n + 2], numbers[n + 3]);
                default -> walker.close();
            }
            n += verbs[i] == CLOSE ? 0 : verbs[i] == BOX ? 4 : 2;
        }
    }

    private Outline add(byte verb, double x, double y) {
        verb(verb);
        numbers(x, y);
        return this;
    }

    private void verb(byte verb) {
        if (verbCount == verbs.length) {
            verbs = Arrays.copyOf(verbs, verbCount * 2);
        }
        verbs[verbCount++] = verb;
    }

    private void numbers(double a, double b) {
        if (numberCount + 2 > numbers.length) {
            numbers = Arrays.copyOf(numbers, numberCount * 2);
        }
        numbers[numberCount++] = a;
        numbers[numberCount++] = b;
    }

    /** Receives a path's parts in order. */
    public interface Walker {
        /** Start of an outline. */
        void move(double x, double y);

        /** Next corner. */
        void line(double x, double y);

        /** A box. */
        void box(double x, double y, double width, double height);

        /** End of a closed outline. */
        void close();
    }
}
