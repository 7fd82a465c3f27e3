package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.rate.DeviationLimits;
import io.rowledger.report.map.WorkView;
import io.rowledger.track.Pass;

/**
 * The bar's rate along one pass, small enough for a line of a table: the middle line is the target, the gray band within 10 % of
 * it, the edges half and one and a half times the target.
 */
final class PassTrace implements Chart {
    private static final int POINTS = 48;
    private static final double RANGE = 0.5;

    private final double[] ratio;

    private PassTrace(double[] ratio) {
        this.ratio = ratio;
    }

    /** The trace of a pass; sums of {@value #POINTS} stretches of equally many steps. */
    static PassTrace of(WorkView work, Pass pass) {
        int steps = pass.endStep() - pass.firstStep();
        int points = Math.max(1, Math.min(POINTS, steps));
        double[] ratio = new double[points];
        for (int i = 0; i < points; i++) {
            int from = pass.firstStep() + (int) ((long) i * steps / points);
            int to = pass.firstStep() + (int) ((long) (i + 1) * steps / points);
            ratio[i] = work.ratio(0, work.strips().rows(), from, to);
        }
        return new PassTrace(ratio);
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double half = heightPt / 2;
        double band = DeviationLimits.ACT / RANGE * half;
        canvas.box(0, half - band, widthPt, 2 * band, Palette.BAND);
        canvas.line(0, half, widthPt, half, Palette.GRID, 0.5);
        Outline line = new Outline();
        boolean drawing = false;
        for (int i = 0; i < ratio.length; i++) {
            if (Double.isNaN(ratio[i])) {
                drawing = false;
                continue;
            }
            double x = (i + 0.5) / ratio.length * widthPt;
            double y = half - Math.max(-1, Math.min(1, (ratio[i] - 1) / RANGE)) * half;
            line = drawing ? line.line(x, y) : line.move(x, y);
            drawing = true;
        }
        if (!line.isEmpty()) {
            canvas.stroke(line, Palette.ACCENT, 0.8);
        }
    }
}
