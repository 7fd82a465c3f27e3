package io.rowledger.document.pdf;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/** Reads values of the distinguished encoding rules (DER, ITU-T X.690): tags of one byte, definite lengths. */
final class DerReader {
    private static final int MAX_LENGTH_BYTES = 4;

    private DerReader() {}

    /** Bytes that are no DER, or another value than expected. */
    static final class MalformedDerException extends Exception {
        private static final long serialVersionUID = 1L;

        MalformedDerException(String message) {
            super(message);
        }
    }

    /**
     * A value.
     *
     * @param tag its identifier octet
     * @param content its contents octets
     * @param encoded all of its octets
     */
    record Value(int tag, byte[] content, byte[] encoded) {
        /** The values inside a constructed one. */
        List<Value> inside() throws MalformedDerException {
            return values(content);
        }

        /** The value at this place inside. */
        Value at(int index) throws MalformedDerException {
            List<Value> values = inside();
            if (index >= values.size()) {
                throw new MalformedDerException("a value lacks");
            }
            return values.get(index);
        }

        /** The only value inside. */
        Value only() throws MalformedDerException {
            return at(0);
        }
    }

    /** The values that stand one after the other. */
    static List<Value> values(byte[] bytes) throws MalformedDerException {
        List<Value> out = new ArrayList<>();
        ByteBuffer in = ByteBuffer.wrap(bytes);
        while (in.hasRemaining()) {
            int start = in.position();
            int tag = in.get() & 0xff;
            int length = length(in);
            if (length < 0 || length > in.remaining()) {
                throw new MalformedDerException("a value longer than what holds it");
            }
            byte[] content = new byte[length];
            in.get(content);
            byte[] encoded = new byte[in.position() - start];
            in.get(start, encoded);
            out.add(new Value(tag, content, encoded));
        }
        return out;
    }

    private static int length(ByteBuffer in) throws MalformedDerException {
        if (!in.hasRemaining()) {
            throw new MalformedDerException("no length");
        }
        int first = in.get() & 0xff;
        if (first < 0x80) {
            return first;
        }
        int count = first & 0x7f;
        if (count == 0 || count > MAX_LENGTH_BYTES || count > in.remaining()) {
            throw new MalformedDerException("a length that is not definite");
        }
        int length = 0;
        for (int i = 0; i < count; i++) {
            length = (length << 8) | (in.get() & 0xff);
        }
        return length;
    }
}
