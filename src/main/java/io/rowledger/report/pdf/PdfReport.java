package io.rowledger.report.pdf;

import com.lowagie.text.pdf.PdfBoolean;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfEncryption;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.chart.Chart;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TimeZone;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.xhtmlrenderer.pdf.DefaultPDFCreationListener;
import org.xhtmlrenderer.pdf.ITextOutputDevice;
import org.xhtmlrenderer.pdf.ITextRenderer;
import org.xhtmlrenderer.pdf.ITextTextRenderer;

/**
 * Fills a template and writes it as PDF: the same bytes for the same input, whatever the day, the machine or its fonts.
 *
 * @param template file name of the template, for instance {@code pass-review.xhtml}
 * @param templateFolder the user's own templates, or null
 * @param dateS the date the document carries, epoch seconds: when the work ended, never when the report was made
 */
public record PdfReport(String template, @Nullable Path templateFolder, double dateS) {
    static {
        // The layout library logs through SLF4J, and without a logger SLF4J says so on standard error.
        setWhereUnset("slf4j.internal.verbosity", "ERROR");
        // It also uses AWT's shapes, which must not go looking for a screen.
        setWhereUnset("java.awt.headless", "true");
    }

    private static void setWhereUnset(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }

    /**
     * Writes the report.
     *
     * @param model what the template's tags name
     * @param charts what {@code data-chart} names
     * @throws UnusableInputException where the user's template can't be used
     */
    public void write(Object model, Map<String, Chart> charts, OutputStream out) throws IOException {
        Templates templates = new Templates(templateFolder);
        Document document = FilledTemplate.fill(templates.read(template), model);
        byte[] pdf;
        try {
            pdf = render(document, templates, charts);
        } catch (ChartElements.UnknownChartException e) {
            throw UnusableInputException.found("data-chart=\"" + e.name + "\", a chart that doesn't exist")
                    .inFile(templates.read(template).name())
                    .expected("one of " + e.known)
                    .mend("correct the name of the chart");
        }
        SteadyBytes.settle(pdf);
        out.write(pdf);
    }

    private byte[] render(Document document, Templates templates, Map<String, Chart> charts) {
        float dotsPerPoint = ITextRenderer.DEFAULT_DOTS_PER_POINT;
        int dotsPerPixel = ITextRenderer.DEFAULT_DOTS_PER_PIXEL;
        ITextOutputDevice device = new ITextOutputDevice(dotsPerPoint);
        ReportFonts fonts = new ReportFonts();
        ITextRenderer renderer = new ITextRenderer(
                dotsPerPoint,
                dotsPerPixel,
                device,
                new TemplateAgent(templates, device, dotsPerPixel),
                fonts,
                new ChartElements(charts, fonts),
                new ITextTextRenderer());
        renderer.getSharedContext().setLineBreakingStrategy(new SpacesOnly());
        renderer.setDocument(document, "");
        String text = document.getDocumentElement().getTextContent();
        renderer.setListener(new Particulars(language(document), text));
        renderer.layout();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
        renderer.createPDF(bytes);
        return bytes.toByteArray();
    }

    private static String language(Document document) {
        String lang = document.getDocumentElement().getAttribute("lang");
        return lang.isEmpty() ? "en-US" : lang;
    }

    /** Language, date and identity of the document, set before anything is written. */
    private final class Particulars extends DefaultPDFCreationListener {
        private final String language;
        private final String text;

        Particulars(String language, String text) {
            this.language = language;
            this.text = text;
        }

        @Override
        public void preOpen(ITextRenderer renderer) {
            PdfWriter writer = Objects.requireNonNull(renderer.getWriter(), "no writer before opening");
            PdfDictionary info = writer.getInfo();
            GregorianCalendar date = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
            date.setTimeInMillis(Double.isFinite(dateS) ? Math.round(dateS * 1000) : 0);
            PdfDate stamp = new PdfDate(date);
            info.put(PdfName.CREATIONDATE, stamp);
            info.put(PdfName.MODDATE, stamp);
            byte[] id = digest(text);
            info.put(PdfName.FILEID, PdfEncryption.createInfoId(id, id));
            PdfDictionary catalog = writer.getExtraCatalog();
            catalog.put(PdfName.LANG, new PdfString(language));
            PdfDictionary preferences = new PdfDictionary();
            preferences.put(PdfName.DISPLAYDOCTITLE, PdfBoolean.PDFTRUE);
            catalog.put(PdfName.VIEWERPREFERENCES, preferences);
        }

        private static byte[] digest(String text) {
            try {
                byte[] sha = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
                return Arrays.copyOf(sha, 16);
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java has SHA-256", e);
            }
        }
    }
}
