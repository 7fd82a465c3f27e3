package io.rowledger.document.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;

/** The tags of a PDF with the text under each, read by PDFBox: what a screen reader gets. */
record TagTree(String type, String alt, COSDictionary attributes, String text, List<TagTree> kids) {
    static TagTree read(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Map<COSDictionary, Map<Integer, String>> texts = new HashMap<>();
            for (PDPage page : document.getPages()) {
                PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
                extractor.setSuppressDuplicateOverlappingText(false);
                extractor.processPage(page);
                Map<Integer, String> marks = new HashMap<>();
                for (PDMarkedContent content : extractor.getMarkedContents()) {
                    if (content.getMCID() >= 0) {
                        marks.merge(content.getMCID(), text(content), String::concat);
                    }
                }
                texts.put(page.getCOSObject(), marks);
            }
            return node(document.getDocumentCatalog().getStructureTreeRoot(), texts);
        }
    }

    private static String text(PDMarkedContent content) {
        StringBuilder text = new StringBuilder();
        for (Object part : content.getContents()) {
            text.append(part instanceof TextPosition position ? position.getUnicode() : "");
        }
        return text.toString();
    }

    private static TagTree node(PDStructureNode node, Map<COSDictionary, Map<Integer, String>> texts) {
        PDStructureElement element = node instanceof PDStructureElement e ? e : null;
        StringBuilder text = new StringBuilder();
        List<TagTree> kids = new ArrayList<>();
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement child) {
                kids.add(node(child, texts));
            } else if (kid instanceof Integer mark) {
                text.append(texts.get(element.getPage().getCOSObject()).get(mark))
                        .append(' ');
            } else if (kid instanceof PDMarkedContentReference mark) {
                text.append(texts.get(mark.getPage().getCOSObject()).get(mark.getMCID()))
                        .append(' ');
            }
        }
        return new TagTree(
                element == null ? "" : element.getStructureType(),
                element == null ? null : element.getAlternateDescription(),
                element == null ? null : element.getCOSObject().getCOSDictionary(COSName.A),
                text.toString().replace('\u00a0', ' ').replaceAll("\\s+", " ").strip(),
                kids);
    }

    /** All tags of this type, in reading order. */
    List<TagTree> all(String type) {
        List<TagTree> found = new ArrayList<>();
        if (this.type.equals(type)) {
            found.add(this);
        }
        kids.forEach(kid -> found.addAll(kid.all(type)));
        return found;
    }

    /** An attribute of this tag as a name or number, or null. */
    String attribute(String name) {
        return attributes == null || attributes.getItem(name) == null
                ? null
                : attributes.getNameAsString(name) == null
                        ? Integer.toString(attributes.getInt(name))
                        : attributes.getNameAsString(name);
    }

    /** Everything there is to hear below this tag, in order. */
    String heard() {
        StringBuilder heard = new StringBuilder(type.equals("Figure") ? "" : text);
        kids.forEach(kid -> heard.append(' ').append(kid.heard()));
        return heard.toString().replaceAll("\\s+", " ").strip();
    }
}
