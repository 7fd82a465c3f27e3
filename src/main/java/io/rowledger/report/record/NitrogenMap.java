package io.rowledger.report.record;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.report.map.ClassRaster;
import io.rowledger.report.map.KeepOutMarks;
import io.rowledger.report.map.MapColors;
import io.rowledger.report.map.MapFrame;
import io.rowledger.report.map.RateMap;
import io.rowledger.report.record.NitrogenRecord.MapClass;
import io.rowledger.report.record.NitrogenRecord.MapKey;
import io.rowledger.setback.Setbacks;
import java.util.List;

/**
 * Map of the nitrogen that the ground received: darker for more, so that it reads in gray too. Skipped ground is white with
 * an edge. With boundary, scale bar, north arrow and a legend with the share of each class.
 */
final class NitrogenMap implements Chart {
    /** Viridis (S. van der Walt, N. Smith 2015, CC0) at seven even steps of lightness, 12.6 L* each; color-blind safe. */
    static final int[] SCALE = {0xfde725, 0x8bd545, 0x32b37b, 0x248b8c, 0x33628d, 0x44357e, 0x440154};

    private static final int WHITE = 0xffffff;
    private static final double LEGEND_PT = 128;
    private static final double ROW_PT = 12;

    private final RecordInput in;
    private final MapKey key;
    private final Messages messages;

    NitrogenMap(RecordInput in, MapKey key, Messages messages) {
        this.in = in;
        this.key = key;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        Coverage c = in.coverage();
        MapFrame frame = new MapFrame(
                KeepOutMarks.ground(RateMap.ground(c), in.setbacks()), 0, 0, widthPt - LEGEND_PT - 12, heightPt);
        ClassRaster raster = ClassRaster.ofRates(c.grid(), in.ground().received(), key.bounds());
        cells(canvas, frame, c.grid(), raster);
        // Exact skips over the cells: one skipped row is narrower than a block of cells on a big field.
        c.skips().forEach(place -> {
            canvas.fill(frame.outline(place.polygon()), WHITE);
            canvas.stroke(frame.outline(place.polygon()), MapColors.SKIP, 0.35);
        });
        if (c.boundary() != null) {
            canvas.stroke(frame.outline(c.boundary().area()), Palette.INK, 0.9);
        } else {
            canvas.stroke(frame.outline(RateMap.edge(c)), Palette.SOFT, 0.5);
        }
        Setbacks setbacks = in.setbacks();
        if (setbacks != null) {
            KeepOutMarks.draw(canvas, frame, setbacks, new Labels(canvas));
        }
        legend(canvas, frame, widthPt - LEGEND_PT);
    }

    private void cells(Canvas canvas, MapFrame frame, ReceivedGrid grid, ClassRaster raster) {
        int largest = 0;
        for (int k = 1; k < raster.classM2.length; k++) {
            largest = raster.classM2[k] > raster.classM2[largest] ? k : largest;
        }
        // All covered ground first, in the most frequent color: no gap between two classes then shows white paper.
        RateMap.paint(canvas, frame, grid, raster, -1, color(largest));
        for (int k = 0; k < raster.classM2.length; k++) {
            if (k != largest) {
                RateMap.paint(canvas, frame, grid, raster, k, color(k));
            }
        }
    }

    private int color(int k) {
        return SCALE[Math.min(SCALE.length - 1, k + key.firstColor())];
    }

    private void legend(Canvas canvas, MapFrame frame, double x) {
        canvas.text(key.unit(), x, 8, Palette.STRONG, Align.LEFT);
        canvas.text(messages.text("record.map.share"), x + LEGEND_PT, 8, Palette.SMALL, Align.RIGHT);
        double y = 14;
        List<MapClass> classes = key.classes();
        for (int k = classes.size() - 1; k >= 0; k--) {
            MapClass shown = classes.get(k);
            canvas.swatch(x, y, color(k));
            canvas.text(shown.label(), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
            canvas.text(shown.share(), x + LEGEND_PT, y + 7.5, Palette.LABEL, Align.RIGHT);
            if (!shown.note().isEmpty()) {
                canvas.text(shown.note(), x + 15, y + 15.5, Palette.SMALL, Align.LEFT);
                y += 8;
            }
            y += ROW_PT;
        }
        canvas.box(x, y, 10, 9, WHITE);
        canvas.stroke(new Outline().box(x, y, 10, 9), MapColors.SKIP, 0.7);
        canvas.text(key.skipped(), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        if (in.setbacks() != null) {
            y += ROW_PT;
            KeepOutMarks.legend(canvas, x, y, messages);
        }
        y += ROW_PT + 24;
        frame.scaleBar(canvas, x, y, LEGEND_PT - 40, messages.units());
        MapFrame.northArrow(canvas, x + LEGEND_PT - 10, y - 16);
    }
}
