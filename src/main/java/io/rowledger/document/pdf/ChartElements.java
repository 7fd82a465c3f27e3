package io.rowledger.document.pdf;

import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfContentByte;
import io.rowledger.document.chart.Chart;
import java.awt.Point;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.xhtmlrenderer.extend.ReplacedElement;
import org.xhtmlrenderer.extend.ReplacedElementFactory;
import org.xhtmlrenderer.extend.UserAgentCallback;
import org.xhtmlrenderer.layout.LayoutContext;
import org.xhtmlrenderer.pdf.ITextOutputDevice;
import org.xhtmlrenderer.pdf.ITextReplacedElement;
import org.xhtmlrenderer.render.BlockBox;
import org.xhtmlrenderer.render.RenderingContext;
import org.xhtmlrenderer.simple.extend.FormSubmissionListener;

/** Replaces elements with {@code data-chart} by charts of the size that CSS gives them. */
final class ChartElements implements ReplacedElementFactory {
    /** Size without a CSS width or height, CSS pixels times dots per pixel. */
    private static final int DEFAULT_WIDTH_PX = 480;

    private static final int DEFAULT_HEIGHT_PX = 240;

    private final Map<String, Chart> charts;
    private final ReportFonts fonts;

    ChartElements(Map<String, Chart> charts, ReportFonts fonts) {
        this.charts = charts;
        this.fonts = fonts;
    }

    @Override
    public @Nullable ReplacedElement createReplacedElement(
            LayoutContext context, BlockBox box, UserAgentCallback agent, int cssWidth, int cssHeight) {
        Element element = box.getElement();
        if (element == null || !element.hasAttribute("data-chart")) {
            return null;
        }
        Chart chart = charts.get(element.getAttribute("data-chart"));
        if (chart == null) {
            throw new UnknownChartException(element.getAttribute("data-chart"), charts.keySet());
        }
        int dots = context.getSharedContext().getDotsPerPixel();
        int width = cssWidth > 0 ? cssWidth : DEFAULT_WIDTH_PX * dots;
        int height = cssHeight > 0 ? cssHeight : DEFAULT_HEIGHT_PX * dots;
        return new ChartBox(chart, fonts, width, height);
    }

    @Override
    public void reset() {}

    @Override
    public void remove(Element element) {}

    @Override
    public void setFormSubmissionListener(FormSubmissionListener listener) {}

    /** A template names a chart that does not exist. */
    static final class UnknownChartException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        final String name;
        final String known;

        UnknownChartException(String name, java.util.Set<String> known) {
            super("no chart named " + name);
            this.name = name;
            this.known = String.join(", ", known);
        }
    }

    /** The box a chart is painted into. */
    private static final class ChartBox implements ITextReplacedElement {
        private final Chart chart;
        private final ReportFonts fonts;
        private final int width;
        private final int height;
        private Point location = new Point(0, 0);

        ChartBox(Chart chart, ReportFonts fonts, int width, int height) {
            this.chart = chart;
            this.fonts = fonts;
            this.width = width;
            this.height = height;
        }

        @Override
        public void paint(RenderingContext context, ITextOutputDevice device, BlockBox box) {
            Rectangle area = device.createLocalTargetArea(context, box);
            PdfContentByte page = device.getCurrentPage();
            page.saveState();
            chart.paint(new PdfCanvas(page, fonts, area.getLeft(), area.getTop()), area.getWidth(), area.getHeight());
            page.restoreState();
        }

        @Override
        public int getIntrinsicWidth() {
            return width;
        }

        @Override
        public int getIntrinsicHeight() {
            return height;
        }

        @Override
        public Point getLocation() {
            return location;
        }

        @Override
        public void setLocation(int x, int y) {
            location = new Point(x, y);
        }

        @Override
        public void detach(LayoutContext context) {}

        @Override
        public boolean isRequiresInteractivePaint() {
            return false;
        }

        @Override
        public boolean hasBaseline() {
            return false;
        }

        @Override
        public int getBaseline() {
            return 0;
        }
    }
}
