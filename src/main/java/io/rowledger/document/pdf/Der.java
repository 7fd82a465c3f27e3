package io.rowledger.document.pdf;

import java.io.ByteArrayOutputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Encodes the values of a signature by the distinguished encoding rules (DER, ITU-T X.690). */
final class Der {
    private static final int OCTETS = 0x04;
    private static final int NULL = 0x05;
    private static final int OBJECT = 0x06;
    private static final int SEQUENCE = 0x30;
    static final int SET = 0x31;

    private Der() {}

    /** A value under a tag of one byte. */
    static byte[] tagged(int tag, byte[]... parts) {
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            content.writeBytes(part);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(tag);
        int length = content.size();
        if (length < 0x80) {
            out.write(length);
        } else {
            int bytes = (Integer.SIZE - Integer.numberOfLeadingZeros(length) + 7) / 8;
            out.write(0x80 | bytes);
            for (int i = bytes - 1; i >= 0; i--) {
                out.write(length >>> (8 * i));
            }
        }
        out.writeBytes(content.toByteArray());
        return out.toByteArray();
    }

    static byte[] sequence(byte[]... parts) {
        return tagged(SEQUENCE, parts);
    }

    /** A set under this tag: its members in the order of their bytes (X.690, 11.6). */
    static byte[] set(int tag, List<byte[]> members) {
        return tagged(tag, members.stream().sorted(Arrays::compareUnsigned).toArray(byte[][]::new));
    }

    static byte[] integer(BigInteger value) {
        return tagged(0x02, value.toByteArray());
    }

    static byte[] octets(byte[] bytes) {
        return tagged(OCTETS, bytes);
    }

    static byte[] nothing() {
        return tagged(NULL);
    }

    /** An object identifier from its dotted form. */
    static byte[] object(String dotted) {
        String[] arcs = dotted.split("\\.", -1);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        arc(out, Integer.parseInt(arcs[0]) * 40L + Integer.parseInt(arcs[1]));
        for (int i = 2; i < arcs.length; i++) {
            arc(out, Long.parseLong(arcs[i]));
        }
        return tagged(OBJECT, out.toByteArray());
    }

    private static void arc(ByteArrayOutputStream out, long value) {
        for (int shift = 63 / 7 * 7; shift > 0; shift -= 7) {
            if (value >>> shift != 0) {
                out.write((int) (((value >>> shift) & 0x7f) | 0x80));
            }
        }
        out.write((int) (value & 0x7f));
    }

    /** Two hexadecimal digits per byte. */
    static byte[] hex(byte[] bytes) {
        StringBuilder text = new StringBuilder(2 * bytes.length);
        for (byte b : bytes) {
            text.append(Character.forDigit((b >> 4) & 0xf, 16)).append(Character.forDigit(b & 0xf, 16));
        }
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }
}
