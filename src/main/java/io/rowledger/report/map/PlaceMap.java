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
import io.rowledger.report.sections.CoverageSection;
import io.rowledger.report.sections.DefectLine;
import io.rowledger.track.PathBreak;
import io.rowledger.units.UnitFormat;
import java.util.List;

/** Map of skips and overlaps with their numbers in the lists, and of gaps in the positions. */
public final class PlaceMap implements Chart {
    private static final double LEGEND_PT = 112;
    /** A listed place smaller than this on paper gets a dot, so that it can be seen at all. */
    private static final double MIN_PLACE_PT = 2.5;

    private final GroundView view;
    private final CoverageSection ground;
    private final Messages messages;
    private final UnitFormat f;

    public PlaceMap(GroundView view, CoverageSection ground, Messages messages) {
        this.view = view;
        this.ground = ground;
        this.messages = messages;
        this.f = messages.units();
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        Coverage c = view.coverage();
        MapFrame frame = new MapFrame(RateMap.ground(c), 0, 0, widthPt - LEGEND_PT - 10, heightPt);
        canvas.fill(frame.outline(c.covered()), MapColors.COVERED);
        overlaps(canvas, frame, c.overlaps(), ground.overlaps().size());
        boolean widened = SkipMarks.draw(canvas, frame, c.skips(), view.rowWidthM());
        canvas.stroke(frame.outline(RateMap.edge(c)), Palette.SOFT, 0.6);
        PositionMarks.draw(canvas, frame, view.track().breaks());
        Labels labels = new Labels(canvas);
        int most = Math.max(ground.skips().size(), ground.overlaps().size());
        // Alternately, so that neither kind takes all the room.
        for (int i = 0; i < most; i++) {
            number(labels, frame, ground.skips(), i, Palette.INK);
            number(labels, frame, ground.overlaps(), i, MapColors.OVERLAP);
        }
        legend(canvas, frame, widened, widthPt - LEGEND_PT);
    }

    private static void overlaps(Canvas canvas, MapFrame frame, List<CoverageDefect> places, int listed) {
        Outline path = new Outline();
        for (int i = 0; i < places.size(); i++) {
            CoverageDefect place = places.get(i);
            canvas.fill(frame.outline(place.polygon()), MapColors.OVERLAP);
            if (i < listed && frame.pt(Math.sqrt(place.areaM2())) < MIN_PLACE_PT) {
                path.dot(frame.x(place.eastM()), frame.y(place.northM()), MIN_PLACE_PT / 2);
            }
        }
        if (!path.isEmpty()) {
            canvas.fill(path, MapColors.OVERLAP);
        }
    }

    private static void number(Labels labels, MapFrame frame, List<DefectLine> lines, int i, int rgb) {
        if (i < lines.size()) {
            DefectLine line = lines.get(i);
            labels.plate(
                    line.number(),
                    frame.x(line.eastM()),
                    Math.max(4, frame.y(line.northM()) - 7),
                    new Ink(6, true, rgb),
                    Palette.WHITE);
        }
    }

    private void legend(Canvas canvas, MapFrame frame, boolean widened, double x) {
        double y = 0;
        SkipMarks.swatch(canvas, x, y);
        canvas.text(messages.text("words.map.skip"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        y += 13;
        canvas.swatch(x, y, MapColors.OVERLAP);
        canvas.text(messages.text("words.map.overlap"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        y += 13;
        canvas.swatch(x, y, MapColors.COVERED);
        canvas.text(messages.text("words.map.coveredOnce"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
        List<PathBreak> breaks = view.track().breaks();
        if (PositionMarks.any(breaks)) {
            y = PositionMarks.legend(canvas, breaks, x, y + 13, messages) - 13;
        }
        y += 34;
        frame.scaleBar(canvas, x, y, LEGEND_PT - 30, f);
        MapFrame.northArrow(canvas, x + LEGEND_PT - 8, y - 14);
        canvas.text(messages.text("words.map.smallPlaces"), x, y + 18, Palette.SMALL, Align.LEFT);
        canvas.text(messages.text("words.map.numbersLeftOut"), x, y + 26, Palette.SMALL, Align.LEFT);
        if (widened) {
            canvas.text(messages.text("words.map.widened"), x, y + 34, Palette.SMALL, Align.LEFT);
        }
    }
}
