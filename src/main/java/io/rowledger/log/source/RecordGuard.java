package io.rowledger.log.source;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/**
 * Refuses a record that never ends: a line without a line break, or a quote that is not closed, would fill the memory with
 * all the rest of a large file.
 */
final class RecordGuard extends FilterReader {
    /** Characters from the end of one record to the end of the next; a record of 200 columns has some 2,000. */
    private static final long MAX_CHARS = 1L << 22;

    private long chars;

    RecordGuard(Reader text) {
        super(text);
    }

    /** Thrown for a record that is longer than {@link #MAX_CHARS}. */
    static final class EndlessRecordException extends IOException {
        private static final long serialVersionUID = 1L;
    }

    /** A record has ended. */
    void ended() {
        chars = 0;
    }

    @Override
    public int read() throws IOException {
        int value = super.read();
        count(value < 0 ? 0 : 1);
        return value;
    }

    @Override
    public int read(char[] into, int from, int length) throws IOException {
        int count = super.read(into, from, length);
        count(count);
        return count;
    }

    private void count(int more) throws IOException {
        chars += Math.max(0, more);
        if (chars > MAX_CHARS) {
            throw new EndlessRecordException();
        }
    }
}
