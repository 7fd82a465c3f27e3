package io.rowledger.document.pdf;

import io.rowledger.document.chart.Chart;
import io.rowledger.document.pdf.Templates.Template;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xhtmlrenderer.layout.Layer;
import org.xhtmlrenderer.pdf.ITextOutputDevice;
import org.xhtmlrenderer.pdf.ITextRenderer;
import org.xhtmlrenderer.pdf.ITextTextRenderer;
import org.xhtmlrenderer.render.PageBox;

/**
 * Fills a template and writes it as PDF: the same bytes for the same input on every day and machine.
 *
 * @param template file name of the template, for instance {@code pass-review.xhtml}
 * @param templateFolder the user's own templates, or null
 * @param messages the words that the template names as {@code t}
 * @param dateS the date the document carries, epoch seconds: when the work ended, never when the report was made
 */
public record PdfReport(String template, @Nullable Path templateFolder, Messages messages, double dateS) {
    static {
        // The layout library logs through SLF4J, and without a logger SLF4J says so on standard error.
        setWhereUnset("slf4j.internal.verbosity", "ERROR");
        // It also uses shapes of AWT, which needs no screen for them.
        setWhereUnset("java.awt.headless", "true");
    }

    /** A page with a heading, a table and a paragraph. */
    private static final String SMALL_PAGE = """
            <html xmlns="http://www.w3.org/1999/xhtml" xml:lang="en" lang="en"><head><title>Empty</title>
            <link rel="stylesheet" type="text/css" media="print" href="report.css"/></head>
            <body><h1>Empty</h1><table><thead><tr><th>Row</th></tr></thead><tbody><tr><td>1</td></tr></tbody></table>
            <p>No text.</p></body></html>""";

    /** Share of the last page below which the pages are set closer, to spare it. */
    private static final double MIN_LAST_PAGE = 0.25;

    /** A report of more pages than this is set closer too, to spare paper. */
    private static final int MAX_PAGES = 8;

    /** Class of the body for that. */
    private static final String CLOSE = "close";

    private static void setWhereUnset(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }

    /** Loads what any report needs, by laying out a page that nobody sees. Safe beside other reports. */
    public static void prepare() {
        Templates templates = new Templates(null);
        Messages messages = new Messages(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        PdfReport small = new PdfReport("small", null, messages, 0);
        small.render(
                FilledTemplate.fill(new Template("small", SMALL_PAGE, false), Map.of(), messages),
                templates,
                Map.of(),
                List.of());
    }

    /**
     * Writes the report.
     *
     * @param model the values that the tags of the template name
     * @param charts the charts that {@code data-chart} names
     * @throws UnusableInputException where the user's template can't be used
     */
    public void write(Object model, Map<String, Chart> charts, OutputStream out) throws IOException {
        write(model, charts, List.of(), out);
    }

    /**
     * Writes the report with files inside it.
     *
     * @param model the values that the tags of the template name
     * @param charts the charts that {@code data-chart} names
     * @param attachments the files, each under a name of its own
     * @throws UnusableInputException where the user's template can't be used
     */
    public void write(Object model, Map<String, Chart> charts, List<Attachment> attachments, OutputStream out)
            throws IOException {
        Templates templates = new Templates(templateFolder);
        Template page = templates.read(template);
        Document document = FilledTemplate.fill(page, model, messages);
        try {
            out.write(render(document, templates, charts, attachments));
        } catch (ChartElements.UnknownChartException e) {
            throw UnusableInputException.found("data-chart=\"" + e.name + "\", a chart that doesn't exist")
                    .inFile(page.name())
                    .atLine(OwnTemplate.lineOf(page.text(), "data-chart=\"" + e.name + "\""))
                    .expected("one of " + e.known)
                    .hint("correct the name of the chart");
        } catch (TemplateAgent.UnknownSheetException e) {
            throw UnusableInputException.found("\"" + e.uri + "\", a style sheet that isn't in the folder of templates")
                    .inFile(page.name())
                    .atLine(OwnTemplate.lineOf(page.text(), e.uri))
                    .expected("report.css, or the name of another file in that folder")
                    .hint("put the style sheet into the folder and name it without a path");
        }
    }

    private byte[] render(
            Document document, Templates templates, Map<String, Chart> charts, List<Attachment> attachments) {
        float dotsPerPoint = ITextRenderer.DEFAULT_DOTS_PER_POINT;
        int dotsPerPixel = ITextRenderer.DEFAULT_DOTS_PER_PIXEL;
        ITextOutputDevice device = new TaggingDevice(dotsPerPoint);
        ReportFonts fonts = new ReportFonts();
        ITextRenderer renderer = new ITextRenderer(
                dotsPerPoint,
                dotsPerPixel,
                device,
                new TemplateAgent(templates, device, dotsPerPixel),
                fonts,
                new ChartElements(charts, fonts),
                new ITextTextRenderer());
        renderer.getSharedContext().setLineBreakingStrategy(new SpaceLineBreaking());
        fonts.missing().box(document);
        renderer.setListener(new Archive(document, date(), attachments));
        layOut(renderer, document);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
        renderer.createPDF(bytes);
        return bytes.toByteArray();
    }

    /**
     * Lays out, closer where little would stand on the last page, or the pages are many, and a page is spared thereby.
     */
    private static void layOut(ITextRenderer renderer, Document document) {
        List<PageBox> pages = pages(renderer, document);
        PageBox last = pages.get(pages.size() - 1);
        double used = (double) (Objects.requireNonNull(renderer.getRootBox()).getHeight() - last.getTop())
                / (last.getBottom() - last.getTop());
        if (pages.size() > 1 && (used < MIN_LAST_PAGE || pages.size() > MAX_PAGES)) {
            Element body = (Element) document.getElementsByTagName("body").item(0);
            String usual = body.getAttribute("class");
            body.setAttribute("class", (usual + " " + CLOSE).strip());
            if (pages(renderer, document).size() == pages.size()) {
                body.setAttribute("class", usual);
                pages(renderer, document);
            }
        }
    }

    /** Lays the document out on pages. */
    private static List<PageBox> pages(ITextRenderer renderer, Document document) {
        renderer.setDocument(document, "");
        renderer.layout();
        Layer layer = Objects.requireNonNull(renderer.getRootBox()).getLayer();
        return Objects.requireNonNull(layer).getPages();
    }

    private Instant date() {
        return Instant.ofEpochSecond(Double.isFinite(dateS) ? Math.round(dateS) : 0);
    }
}
