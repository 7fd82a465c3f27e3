package io.rowledger.report.rows;

import io.rowledger.coverage.Coverage;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.report.map.MapColors;
import io.rowledger.report.map.MapFrame;
import io.rowledger.report.map.RateMap;
import io.rowledger.report.rows.RowDiagnosis.Card;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.List;

/** Map of the field with each finding's number at the place where it shows first. */
final class FindingMap implements Chart {
    private static final double LEGEND_PT = 112;
    private static final double DOT_PT = 2.2;
    /** Vertices that a pass is drawn with: enough for a contour. */
    private static final int VERTICES = 60;

    private static final int PASS_RGB = 0xb9bfb4;
    private static final Ink NUMBER = new Ink(7.5, true, 0xffffff);

    private final Coverage coverage;
    private final Track track;
    private final List<Card> cards;
    private final Messages messages;

    FindingMap(RowsInput in, List<Card> cards, Messages messages) {
        this.coverage = in.coverage();
        this.track = in.track();
        this.cards = cards;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        MapFrame frame = new MapFrame(RateMap.ground(coverage), 0, 0, widthPt - LEGEND_PT - 10, heightPt);
        canvas.fill(frame.outline(coverage.covered()), MapColors.COVERED);
        passes(canvas, frame);
        canvas.stroke(
                frame.outline(
                        coverage.boundary() == null
                                ? coverage.covered()
                                : coverage.boundary().area()),
                Palette.SOFT,
                0.6);
        Labels labels = new Labels(canvas);
        double[] eastNorthM = new double[2];
        for (Card card : cards) {
            if (!Double.isFinite(card.latDeg()) || !Double.isFinite(card.lonDeg())) {
                continue;
            }
            track.plane().forward(card.latDeg(), card.lonDeg(), eastNorthM);
            double x = Math.min(frame.left() + frame.width() - DOT_PT, Math.max(DOT_PT, frame.x(eastNorthM[0])));
            double y = Math.min(frame.top() + frame.height() - DOT_PT, Math.max(DOT_PT, frame.y(eastNorthM[1])));
            canvas.fill(new Outline().dot(x, y, DOT_PT), MapColors.SKIP);
            number(labels, Integer.toString(card.number()), x, y, heightPt);
        }
        legend(canvas, frame, widthPt - LEGEND_PT);
    }

    /** Draws a number at the first position beside the place that is still free. */
    private static void number(Labels labels, String number, double x, double y, double heightPt) {
        double[][] sides = {{9, 0}, {-9, 0}, {0, 10}, {0, -10}, {9, 10}, {-9, 10}, {20, 0}, {-20, 0}, {0, 20}};
        for (double[] side : sides) {
            double toY = y + side[1];
            if (toY > 5
                    && toY < heightPt - 5
                    && x + side[0] > 5
                    && labels.plate(number, x + side[0], toY, NUMBER, Palette.INK)) {
                return;
            }
        }
    }

    private void passes(Canvas canvas, MapFrame frame) {
        Poses poses = track.poses();
        Outline path = new Outline();
        for (Pass pass : track.passes()) {
            int steps = pass.endStep() - pass.firstStep();
            for (int i = 0; i <= VERTICES; i++) {
                int k = pass.firstStep() + (int) ((long) steps * i / VERTICES);
                double x = frame.x(poses.dropEastM(k));
                double y = frame.y(poses.dropNorthM(k));
                path = i == 0 ? path.move(x, y) : path.line(x, y);
            }
        }
        if (!path.isEmpty()) {
            canvas.stroke(path, PASS_RGB, 0.4);
        }
    }

    private void legend(Canvas canvas, MapFrame frame, double x) {
        canvas.text(messages.text("rows.map.title"), x, 8, Palette.STRONG, Align.LEFT);
        canvas.fill(new Outline().dot(x + 5, 20, DOT_PT), MapColors.SKIP);
        canvas.text(messages.text("rows.map.number"), x + 15, 22.5, Palette.LABEL, Align.LEFT);
        canvas.line(x, 33, x + 10, 33, PASS_RGB, 0.8);
        canvas.text(messages.text("rows.map.pass"), x + 15, 35.5, Palette.LABEL, Align.LEFT);
        frame.scaleBar(canvas, x, 64, LEGEND_PT - 30, messages.units());
        MapFrame.northArrow(canvas, x + LEGEND_PT - 8, 50);
    }
}
