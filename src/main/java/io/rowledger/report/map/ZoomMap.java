package io.rowledger.report.map;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/**
 * A place near enough to see single rows: each row's ground in the class of its rate, skips outlined, overlaps outlined in blue,
 * the tramline that the tractor drove in every pass with its number and direction, row numbers, and a locator.
 */
public final class ZoomMap implements Chart {
    /** Steps of one color at most: half a meter each, so about two meters. */
    private static final int STEPS = 4;
    /** Rows narrower than this on paper have no numbers. */
    private static final double MIN_NUMBERED_PT = 5.5;

    private static final double LOCATOR_PT = 40;
    private static final double FOOT_PT = 16;
    private static final double ARROW_PT = 4;
    private static final Ink NUMBER = new Ink(4.8, false, Palette.INK);
    private static final Ink PASS = new Ink(6, true, Palette.INK);
    private static final Ink PLACE = new Ink(7, true, Palette.WHITE);

    private final GroundView ground;
    private final WorkView work;
    private final RateMap.Mark place;
    private final Messages messages;
    private final Envelope window;

    /**
     * The surroundings of a place.
     *
     * @param sizeM side of the square that must be seen, m
     */
    public ZoomMap(GroundView ground, WorkView work, RateMap.Mark place, double sizeM, Messages messages) {
        this.ground = ground;
        this.work = work;
        this.place = place;
        this.messages = messages;
        this.window = new Envelope(
                place.eastM() - sizeM / 2,
                place.eastM() + sizeM / 2,
                place.northM() - sizeM / 2,
                place.northM() + sizeM / 2);
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double mapPt = heightPt - FOOT_PT;
        // The window grows to the shape of the paper, so that nothing of it is empty.
        Envelope shown = new Envelope(window);
        if (widthPt > mapPt) {
            shown.expandBy((widthPt / mapPt - 1) * window.getWidth() / 2, 0);
        } else {
            shown.expandBy(0, (mapPt / widthPt - 1) * window.getHeight() / 2);
        }
        MapFrame frame = new MapFrame(shown, 0, 0, widthPt, mapPt);
        canvas.clip(frame.left(), frame.top(), frame.width(), frame.height());
        rows(canvas, frame, shown);
        places(canvas, frame);
        canvas.unclip();
        canvas.stroke(new Outline().box(frame.left(), frame.top(), frame.width(), frame.height()), Palette.SOFT, 0.5);
        Labels labels = new Labels(canvas);
        labels.plate(place.text(), frame.x(place.eastM()), frame.y(place.northM()) - 7, PLACE, Palette.INK);
        canvas.clip(frame.left(), frame.top(), frame.width(), frame.height());
        locator(canvas, frame);
        tramlines(canvas, frame, shown, labels);
        canvas.unclip();
        frame.scaleBar(canvas, frame.left(), heightPt - 4, 90, messages.units());
        MapFrame.northArrow(canvas, frame.left() + frame.width() - 10, heightPt - 14);
        canvas.text(
                messages.text("words.map.tramline"),
                frame.left() + frame.width() - 22,
                heightPt - 4,
                Palette.SMALL,
                Align.RIGHT);
    }

    /** True if a step may be seen. */
    private boolean near(Envelope shown, int k, double reachM) {
        Poses poses = work.strips().poses();
        double x = poses.dropEastM(k);
        double y = poses.dropNorthM(k);
        return x > shown.getMinX() - reachM
                && x < shown.getMaxX() + reachM
                && y > shown.getMinY() - reachM
                && y < shown.getMaxY() + reachM;
    }

    private double reachM() {
        Strips strips = work.strips();
        return Math.max(Math.abs(strips.leftM(0)), Math.abs(strips.rightM(strips.rows() - 1))) + 2;
    }

    private void rows(Canvas canvas, MapFrame frame, Envelope shown) {
        double reachM = reachM();
        for (Pass pass : ground.track().passes()) {
            for (int k = pass.firstStep(); k < pass.endStep(); k += STEPS) {
                if (near(shown, k, reachM)) {
                    int end = Math.min(pass.endStep(), k + STEPS);
                    for (int r = 0; r < work.strips().rows(); r++) {
                        cell(canvas, frame, r, k, end);
                    }
                }
            }
        }
    }

    private void cell(Canvas canvas, MapFrame frame, int r, int first, int end) {
        int k = first;
        while (k < end && !work.delivery().delivering(r, k)) {
            k++;
        }
        int to = k;
        while (to < end && work.delivery().delivering(r, to)) {
            to++;
        }
        double ratio = work.ratio(r, r + 1, k, to);
        if (to == k) {
            return;
        }
        Poses poses = work.strips().poses();
        double left = work.strips().leftM(r);
        double right = work.strips().rightM(r);
        Outline outline = new Outline();
        for (int i = k; i <= to; i++) {
            double x = frame.x(poses.eastM(i, left));
            double y = frame.y(poses.northM(i, left));
            outline = i == k ? outline.move(x, y) : outline.line(x, y);
        }
        for (int i = to; i >= k; i--) {
            outline.line(frame.x(poses.eastM(i, right)), frame.y(poses.northM(i, right)));
        }
        outline.close();
        if (Double.isNaN(ratio)) {
            canvas.fill(outline, MapColors.NOT_EVALUATED);
            return;
        }
        ClassHatch.fill(
                canvas,
                outline,
                DeviationClasses.of(ratio - 1),
                frame.left(),
                frame.top(),
                frame.left() + frame.width(),
                frame.top() + frame.height());
        canvas.line(
                frame.x(poses.eastM(k, left)),
                frame.y(poses.northM(k, left)),
                frame.x(poses.eastM(to, left)),
                frame.y(poses.northM(to, left)),
                Palette.GRID,
                0.25);
    }

