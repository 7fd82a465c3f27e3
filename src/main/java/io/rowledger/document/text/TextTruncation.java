package io.rowledger.document.text;

/** Text from the user, cut where a page has no room for more; files for machines keep all of it. */
public final class TextTruncation {
    /** A name inside a sentence or a table's cell. */
    private static final int NAME = 40;
    /** A title: two lines at the size of a heading. */
    private static final int TITLE = 90;
    /** A value that stands alone: about four lines of half a page. */
    private static final int VALUE = 200;

    /** A sentence with names in it. */
    private static final int SENTENCE = 320;

    private TextTruncation() {}

    public static String name(String text) {
        return to(text, NAME);
    }

    public static String title(String text) {
        return to(text, TITLE);
    }

    public static String sentence(String text) {
        return to(text, SENTENCE);
    }

    public static String value(String text) {
        return to(text, VALUE);
    }

    /** Whole words where the last one is not too long, then an ellipsis. */
    private static String to(String text, int most) {
        String plain = text.strip().replaceAll("\\s+", " ");
        if (plain.codePointCount(0, plain.length()) <= most) {
            return plain;
        }
        String cut = plain.substring(0, plain.offsetByCodePoints(0, most - 1));
        int space = cut.lastIndexOf(' ');
        return (space > most * 2 / 3 ? cut.substring(0, space) : cut) + "\u2026";
    }
}
