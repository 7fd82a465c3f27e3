package io.rowledger.document.pdf;

import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfNumber;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfStructureTreeRoot;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The tree of tags of a tagged PDF (ISO 32000-1, 14.7 and 14.8), built from the XHTML page in its order: what a
 * screen reader reads, in whatever order the layout library paints.
 *
 * <p>Headings, paragraphs, tables, lists and charts get the standard types; an inline element belongs to the text around
 * it; a {@code div} has no tag of its own. A cell with a {@code scope} is a heading, as in HTML. A table with
 * {@code role="presentation"} is only layout. What an element holds beside blocks becomes a paragraph of its own,
 * because the library can't mix the two under one tag.
 */
final class Structure {
    private static final Set<String> INLINE = Set.of(
            "a", "abbr", "acronym", "b", "big", "br", "cite", "code", "em", "font", "i", "kbd", "label", "q", "s",
            "samp", "small", "span", "strong", "sub", "sup", "tt", "u", "var");
    private static final Set<String> TABLE = Set.of("table", "thead", "tbody", "tfoot", "tr", "th", "td");
    private static final Map<String, String> TYPES = Map.ofEntries(
            Map.entry("h1", "H1"),
            Map.entry("h2", "H2"),
            Map.entry("h3", "H3"),
            Map.entry("h4", "H4"),
            Map.entry("h5", "H5"),
            Map.entry("h6", "H6"),
            Map.entry("p", "P"),
            Map.entry("pre", "P"),
            Map.entry("address", "P"),
            Map.entry("caption", "Caption"),
            Map.entry("blockquote", "BlockQuote"),
            Map.entry("ul", "L"),
            Map.entry("ol", "L"),
            Map.entry("table", "Table"),
            Map.entry("thead", "THead"),
            Map.entry("tbody", "TBody"),
            Map.entry("tfoot", "TFoot"),
            Map.entry("tr", "TR"),
            Map.entry("th", "TH"),
            Map.entry("td", "TD"));
    private static final PdfName SCOPE = new PdfName("Scope");
    private static final PdfName NUMBERING = new PdfName("ListNumbering");

    private final IdentityHashMap<Element, PdfStructureElement> leaves = new IdentityHashMap<>();
    private final IdentityHashMap<Element, PdfStructureElement> labels = new IdentityHashMap<>();
    private final Predicate<Element> hidden;
    private final Set<Element> numbered;
    private String lastHeading = "";

    /**
     * Builds the tree.
     *
     * @param page the element that holds everything
     * @param hidden true for an element that is not part of the text: not shown, or repeated in the margin
     * @param numbered list items whose number is painted as text
     */
    Structure(Element page, PdfStructureTreeRoot root, Predicate<Element> hidden, Set<Element> numbered) {
        this.hidden = hidden;
        this.numbered = numbered;
        PdfStructureElement document = new PdfStructureElement(root, new PdfName("Document"));
        for (Element block : blocks(page)) {
            add(block, document, false);
        }
    }

    /** The tag of the text directly inside this element, or inside an inline element in it; null if it is not part of the text. */
    @Nullable
    PdfStructureElement of(@Nullable Element element) {
        Element block = element;
        while (block != null && INLINE.contains(block.getNodeName())) {
            block = block.getParentNode() instanceof Element parent ? parent : null;
        }
        return block == null ? null : leaves.get(block);
    }

    /** The tag of this list item's number, or null. */
    @Nullable
    PdfStructureElement label(@Nullable Element item) {
        return item == null ? null : labels.get(item);
    }

    private void add(Element element, PdfStructureElement parent, boolean inLayoutTable) {
        String name = element.getNodeName();
        boolean layout = name.equals("table") ? element.getAttribute("role").equals("presentation") : inLayoutTable;
        boolean cell = !layout && TABLE.contains(name);
        if (hidden.test(element) || (!cell && !hasContent(element))) {
            return;
        }
        if (element.hasAttribute("data-chart")) {
            leaves.put(element, figure(element, parent));
        } else if (name.equals("li")) {
            item(element, parent);
        } else {
            plain(element, parent, layout);
        }
    }

