package io.rowledger.document.pdf;

import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfRectangle;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.Point;
import java.awt.Shape;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xhtmlrenderer.css.style.CalculatedStyle;
import org.xhtmlrenderer.extend.FSImage;
import org.xhtmlrenderer.layout.SharedContext;
import org.xhtmlrenderer.pdf.ITextOutputDevice;
import org.xhtmlrenderer.render.BlockBox;
import org.xhtmlrenderer.render.Box;
import org.xhtmlrenderer.render.InlineText;
import org.xhtmlrenderer.render.JustificationInfo;
import org.xhtmlrenderer.render.LineBox;
import org.xhtmlrenderer.render.MarkerData;
import org.xhtmlrenderer.render.RenderingContext;

/**
 * Paints as the layout library does and marks what it paints: text and charts carry the tag of their element
 * ({@link Structure}); lines, backgrounds, bullets, page numbers and repeated table headings are marked as artifacts.
 */
final class TaggingDevice extends ITextOutputDevice {
    private static final PdfName ARTIFACT = new PdfName("Artifact");
    private static final PdfName BBOX = new PdfName("BBox");

    private final Map<Point, Element> numbers = new HashMap<>();
    private final Set<InlineText> painted = Collections.newSetFromMap(new IdentityHashMap<>());
    private @Nullable Document document;
    private @Nullable Structure structure;
    private @Nullable Links links;
    /** True if what is painted now has been marked. */
    private boolean marking;

    TaggingDevice(float dotsPerPoint) {
        super(dotsPerPoint);
    }

    /** Called after the layout, when the places of list numbers are known; the library paints those without their element. */
    @Override
    public void setRoot(Box root) {
        super.setRoot(root);
        findNumbers(root);
    }

    @Override
    public void start(Document doc) {
        super.start(doc);
        document = doc;
    }

    @Override
    public void setWriter(PdfWriter writer) {
        super.setWriter(writer);
        links = new Links(writer);
        SharedContext context = getSharedContext();
        structure = new Structure(
                Objects.requireNonNull(document, "started without a document").getDocumentElement(),
                writer.getStructureTreeRoot(),
                element -> {
                    CalculatedStyle style = context.getStyle(element);
                    return style.isRunning() || style.isDisplayNone();
                },
                new HashSet<>(numbers.values()));
    }

    private void findNumbers(Box box) {
        if (box instanceof BlockBox block && block.getMarkerData() != null && box.getElement() != null) {
            MarkerData marker = block.getMarkerData();
            LineBox line = marker.getReferenceLine();
            if (line != null && marker.getTextMarker() != null) {
                // Where the library's painter of list items puts the number.
                int x = line.getAbsX() - marker.getTextMarker().getLayoutWidth();
                int y = line.getAbsY() + marker.getStructMetrics().getBaseline();
                numbers.putIfAbsent(new Point(x, y), box.getElement());
            }
        }
        for (int i = 0; i < box.getChildCount(); i++) {
            findNumbers(box.getChild(i));
        }
        if (box instanceof LineBox line) {
            line.getNonFlowContent().forEach(this::findNumbers);
        }
    }

    private Structure structure() {
        return Objects.requireNonNull(structure, "painting before there is a writer");
    }

    @Override
    public void drawText(RenderingContext c, InlineText text) {
        Box box = text.getParent();
        PdfStructureElement tag = null;
        // The head of a table comes again on its next page: the same text, to be read once.
        if (box != null && !text.getSubstring().isBlank() && painted.add(text) && !box.isContainedInMarginBox()) {
            while (box != null && box.getElement() == null) {
                box = box.getParent();
            }
            tag = box == null ? null : structure().of(box.getElement());
        }
        String target = box == null || tag == null ? null : Links.target(box.getElement());
        if (target == null || tag == null) {
            marked(tag, () -> super.drawText(c, text));
            return;
        }
        PdfStructureElement link = Links.tag(tag);
        marked(link, () -> super.drawText(c, text));
        Objects.requireNonNull(links, "painting before there is a writer")
                .add(
                        target,
                        text.getSubstring(),
                        createLocalTargetArea(c, Objects.requireNonNull(text.getParent())),
                        link);
    }

    @Override
    public void drawString(String s, float x, float y, @Nullable JustificationInfo info) {
        PdfStructureElement label =
                marking ? null : structure().label(numbers.get(new Point(Math.round(x), Math.round(y))));
        marked(label, () -> super.drawString(s, x, y, info));
    }

    @Override
    public void paintReplacedElement(RenderingContext c, BlockBox box) {
        PdfStructureElement figure = structure().of(box.getElement());
        if (figure != null) {
            Rectangle area = createLocalTargetArea(c, box);
            PdfDictionary layout = new PdfDictionary();
            layout.put(PdfName.O, new PdfName("Layout"));
            layout.put(BBOX, new PdfRectangle(area));
            layout.put(new PdfName("Placement"), new PdfName("Block"));
            figure.put(PdfName.A, layout);
        }
        marked(figure, () -> super.paintReplacedElement(c, box));
    }

    @Override
    public void draw(Shape s) {
        marked(null, () -> super.draw(s));
    }

    @Override
    public void fill(Shape s) {
        marked(null, () -> super.fill(s));
    }

    @Override
    public void drawImage(FSImage image, int x, int y) {
        marked(null, () -> super.drawImage(image, x, y));
    }

    /** Paints under a tag, or as an artifact without one. */
    private void marked(@Nullable PdfStructureElement tag, Runnable painting) {
        if (marking) {
            painting.run();
            return;
        }
        PdfContentByte page = getCurrentPage();
        if (tag == null) {
            page.beginMarkedContentSequence(ARTIFACT);
        } else {
            page.beginMarkedContentSequence(tag);
        }
        marking = true;
        painting.run();
        marking = false;
        page.endMarkedContentSequence();
    }
}
