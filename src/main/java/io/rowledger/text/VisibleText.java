package io.rowledger.text;

/**
 * Makes characters visible that would otherwise change what a reader sees without being seen: control characters, which move
 * the cursor or color of a terminal, the bidirectional formatting characters of Unicode Standard Annex #9 (section 2), which
 * reorder the text around them, and characters without a width. Each becomes {@code <U+202E>}. Letters of every script
 * stay as they are, also those written from right to left; so do the joiners U+200C and U+200D, which spelling needs.
 */
public final class VisibleText {
    private static final int TAGS_FIRST = 0xe0000;
    private static final int TAGS_LAST = 0xe007f;

    private VisibleText() {}

    /** The text on one line: tabs and line breaks are made visible too. */
    public static String line(String text) {
        return shown(text, false);
    }

    /** Text of several lines: tabs and line feeds stay. */
    public static String of(String text) {
        return shown(text, true);
    }

    private static String shown(String text, boolean layout) {
        int length = text.length();
        int plain = 0;
        while (plain < length && !isHidden(text, plain, layout)) {
            plain += Character.charCount(text.codePointAt(plain));
        }
        if (plain == length) {
            return text;
        }
        StringBuilder out = new StringBuilder(length + 16).append(text, 0, plain);
        for (int i = plain; i < length; ) {
            int c = text.codePointAt(i);
            if (isHidden(text, i, layout)) {
                out.append("<U+").append(hex(c)).append('>');
            } else {
                out.appendCodePoint(c);
            }
            i += Character.charCount(c);
        }
        return out.toString();
    }

    private static String hex(int c) {
        String digits = Integer.toHexString(c).toUpperCase(java.util.Locale.ROOT);
        return "0".repeat(Math.max(0, 4 - digits.length())) + digits;
    }

    private static boolean isHidden(String text, int i, boolean layout) {
        int c = text.codePointAt(i);
        if (c >= ' ' && c < 0x7f) {
            return false;
        }
        if (c == '\n' || c == '\t') {
            return !layout;
        }
        return Character.isISOControl(c) || reorders(c) || hasNoWidth(c);
    }

    /** Embeddings, overrides, isolates and marks of UAX #9, sections 2.1 to 2.6; CVE-2021-42574 is about the first nine. */
    private static boolean reorders(int c) {
        return (c >= 0x202a && c <= 0x202e)
                || (c >= 0x2066 && c <= 0x2069)
                || c == 0x200e
                || c == 0x200f
                || c == 0x061c;
    }

    /**
     * Soft hyphen, fillers, zero width space, word joiner and invisible operators, separators of lines and paragraphs,
     * deprecated format characters, byte order mark, annotations, noncharacters, tags and lone surrogates.
     */
    private static boolean hasNoWidth(int c) {
        return c == 0xad
                || c == 0x34f
                || c == 0x115f
                || c == 0x1160
                || c == 0x180e
                || c == 0x200b
                || c == 0x2028
                || c == 0x2029
                || (c >= 0x2060 && c <= 0x2065)
                || (c >= 0x206a && c <= 0x206f)
                || c == 0x3164
                || (c >= 0xd800 && c <= 0xdfff)
                || c == 0xfeff
                || c == 0xffa0
                || (c >= 0xfff9 && c <= 0xfffb)
                || (c & 0xfffe) == 0xfffe
                || (c >= TAGS_FIRST && c <= TAGS_LAST);
    }
}