    private void plain(Element element, PdfStructureElement parent, boolean layout) {
        String name = element.getNodeName();
        String type = layout && TABLE.contains(name) ? null : TYPES.get(name);
        if (type != null && type.equals("TD") && element.hasAttribute("scope")) {
            type = "TH";
        }
        PdfStructureElement own = type == null ? parent : child(parent, type);
        if (type != null) {
            describe(own, type, element);
            if (type.matches("H[1-6]")) {
                lastHeading = words(element);
            }
        }
        fill(element, own, type != null, layout);
    }

    private void item(Element element, PdfStructureElement parent) {
        PdfStructureElement item = child(parent, "LI");
        if (numbered.contains(element)) {
            labels.put(element, child(item, "Lbl"));
        }
        fill(element, child(item, "LBody"), true, false);
    }

    private void fill(Element element, PdfStructureElement own, boolean mayHoldText, boolean layout) {
        List<Element> blocks = blocks(element);
        if (hasText(element)) {
            leaves.put(element, mayHoldText && blocks.isEmpty() ? own : child(own, "P"));
        }
        for (Element block : blocks) {
            add(block, own, layout);
        }
    }

    private PdfStructureElement figure(Element element, PdfStructureElement parent) {
        PdfStructureElement figure = child(parent, "Figure");
        String alt = element.getAttribute("alt").strip();
        String alternate = alt.isEmpty() ? ("Chart. " + lastHeading).strip() : alt.replaceAll("\\s+", " ");
        figure.put(PdfName.ALT, new PdfString(alternate, PdfObject.TEXT_UNICODE));
        return figure;
    }

    private static void describe(PdfStructureElement own, String type, Element element) {
        PdfDictionary table = new PdfDictionary();
        if (type.equals("TH")) {
            table.put(SCOPE, new PdfName(scope(element)));
        }
        if (type.equals("TH") || type.equals("TD")) {
            span(table, "ColSpan", element.getAttribute("colspan"));
            span(table, "RowSpan", element.getAttribute("rowspan"));
        }
        if (table.size() > 0) {
            table.put(PdfName.O, new PdfName("Table"));
            own.put(PdfName.A, table);
        }
        if (type.equals("L")) {
            PdfDictionary list = new PdfDictionary();
            list.put(PdfName.O, new PdfName("List"));
            list.put(NUMBERING, new PdfName(element.getNodeName().equals("ol") ? "Decimal" : "Disc"));
            own.put(PdfName.A, list);
        }
    }

    private static String scope(Element cell) {
        return cell.getAttribute("scope").startsWith("row") ? "Row" : "Column";
    }

    private static void span(PdfDictionary attributes, String name, String cells) {
        if (cells.matches("[2-9]|[1-9][0-9]{1,3}")) {
            attributes.put(new PdfName(name), new PdfNumber(Integer.parseInt(cells)));
        }
    }

    private static PdfStructureElement child(PdfStructureElement parent, String type) {
        return new PdfStructureElement(parent, new PdfName(type));
    }

    /** The blocks inside an element, in order; those inside inline elements too. */
    private static List<Element> blocks(Element element) {
        List<Element> blocks = new ArrayList<>();
        for (Element child : children(element)) {
            if (INLINE.contains(child.getNodeName())) {
                blocks.addAll(blocks(child));
            } else {
                blocks.add(child);
            }
        }
        return blocks;
    }

    private static boolean hasText(Element element) {
        for (Node n = element.getFirstChild(); n != null; n = n.getNextSibling()) {
            boolean text = n.getNodeType() == Node.TEXT_NODE || n.getNodeType() == Node.CDATA_SECTION_NODE;
            if (text && !n.getNodeValue().isBlank()) {
                return true;
            }
            if (n instanceof Element child && INLINE.contains(child.getNodeName()) && hasText(child)) {
                return true;
            }
        }
        return false;
    }

    private static boolean hasContent(Element element) {
        if (element.hasAttribute("data-chart") || hasText(element)) {
            return true;
        }
        return children(element).stream().anyMatch(Structure::hasContent);
    }

    private static List<Element> children(Element element) {
        List<Element> children = new ArrayList<>();
        for (Node n = element.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element child) {
                children.add(child);
            }
        }
        return children;
    }

    private static String words(Element element) {
        return element.getTextContent().strip().replaceAll("\\s+", " ");
    }
}
