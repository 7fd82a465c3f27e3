package io.rowledger.log.source;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * Detects the character set of a log from its first bytes: a byte order mark, zeros in every second byte (UTF-16 without a
 * mark), bytes that are no UTF-8 (Windows-1252, in which a spreadsheet on Windows saves a degree sign). Otherwise UTF-8.
 */
final class TextEncoding {
    /** Bytes examined; below the buffer's size, so that they can be given back. */
    private static final int MAX_BYTES = 1 << 15;

    /** Share of zeros in one half of the bytes from which they are the halves of ASCII characters. */
    private static final double MIN_ZEROS = 0.9;

    /** Share of zeros in the other half up to which they are. */
    private static final double MAX_OTHER_ZEROS = 0.02;

    private static final Charset WINDOWS = Charset.forName("windows-1252");

    private TextEncoding() {}

    /** Returns the character set; the next byte is the first one after a byte order mark. */
    static Charset of(BufferedInputStream bytes) throws IOException {
        bytes.mark(MAX_BYTES);
        byte[] start = bytes.readNBytes(MAX_BYTES);
        bytes.reset();
        if (startsWith(start, 0xef, 0xbb, 0xbf)) {
            bytes.skipNBytes(3);
            return StandardCharsets.UTF_8;
        }
        if (startsWith(start, 0xff, 0xfe)) {
            bytes.skipNBytes(2);
            return StandardCharsets.UTF_16LE;
        }
        if (startsWith(start, 0xfe, 0xff)) {
            bytes.skipNBytes(2);
            return StandardCharsets.UTF_16BE;
        }
        double even = zeros(start, 0);
        double odd = zeros(start, 1);
        if (odd >= MIN_ZEROS && even <= MAX_OTHER_ZEROS) {
            return StandardCharsets.UTF_16LE;
        }
        if (even >= MIN_ZEROS && odd <= MAX_OTHER_ZEROS) {
            return StandardCharsets.UTF_16BE;
        }
        return isUtf8(start) ? StandardCharsets.UTF_8 : WINDOWS;
    }

    private static boolean startsWith(byte[] start, int... with) {
        boolean same = start.length >= with.length;
        for (int i = 0; same && i < with.length; i++) {
            same = (start[i] & 0xff) == with[i];
        }
        return same;
    }

    /** Returns the share of zeros among every second byte from the first one on. */
    private static double zeros(byte[] start, int first) {
        int zeros = 0;
        int count = 0;
        for (int i = first; i < start.length; i += 2) {
            zeros += start[i] == 0 ? 1 : 0;
            count++;
        }
        return count == 0 ? 0 : (double) zeros / count;
    }

    /** Returns true if the bytes are UTF-8 up to a character that the last of them cut. */
    private static boolean isUtf8(byte[] start) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer out = CharBuffer.allocate(start.length + 1);
        CoderResult result = decoder.decode(ByteBuffer.wrap(start), out, false);
        return !result.isError();
    }
}
