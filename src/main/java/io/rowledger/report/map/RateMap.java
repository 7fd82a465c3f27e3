package io.rowledger.report.map;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.setback.Setbacks;
import io.rowledger.track.Pass;
import io.rowledger.track.PathBreak;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * Map of the rate on the ground against the target: classes of deviation, boundary, pass numbers, gaps in the positions, scale
 * bar, north arrow and legend; with a keep-out file also its places and setbacks.
 */
public final class RateMap implements Chart {
    private static final double LEGEND_PT = 112;
    /** Half the width of the widest sliver between passes that {@link #edge} closes, m: wider ones are skips. */
    private static final double SLIVER_M = 0.13;

    /** Rows shorter than this keep their width on paper, m: they are corners and ends; common practice, no source. */
    private static final double MIN_STRETCH_M = 20;

    private static final Canvas.Ink MARK = new Canvas.Ink(6.5, true, Palette.WHITE);

    private final GroundView view;
    private final int product;
    private final Messages messages;
    private final UnitFormat f;
    private final boolean hasTarget;
    private final List<Mark> marks;

    /**
     * The map of one product.
     *
     * @param marks labels of the places that the text names, most important first
     */
    public RateMap(GroundView view, int product, boolean hasTarget, List<Mark> marks, Messages messages) {
        this.marks = List.copyOf(marks);
        this.view = view;
        this.product = product;
        this.hasTarget = hasTarget;
        this.messages = messages;
        this.f = messages.units();
    }

    /** A label on the map at a place of the plane. */
    public record Mark(String text, double eastM, double northM) {}

    /** The ground a map of this job shows: boundary and everything covered. */
    public static Envelope ground(Coverage c) {
        Envelope ground = new Envelope(c.covered().getEnvelopeInternal());
        if (c.boundary() != null) {
            ground.expandToInclude(c.boundary().area().getEnvelopeInternal());
        }
        if (ground.isNull()) {
            ground.init(0, 1, 0, 1);
        }
        return ground;
    }

    /**
     * The line around the ground: the boundary, or without one the edge of the covered ground, with slivers between
     * neighboring passes closed, which would look like skips on paper.
     */
    public static Geometry edge(Coverage c) {
        return c.boundary() == null
                ? c.covered().buffer(SLIVER_M, 2).buffer(-SLIVER_M, 2)
                : c.boundary().area();
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        Coverage c = view.coverage();
        double mapWidth = widthPt - LEGEND_PT - 10;
        MapFrame frame = new MapFrame(KeepOutMarks.ground(ground(c), view.setbacks()), 0, 0, mapWidth, heightPt);
        ClassRaster raster =
                ClassRaster.of(c.grid(), product, c.received().get(product).meanRateLPerM2());
        boolean widened = widen(frame, raster);
        cells(canvas, frame, c.grid(), raster);
        hatch(canvas, frame, c.grid(), raster);
        // Exact skips over the cells: a skip of one row is narrower than a block of cells on a big field.
        widened |= SkipMarks.draw(canvas, frame, c.skips(), view.rowWidthM());
        if (c.boundary() != null) {
            canvas.stroke(frame.outline(c.boundary().area()), Palette.INK, 0.9);
        } else {
            canvas.stroke(frame.outline(edge(c)), Palette.SOFT, 0.4);
        }
        List<PathBreak> breaks = view.track().breaks();
        PositionMarks.draw(canvas, frame, breaks);
        Labels labels = new Labels(canvas);
        Setbacks setbacks = view.setbacks();
        if (setbacks != null) {
            KeepOutMarks.draw(canvas, frame, setbacks, labels);
        }
        marks(frame, labels);
        passNumbers(frame, labels);
        legend(canvas, frame, raster, widened, widthPt - LEGEND_PT);
    }

    /** Rows that are far off and thinner on paper than they can be seen take some of the ground beside them. */
    private boolean widen(MapFrame frame, ClassRaster raster) {
        double thinPt = SkipMarks.MIN_WIDTH_PT - Math.max(frame.pt(view.rowWidthM()), frame.pt(raster.blockM));
        int blocks = (int) Math.round(thinPt / 2 / frame.pt(raster.blockM));
        return blocks > 0 && raster.widen(blocks, MIN_STRETCH_M);
    }

    private static void hatch(Canvas canvas, MapFrame frame, ReceivedGrid grid, ClassRaster raster) {
        double stepPt = Math.max(0.3, frame.pt(raster.blockM) / 2);
        for (int i = 0; i < DeviationClasses.count(); i++) {
            Hatch hatch = ClassHatch.of(i);
            int shown = i;
            if (hatch != null && raster.classM2[i] > 0) {
                hatch.fill(
                        canvas,
                        frame.left(),
                        frame.top(),
                        frame.left() + frame.width(),
                        frame.top() + frame.height(),
                        stepPt,
                        (x, y) -> raster.at(grid, frame.eastM(x), frame.northM(y)) == shown);
            }
        }
    }

