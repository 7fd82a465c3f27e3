package io.rowledger.document.pdf;

import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfAction;
import com.lowagie.text.pdf.PdfAnnotation;
import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfBorderArray;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfWriter;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;

/**
 * Links in a tagged PDF: an element with {@code data-link} becomes a link annotation (ISO 32000-1, 12.5.6.5) under a Link tag that
 * refers to it (14.8.4.4.2), with its text as alternative description (ISO 14289-1, 7.18.5). It must be all that its paragraph or
 * cell holds: the library can't mix text and tags.
 */
final class Links {
    private static final String ATTRIBUTE = "data-link";
    private static final PdfName LINK = new PdfName("Link");
    private static final PdfName OBJECT_REFERENCE = new PdfName("OBJR");
    private static final PdfName OBJECT = new PdfName("Obj");
    private static final PdfName STRUCT_PARENT = new PdfName("StructParent");
    /** Bit 3, Print: what PDF/A wants of every annotation (ISO 19005-2, 6.3.2). */
    private static final int PRINTED = 4;

    private final PdfWriter writer;

    Links(PdfWriter writer) {
        this.writer = writer;
        writer.setTabs(PdfName.S);
    }

    /** The address that the text of an element leads to; null without one. */
    static @Nullable String target(@Nullable Element element) {
        String target = element == null ? "" : element.getAttribute(ATTRIBUTE);
        return target.isEmpty() ? null : target;
    }

    /** The tag of a link inside the tag of its paragraph or cell. */
    static PdfStructureElement tag(PdfStructureElement parent) {
        return new PdfStructureElement(parent, LINK);
    }

    /** Makes an area of the page a link after its text was painted under its tag. */
    void add(String target, String text, Rectangle area, PdfStructureElement tag) {
        PdfAnnotation link = new PdfAnnotation(
                writer, area.getLeft(), area.getBottom(), area.getRight(), area.getTop(), new PdfAction(target));
        link.put(PdfName.SUBTYPE, PdfName.LINK);
        link.put(PdfName.F, new PdfNumber(PRINTED));
        link.put(PdfName.CONTENTS, new PdfString(text, PdfObject.TEXT_UNICODE));
        link.setBorder(new PdfBorderArray(0, 0, 0));
        link.put(STRUCT_PARENT, new PdfNumber(writer.getStructureTreeRoot().addExistingObject(tag.getReference())));
        PdfDictionary reference = new PdfDictionary(OBJECT_REFERENCE);
        reference.put(OBJECT, link.getIndirectReference());
        PdfArray kids = new PdfArray(Objects.requireNonNull(tag.get(PdfName.K), "a link without text"));
        kids.add(reference);
        tag.put(PdfName.K, kids);
        writer.addAnnotation(link);
    }
}
