package io.rowledger.document.pdf;

import com.lowagie.text.pdf.BaseFont;
import io.rowledger.text.VisibleText;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * Replaces characters that the reports' font lacks by a box and adds a line that explains the box. The layout library would
 * drop them silently. The files for machines keep the characters.
 */
final class MissingGlyphs {
    /** White square, which the font has. */
    static final String BOX = "□";

    private static final String NOTE =
            BOX + " stands for a character that the font of this report does not have. The summary"
                    + " and record files beside it keep the text as entered.";

    private final BaseFont font;

    MissingGlyphs(BaseFont font) {
        this.font = font;
    }

    /** The text with a box for each character that the font lacks, and without joiners and variation selectors. */
    String boxed(String given) {
        String text = VisibleText.of(given);
        if (text.codePoints().allMatch(this::printable)) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (printable(c)) {
                shown.appendCodePoint(c);
            } else if (!invisible(c)) {
                shown.append(BOX);
            }
        });
        return shown.toString();
    }

    /** Replaces the characters in all text of a page and adds a line at its end that explains the boxes. */
    void box(Document page) {
        Node body = page.getElementsByTagName("body").item(0);
        if (body == null || !boxAll(body)) {
            return;
        }
        Element note = page.createElement("p");
        note.setAttribute("class", "small");
        note.appendChild(page.createTextNode(NOTE));
        body.appendChild(note);
    }

    private boolean boxAll(Node node) {
        boolean changed = false;
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Text text) {
                String shown = boxed(text.getData());
                if (!shown.equals(text.getData())) {
                    text.setData(shown);
                    changed |= shown.contains(BOX);
                }
            } else {
                changed |= boxAll(child);
            }
        }
        return changed;
    }

    private boolean printable(int c) {
        return Character.isISOControl(c) || Character.isWhitespace(c) || font.charExists(c);
    }

    private static boolean invisible(int c) {
        int type = Character.getType(c);
        boolean variation = (c >= 0xfe00 && c <= 0xfe0f) || (c >= 0xe0100 && c <= 0xe01ef);
        return type == Character.FORMAT || variation;
    }
}
