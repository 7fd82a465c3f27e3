package io.rowledger.document.pdf;

import com.lowagie.text.pdf.BaseFont;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * Characters the reports' font does not have. The layout library leaves them out, and a name that loses letters without a
 * word is another name: here each becomes a box, and the page says so. The files for machines keep the characters.
 */
final class LackingGlyphs {
    /** White square, which the font has. */
    static final String BOX = "□";

    private static final String NOTE =
            BOX + " stands for a character that the font of this report does not have. The summary"
                    + " and record files beside it keep the text as entered.";

    private final BaseFont font;

    LackingGlyphs(BaseFont font) {
        this.font = font;
    }

    /** The text with a box for each character that can't be printed; joiners and variation marks just go. */
    String boxed(String text) {
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

    /** The same for all text of a page, with a line at its end that says what the boxes are. */
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
