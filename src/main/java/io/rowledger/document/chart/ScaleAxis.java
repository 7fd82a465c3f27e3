package io.rowledger.document.chart;

import io.rowledger.document.chart.Scale.Tick;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jspecify.annotations.Nullable;

/** A linear axis whose marks are given, so that labels follow the report's language, units and clock. */
final class ScaleAxis extends ValueAxis {
    private static final long serialVersionUID = 1L;
    /** Room between two labels, pt. */
    private static final double BETWEEN_PT = 4;
    /** Farthest that a label may reach left of the plot, pt. */
    private static final double MAX_OVERHANG_PT = 5;

    private final transient Scale scale;

    ScaleAxis(Scale scale, boolean line) {
        super(null, null);
        this.scale = scale;
        setRange(scale.low(), scale.high());
        setInverted(scale.down());
        setTickLabelFont(new ChartFont(Palette.LABEL));
        setTickLabelPaint(new Color(Palette.LABEL.rgb()));
        double u = ChartGraphics.UNITS_PER_PT;
        setTickLabelInsets(new RectangleInsets(1.5 * u, 4 * u, 1.5 * u, 4 * u));
        setTickMarksVisible(line);
        setTickMarkOutsideLength((float) (2.5 * ChartGraphics.UNITS_PER_PT));
        setTickMarkStroke(new BasicStroke((float) (0.5 * ChartGraphics.UNITS_PER_PT)));
        setTickMarkPaint(new Color(Palette.SOFT));
        setAxisLineVisible(line);
        setAxisLineStroke(new BasicStroke((float) (0.5 * ChartGraphics.UNITS_PER_PT)));
        setAxisLinePaint(new Color(Palette.SOFT));
    }

    @Override
    public double valueToJava2D(double value, Rectangle2D area, RectangleEdge edge) {
        double share = (value - scale.low()) / (scale.high() - scale.low());
        if (RectangleEdge.isTopOrBottom(edge)) {
            return area.getX() + share * area.getWidth();
        }
        return isInverted() ? area.getY() + share * area.getHeight() : area.getMaxY() - share * area.getHeight();
    }

    @Override
    public double java2DToValue(double at, Rectangle2D area, RectangleEdge edge) {
        double share = RectangleEdge.isTopOrBottom(edge)
                ? (at - area.getX()) / area.getWidth()
                : isInverted() ? (at - area.getY()) / area.getHeight() : (area.getMaxY() - at) / area.getHeight();
        return scale.low() + share * (scale.high() - scale.low());
    }

    /** Where a label stands along its axis, chart units; at its mark's right where it would reach too far to the left. */
    private record Span(double from, double to, boolean shifted) {}

    private Span span(Tick tick, Graphics2D g, Rectangle2D area, RectangleEdge edge) {
        double at = valueToJava2D(tick.value(), area, edge);
        if (!RectangleEdge.isTopOrBottom(edge)) {
            return new Span(
                    at - getTickLabelFont().getSize() / 2.0,
                    at + getTickLabelFont().getSize() / 2.0,
                    false);
        }
        double width = g.getFontMetrics(getTickLabelFont()).stringWidth(tick.label());
        boolean shifted = at - width / 2 < area.getMinX() - MAX_OVERHANG_PT * ChartGraphics.UNITS_PER_PT;
        return shifted ? new Span(at, at + width, true) : new Span(at - width / 2, at + width / 2, false);
    }

    /** The marks whose labels have room: every one, every second, every fourth and so on. */
    @Override
    public List<?> refreshTicks(Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
        boolean across = RectangleEdge.isTopOrBottom(edge);
        List<Span> spans =
                scale.ticks().stream().map(tick -> span(tick, g, area, edge)).toList();
        double between = across ? BETWEEN_PT * ChartGraphics.UNITS_PER_PT : 0;
        int every = 1;
        while (every < spans.size() && touching(spans, every, between)) {
            every *= 2;
        }
        List<NumberTick> ticks = new ArrayList<>();
        for (int i = 0; i < spans.size(); i += every) {
            Tick tick = scale.ticks().get(i);
            Span span = spans.get(i);
            boolean fits = !across || span.to <= area.getMaxX() + BETWEEN_PT * ChartGraphics.UNITS_PER_PT;
            TextAnchor anchor =
                    !across ? TextAnchor.CENTER_RIGHT : span.shifted ? TextAnchor.TOP_LEFT : TextAnchor.TOP_CENTER;
            ticks.add(new NumberTick(tick.value(), fits ? tick.label() : "", anchor, anchor, 0));
        }
        return ticks;
    }

    /** True if two neighbors touch among every so many labels. */
    private static boolean touching(List<Span> spans, int every, double between) {
        for (int i = every; i < spans.size(); i += every) {
            Span one = spans.get(i - every);
            Span next = spans.get(i);
            // An upright axis counts from its bottom, so the next label may lie on either side.
            if (Math.min(one.to, next.to) + between > Math.max(one.from, next.from)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public AxisState draw(
            Graphics2D g,
            double cursor,
            Rectangle2D plotArea,
            Rectangle2D dataArea,
            RectangleEdge edge,
            @Nullable PlotRenderingInfo info) {
        return drawTickMarksAndLabels(g, cursor, plotArea, dataArea, edge);
    }

    @Override
    public AxisSpace reserveSpace(
            Graphics2D g, Plot plot, Rectangle2D plotArea, RectangleEdge edge, @Nullable AxisSpace space) {
        return space == null ? new AxisSpace() : space;
    }

    @Override
    public void configure() {}

    @Override
    protected void autoAdjustRange() {}
}
