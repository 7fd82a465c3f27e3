package io.rowledger.report.map;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which ground was covered on which day: darker for later, so that it reads in gray too; from the sixth day on the same colors
 * again, hatched.
 *
 * <p>Colors: YlGnBu in five classes, C. Brewer and M. Harrower, ColorBrewer 2.0 (color-blind safe, print friendly).
 */
public final class DayMap implements Chart {
    private static final int[] COLORS = {0xffffcc, 0xa1dab4, 0x41b6c4, 0x2c7fb8, 0x253494};
    private static final double LEGEND_PT = 112;

    /**
     * One day.
     *
     * @param label its date and what was done
     * @param passes numbers of its passes
     */
    public record Day(String label, List<Integer> passes) {
        /** Copies the passes. */
        public Day {
            passes = List.copyOf(passes);
        }
    }

    private final GroundView view;
    private final List<Day> days;
    private final Messages messages;

    /** The map of these days, in their order. */
    public DayMap(GroundView view, List<Day> days, Messages messages) {
        this.view = view;
        this.days = List.copyOf(days);
        this.messages = messages;
    }

    /** Color of a day, RGB. */
    static int color(int day) {
        return COLORS[day % COLORS.length];
    }

    /** The hatch of a day; null for the first five. */
    static @Nullable Hatch hatch(int day) {
        int round = day / COLORS.length;
        int rgb = day % COLORS.length > 2 ? Palette.WHITE : Palette.INK;
        int linesPerStep = (round + 1) / 2;
        return round == 0 ? null : new Hatch(round % 2 == 1, 3.4 / linesPerStep, rgb, 0.4);
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        Coverage c = view.coverage();
        MapFrame frame = new MapFrame(RateMap.ground(c), 0, 0, widthPt - LEGEND_PT - 10, heightPt);
        for (int d = 0; d < days.size(); d++) {
            for (StripPolygon strip : c.strips()) {
                if (strip.delivering() && days.get(d).passes().contains(strip.pass())) {
                    Outline outline = frame.outline(strip.polygon());
                    canvas.fill(outline, color(d));
                    hatch(canvas, frame, outline, d);
                }
            }
        }
        SkipMarks.draw(canvas, frame, c.skips(), view.rowWidthM());
        canvas.stroke(frame.outline(RateMap.edge(c)), Palette.INK, 0.7);
        List<RateMap.Mark> numbers = new ArrayList<>();
        Labels labels = new Labels(canvas);
        RateMap.passStarts(view.track(), numbers);
        numbers.forEach(mark -> labels.plate(
                mark.text(),
                frame.x(mark.eastM()),
                frame.y(mark.northM()),
                new Ink(6, true, Palette.INK),
                Palette.WHITE));
        legend(canvas, frame, widthPt - LEGEND_PT);
    }

    private static void hatch(Canvas canvas, MapFrame frame, Outline outline, int day) {
        Hatch hatch = hatch(day);
        if (hatch != null) {
            hatch.fill(
                    canvas,
                    outline,
                    frame.left(),
                    frame.top(),
                    frame.left() + frame.width(),
                    frame.top() + frame.height());
        }
    }

    private void legend(Canvas canvas, MapFrame frame, double x) {
        UnitFormat f = messages.units();
        double y = 0;
        for (int d = 0; d < days.size(); d++) {
            canvas.swatch(x, y, color(d));
            Hatch hatch = hatch(d);
            if (hatch != null) {
                hatch.fill(canvas, new Outline().box(x, y, 10, 9), x, y, x + 10, y + 9);
            }
            canvas.text(days.get(d).label(), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
            y += 12;
        }
        SkipMarks.swatch(canvas, x, y);
        canvas.text(messages.text("words.map.notCovered"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        y += 42;
        frame.scaleBar(canvas, x, y, LEGEND_PT - 30, f);
        MapFrame.northArrow(canvas, x + LEGEND_PT - 8, y - 14);
    }
}