    private void marks(MapFrame frame, Labels labels) {
        for (Mark mark : marks) {
            double x = frame.x(mark.eastM());
            double y = frame.y(mark.northM());
            // Beside the place if something stands on it already.
            for (double up : new double[] {8, -8, 17, -17}) {
                if (labels.plate(mark.text(), x, Math.max(5, y - up), MARK, Palette.INK)) {
                    break;
                }
            }
        }
    }

    private static void cells(Canvas canvas, MapFrame frame, ReceivedGrid grid, ClassRaster raster) {
        int onTarget = DeviationClasses.ON_TARGET;
        // All covered ground first, in the middle color, so that no seam between two classes shows the ground below.
        paint(canvas, frame, grid, raster, -1, DeviationClasses.color(onTarget));
        for (int i = 0; i < DeviationClasses.count(); i++) {
            if (i != onTarget) {
                paint(canvas, frame, grid, raster, i, DeviationClasses.color(i));
            }
        }
    }

    public static void paint(
            Canvas canvas, MapFrame frame, ReceivedGrid grid, ClassRaster raster, int wanted, int rgb) {
        Outline path = new Outline();
        raster.boxes(wanted, (col, row, width, height) -> {
            double eastM = grid.east0M() + col * raster.blockM;
            double northM = grid.north0M() + (row + height) * raster.blockM;
            path.box(
                    frame.x(eastM), frame.y(northM), frame.pt(width * raster.blockM), frame.pt(height * raster.blockM));
        });
        if (!path.isEmpty()) {
            canvas.fill(path, rgb);
        }
    }

    private void passNumbers(MapFrame frame, Labels labels) {
        List<Mark> numbers = new ArrayList<>();
        passStarts(view.track(), numbers);
        Canvas.Ink ink = new Canvas.Ink(6, true, Palette.INK);
        numbers.forEach(
                mark -> labels.plate(mark.text(), frame.x(mark.eastM()), frame.y(mark.northM()), ink, Palette.WHITE));
    }

    /** The number of each pass near its start. */
    static void passStarts(Track track, List<Mark> numbers) {
        Poses poses = track.poses();
        for (Pass pass : track.passes()) {
            // A little way into the pass, so that the number stands on its own strip and not on the headland's.
            int k = pass.firstStep() + (pass.endStep() - pass.firstStep()) / 20;
            numbers.add(new Mark(Integer.toString(pass.number()), poses.dropEastM(k), poses.dropNorthM(k)));
        }
    }

    private void legend(Canvas canvas, MapFrame frame, ClassRaster raster, boolean widened, double x) {
        canvas.text(messages.text("words.map.received"), x, 8, Palette.STRONG, Align.LEFT);
        canvas.text(
                messages.text(hasTarget ? "words.map.againstTarget" : "words.map.againstMean"),
                x,
                17,
                Palette.SMALL,
                Align.LEFT);
        double y = classes(canvas, raster, x);
        SkipMarks.swatch(canvas, x, y);
        canvas.text(messages.text("words.map.notCovered"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        if (!view.track().passes().isEmpty()) {
            y += 12;
            canvas.box(x, y, 10, 9, Palette.WHITE);
            canvas.text("12", x + 5, y + 7, new Canvas.Ink(6, true, Palette.INK), Align.CENTER);
            canvas.text(messages.text("words.map.passNumber"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        }
        if (view.setbacks() != null) {
            y += 12;
            KeepOutMarks.legend(canvas, x, y, messages);
        }
        List<PathBreak> breaks = view.track().breaks();
        if (PositionMarks.any(breaks)) {
            y = PositionMarks.legend(canvas, breaks, x, y + 12, messages) - 12;
        }
        if (widened) {
            y += 19;
            canvas.text(messages.text("words.map.widened"), x, y, Palette.SMALL, Align.LEFT);
            y -= 7;
        }
        y += 30;
        frame.scaleBar(canvas, x, y, LEGEND_PT - 30, f);
        MapFrame.northArrow(canvas, x + LEGEND_PT - 8, y - 14);
    }

    /** Draws the classes of deviation with their shares and returns the y below them. */
    private double classes(Canvas canvas, ClassRaster raster, double x) {
        double total = 0;
        for (double areaM2 : raster.classM2) {
            total += areaM2;
        }
        double y = 24;
        for (int i = DeviationClasses.count() - 1; i >= 0; i--) {
            ClassHatch.swatch(canvas, x, y, i);
            String name = messages.text(DeviationClasses.name(i, hasTarget));
            canvas.text(name, x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
            String share = total > 0 ? f.percent(raster.classM2[i] / total * 100) : UnitFormat.UNKNOWN;
            canvas.text(share, x + LEGEND_PT, y + 7.5, Palette.LABEL, Align.RIGHT);
            y += 12;
        }
        return y;
    }
}