    private void places(Canvas canvas, MapFrame frame) {
        Coverage c = ground.coverage();
        for (CoverageDefect overlap : near(c.overlaps(), frame)) {
            canvas.stroke(frame.outline(overlap.polygon()), Palette.WHITE, 2);
            canvas.stroke(frame.outline(overlap.polygon()), MapColors.OVERLAP, 1.1);
        }
        SkipMarks.draw(canvas, frame, near(c.skips(), frame), ground.rowWidthM());
        if (c.boundary() != null) {
            canvas.stroke(frame.outline(c.boundary().area()), Palette.INK, 1.2);
        }
    }

    private static List<CoverageDefect> near(List<CoverageDefect> places, MapFrame frame) {
        Envelope shown = new Envelope(
                frame.eastM(frame.left()),
                frame.eastM(frame.left() + frame.width()),
                frame.northM(frame.top()),
                frame.northM(frame.top() + frame.height()));
        return places.stream()
                .filter(each -> each.polygon().getEnvelopeInternal().intersects(shown))
                .toList();
    }

    /** The tractor's center line in each pass, an arrow in its direction, the pass's number, and row numbers beside the arrow. */
    private void tramlines(Canvas canvas, MapFrame frame, Envelope shown, Labels labels) {
        Poses poses = work.strips().poses();
        for (Pass pass : ground.track().passes()) {
            Outline line = new Outline();
            boolean drawing = false;
            int middle = -1;
            double best = Double.POSITIVE_INFINITY;
            for (int k = pass.firstStep(); k < pass.endStep(); k++) {
                if (!near(shown, k, 5)) {
                    drawing = false;
                    continue;
                }
                double x = frame.x(poses.hitchEastM(k));
                double y = frame.y(poses.hitchNorthM(k));
                line = drawing ? line.line(x, y) : line.move(x, y);
                drawing = true;
                double away = Math.hypot(poses.dropEastM(k) - place.eastM(), poses.dropNorthM(k) - place.northM());
                if (away < best && near(shown, k, -3)) {
                    best = away;
                    middle = k;
                }
            }
            if (!line.isEmpty()) {
                canvas.stroke(line, Palette.INK, 0.5);
            }
            if (middle >= 0) {
                arrow(canvas, frame, middle);
                double ahead = 12;
                double heading = poses.headingRad(middle);
                labels.plate(
                        messages.text("words.map.passOf", pass.number()),
                        frame.x(poses.dropEastM(middle)) + ahead * Math.sin(heading),
                        frame.y(poses.dropNorthM(middle)) - ahead * Math.cos(heading),
                        PASS,
                        Palette.WHITE);
                rowNumbers(frame, labels, middle);
            }
        }
    }

    private void arrow(Canvas canvas, MapFrame frame, int k) {
        Poses poses = work.strips().poses();
        double sin = Math.sin(poses.headingRad(k));
        double cos = Math.cos(poses.headingRad(k));
        double x = frame.x(poses.hitchEastM(k));
        double y = frame.y(poses.hitchNorthM(k));
        canvas.fill(
                new Outline()
                        .move(x + ARROW_PT * sin, y - ARROW_PT * cos)
                        .line(x - ARROW_PT / 2 * (sin + cos), y + ARROW_PT / 2 * (cos - sin))
                        .line(x - ARROW_PT / 2 * (sin - cos), y + ARROW_PT / 2 * (cos + sin))
                        .close(),
                Palette.INK);
    }

    private void rowNumbers(MapFrame frame, Labels labels, int k) {
        Poses poses = work.strips().poses();
        for (int r = 0; r < work.strips().rows(); r++) {
            double middle = (work.strips().leftM(r) + work.strips().rightM(r)) / 2;
            double x = frame.x(poses.eastM(k, middle));
            double y = frame.y(poses.northM(k, middle));
            boolean inside = x > frame.left() + 4
                    && x < frame.left() + frame.width() - 4
                    && y > frame.top() + 4
                    && y < frame.top() + frame.height() - 4;
            if (inside && frame.pt(work.strips().rightM(r) - work.strips().leftM(r)) >= MIN_NUMBERED_PT) {
                labels.plate(Integer.toString(r + 1), x, y, NUMBER, Palette.WHITE);
            }
        }
    }

    /** The whole field, small, with this window in it. */
    private void locator(Canvas canvas, MapFrame frame) {
        double x = frame.left() + frame.width() - LOCATOR_PT;
        double y = frame.top();
        canvas.box(x, y, LOCATOR_PT, LOCATOR_PT, Palette.WHITE);
        canvas.stroke(new Outline().box(x, y, LOCATOR_PT, LOCATOR_PT), Palette.SOFT, 0.5);
        MapFrame small = new MapFrame(RateMap.ground(ground.coverage()), x + 2, y + 2, LOCATOR_PT - 4, LOCATOR_PT - 4);
        canvas.fill(small.outline(RateMap.edge(ground.coverage())), MapColors.COVERED);
        canvas.stroke(small.outline(RateMap.edge(ground.coverage())), Palette.SOFT, 0.4);
        double side = Math.max(3, small.pt(window.getWidth()));
        canvas.stroke(
                new Outline().box(small.x(place.eastM()) - side / 2, small.y(place.northM()) - side / 2, side, side),
                Palette.INK,
                1);
    }
}
