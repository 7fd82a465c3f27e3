package io.rowledger.log.source;

import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a CSV text into blocks of whole records, which can be split into fields each by itself. A block ends behind a line feed, and
 * every quoted field in it begins and ends in one line without another quote inside. Where that doesn't hold, what is left is one
 * {@link #rest}.
 */
final class TextBlocks {
    /** Characters of a block; the first is as small as what is read to find the delimiter. */
    private static final int MIN_CHARS = 1 << 17;

    private static final int NOT_WHOLE = -1;

    private final Reader text;
    private final char delimiter;
    /** Read and not yet handed out: the first {@code length} of them. */
    private char[] chars;

    private int length;
    private boolean ended;
    private boolean started;
    private boolean whole = true;

    /**
     * Blocks of a text.
     *
     * @param start its first characters, already read: the first block is cut out of them
     * @param text the others
     */
    TextBlocks(String start, Reader text, char delimiter) {
        this.text = text;
        this.delimiter = delimiter;
        this.chars = start.toCharArray();
        this.length = chars.length;
    }

    /**
     * A block of records; the last of a text may end without a line feed.
     *
     * @param lines line ends in it; a carriage return with a line feed is one
     */
    @SuppressWarnings("ArrayRecordComponent") // Made once, read once.
    record Block(char[] chars, int length, int lines) {}

    /**
     * The next block.
     *
     * @return null at the end, or where the others are one {@link #rest}
     */
    @Nullable
    Block next() throws IOException {
        int end = started ? 0 : lineEnd();
        started = true;
        if (end == 0) {
            fill();
            end = ended ? length : lineEnd();
        }
        if (length == 0) {
            return null;
        }
        int lines = end > 0 ? wholeLines(end) : NOT_WHOLE;
        whole = lines != NOT_WHOLE;
        if (!whole) {
            return null;
        }
        Block block = new Block(chars, end, lines);
        chars = Arrays.copyOfRange(chars, end, end + Math.max(MIN_CHARS, length - end));
        length -= end;
        return block;
    }

    /** What is left after the last block, to be split into records from its beginning to its end; null where nothing is. */
    @Nullable
    Reader rest() throws IOException {
        if (whole) {
            return null;
        }
        PushbackReader rest = new PushbackReader(text, Math.max(1, length));
        rest.unread(chars, 0, length);
        return rest;
    }

    /** Line ends of what was read and not handed out. */
    int linesLeft() {
        int lines = 0;
        for (int i = 0; i < length; i++) {
            lines += isLineEnd(i) ? 1 : 0;
        }
        return lines;
    }

    /** Reads until the characters are as many as a block has, or the text ends. */
    private void fill() throws IOException {
        if (chars.length < MIN_CHARS) {
            chars = Arrays.copyOf(chars, MIN_CHARS);
        }
        while (!ended && length < chars.length) {
            int more = text.read(chars, length, chars.length - length);
            ended = more < 0;
            length += Math.max(0, more);
        }
    }

    /** One past the last line feed; 0 without one. */
    private int lineEnd() {
        int end = length;
        while (end > 0 && chars[end - 1] != '\n') {
            end--;
        }
        return end;
    }

    /** Line ends before {@code end}; {@link #NOT_WHOLE} if a quoted field there holds a quote or a line end, or doesn't end. */
    private int wholeLines(int end) {
        int lines = 0;
        boolean quoted = false;
        for (int i = 0; i < end; i++) {
            char c = chars[i];
            if (c > '"') {
                continue;
            }
            if (c == '"') {
                if (quoted ? !isFieldEnd(i + 1, end) : !isFieldStart(i)) {
                    return NOT_WHOLE;
                }
                quoted = !quoted;
            } else if (isLineEnd(i)) {
                if (quoted) {
                    return NOT_WHOLE;
                }
                lines++;
            }
        }
        return quoted ? NOT_WHOLE : lines;
    }

    private boolean isFieldStart(int i) {
        return i == 0 || chars[i - 1] == delimiter || chars[i - 1] == '\n' || chars[i - 1] == '\r';
    }

    private boolean isFieldEnd(int i, int end) {
        return i == end || chars[i] == delimiter || chars[i] == '\n' || chars[i] == '\r';
    }

    /** True for a line feed without a carriage return before it, and for a carriage return. */
    private boolean isLineEnd(int i) {
        return chars[i] == '\r' || (chars[i] == '\n' && (i == 0 || chars[i - 1] != '\r'));
    }
}
