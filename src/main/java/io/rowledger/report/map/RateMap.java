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
import io.rowledger.units.UnitFormat;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * Map of the received rate against the target: classes, boundary, pass numbers, scale bar, north arrow, legend; and where
 * a keep-out file was given, its places and setbacks; and where positions can't be trusted.
 */
public final class RateMap implements Chart {
    private static final double LEGEND_PT = 112;
    /** Half the width of the widest slit that is no edge, m: a third of a row; wider ones are in the list of skips. */
    private static final double SLIT_M = 0.13;

    private final GroundView view;
    private final int product;
    private final Messages messages;
    private final UnitFormat f;
    private final boolean hasTarget;

    public RateMap(GroundView view, int product, boolean hasTarget, Messages messages) {
        this.view = view;
        this.product = product;
        this.hasTarget = hasTarget;
        this.messages = messages;
        this.f = messages.units();
    }

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
     * The line around the ground: the boundary, or else the covered ground's edge without the slits of a few centimetres
     * between neighbouring passes, which as lines on paper would look like skips.
     */
    public static Geometry edge(Coverage c) {
        return c.boundary() == null
                ? c.covered().buffer(SLIT_M, 2).buffer(-SLIT_M, 2)
                : c.boundary().area();
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        Coverage c = view.coverage();
        double mapWidth = widthPt - LEGEND_PT - 10;
        MapFrame frame = new MapFrame(KeepOutMarks.ground(ground(c), view.setbacks()), 0, 0, mapWidth, heightPt);
        ClassRaster raster =
                ClassRaster.of(c.grid(), product, c.received().get(product).meanRateLPerM2());
        if (c.boundary() != null) {
            canvas.fill(frame.outline(c.boundary().area()), Palette.BARE);
        }
        cells(canvas, frame, c.grid(), raster);
        // Exact skips over the cells: one bare row is narrower than a block of cells on a big field.
        c.skips().forEach(place -> canvas.fill(frame.outline(place.polygon()), Palette.BARE));
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
        passNumbers(frame, labels);
        legend(canvas, frame, raster, widthPt - LEGEND_PT);
    }

    private static void cells(Canvas canvas, MapFrame frame, ReceivedGrid grid, ClassRaster raster) {
        int onTarget = Palette.classes() / 2;
        // All covered ground first, in the middle colour: then no seam between two classes shows the bare ground below.
        paint(canvas, frame, grid, raster, -1, Palette.deviation(onTarget));
        for (int i = 0; i < Palette.classes(); i++) {
            if (i != onTarget) {
                paint(canvas, frame, grid, raster, i, Palette.deviation(i));
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
        Poses poses = view.track().poses();
        Canvas.Ink ink = new Canvas.Ink(6, true, Palette.INK);
        for (Pass pass : view.track().passes()) {
            // A little way into the pass, so that the number stands on its own strip and not on the headland's.
            int k = pass.firstStep() + (pass.endStep() - pass.firstStep()) / 20;
            labels.plate(
                    Integer.toString(pass.number()),
                    frame.x(poses.dropEastM(k)),
                    frame.y(poses.dropNorthM(k)),
                    ink,
                    0xffffff);
        }
    }

    private void legend(Canvas canvas, MapFrame frame, ClassRaster raster, double x) {
        double total = 0;
        for (double areaM2 : raster.classM2) {
            total += areaM2;
        }
        canvas.text("Received rate", x, 8, Palette.STRONG, Align.LEFT);
        canvas.text(
                hasTarget ? "against target; share of ground" : "against the mean; share of ground",
                x,
                17,
                Palette.SMALL,
                Align.LEFT);
        double y = 24;
        for (int i = Palette.classes() - 1; i >= 0; i--) {
            swatch(canvas, x, y, Palette.deviation(i));
            String name = hasTarget ? Palette.name(i) : Palette.name(i).replace("target", "mean");
            canvas.text(name, x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
            String share = total > 0 ? f.percent(raster.classM2[i] / total * 100) : UnitFormat.UNKNOWN;
            canvas.text(share, x + LEGEND_PT, y + 7.5, Palette.LABEL, Align.RIGHT);
            y += 12;
        }
        swatch(canvas, x, y, Palette.BARE);
        canvas.text("bare", x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        y += 12;
        canvas.box(x, y, 10, 9, 0xffffff);
        canvas.text("12", x + 5, y + 7, new Canvas.Ink(6, true, Palette.INK), Align.CENTER);
        canvas.text("number of a pass, near its start", x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        if (view.setbacks() != null) {
            y += 12;
            KeepOutMarks.legend(canvas, x, y);
        }
        List<PathBreak> breaks = view.track().breaks();
        if (PositionMarks.any(breaks)) {
            y = PositionMarks.legend(canvas, breaks, x, y + 12) - 12;
        }
        y += 30;
        frame.scaleBar(canvas, x, y, LEGEND_PT - 30, f);
        MapFrame.northArrow(canvas, x + LEGEND_PT - 8, y - 14);
    }

    public static void swatch(Canvas canvas, double x, double y, int rgb) {
        canvas.box(x, y, 10, 9, rgb);
        canvas.stroke(new Outline().box(x, y, 10, 9), Palette.SOFT, 0.3);
    }
}
