package io.rowledger.document.pdf;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The color space of all colors of a report: sRGB (IEC 61966-2-1) as an ICC profile of version 4.2
 * (ISO 15076-1), made here because the profiles of different JDKs differ.
 *
 * <p>The curve of the standard: Y = ((X + 0.055) / 1.055)^2.4 from X = 0.04045 on, X / 12.92 below it, as a parametric
 * curve of type 3. The colorants are the matrix of the standard brought from D65 to D50 with the Bradford transform (ISO
 * 15076-1, annex E).
 */
final class SrgbProfile {
    private static final int HEADER = 128;
    /** Bytes of a tag table's entry: signature, offset, size. */
    private static final int ENTRY = 12;

    private static final double[] D50 = {0.9642, 1, 0.8249};
    private static final double[] RED = {0.4360747, 0.2225045, 0.0139322};
    private static final double[] GREEN = {0.3850649, 0.7168786, 0.0971045};
    private static final double[] BLUE = {0.1430804, 0.0606169, 0.7141733};
    private static final double[] BRADFORD_D65_TO_D50 = {
        1.0478112, 0.0228866, -0.0501270, 0.0295424, 0.9904844, -0.0170491, -0.0092345, 0.0150436, 0.7521316
    };
    private static final double[] CURVE = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};

    private SrgbProfile() {}

    private record Tag(String signature, byte[] data) {}

    /** The profile's bytes. */
    static byte[] bytes() {
        byte[] curve = curve();
        List<Tag> tags = new ArrayList<>();
        tags.add(new Tag("desc", text("sRGB IEC61966-2-1")));
        tags.add(new Tag("cprt", text("No copyright, use freely")));
        tags.add(new Tag("wtpt", numbers("XYZ ", D50)));
        tags.add(new Tag("chad", numbers("sf32", BRADFORD_D65_TO_D50)));
        tags.add(new Tag("rXYZ", numbers("XYZ ", RED)));
        tags.add(new Tag("gXYZ", numbers("XYZ ", GREEN)));
        tags.add(new Tag("bXYZ", numbers("XYZ ", BLUE)));
        tags.add(new Tag("rTRC", curve));
        tags.add(new Tag("gTRC", curve));
        tags.add(new Tag("bTRC", curve));
        int size = HEADER + 4 + ENTRY * tags.size();
        for (Tag tag : tags) {
            size += padded(tag.data.length);
        }
        ByteBuffer out = ByteBuffer.allocate(size);
        header(out, size);
        out.putInt(HEADER, tags.size());
        int at = HEADER + 4 + ENTRY * tags.size();
        int entry = HEADER + 4;
        for (Tag tag : tags) {
            out.put(entry, ascii(tag.signature));
            out.putInt(entry + 4, at).putInt(entry + 8, tag.data.length);
            out.put(at, tag.data);
            at += padded(tag.data.length);
            entry += ENTRY;
        }
        return out.array();
    }

    /** ISO 15076-1, 7.2: what is not set is zero (no preferred engine, platform, maker, profile number). */
    private static void header(ByteBuffer out, int size) {
        out.putInt(0, size);
        out.put(8, new byte[] {4, 0x20});
        out.put(12, ascii("mntrRGB XYZ "));
        out.putShort(24, (short) 2026).putShort(26, (short) 1).putShort(28, (short) 1);
        out.put(36, ascii("acsp"));
        for (int i = 0; i < D50.length; i++) {
            out.putInt(68 + 4 * i, fixed(D50[i]));
        }
    }

    private static byte[] text(String text) {
        byte[] words = text.getBytes(StandardCharsets.UTF_16BE);
        return ByteBuffer.allocate(28 + words.length)
                .put(ascii("mluc"))
                .putInt(0)
                .putInt(1)
                .putInt(ENTRY)
                .put(ascii("enUS"))
                .putInt(words.length)
                .putInt(28)
                .put(words)
                .array();
    }

    private static byte[] numbers(String type, double[] values) {
        ByteBuffer out =
                ByteBuffer.allocate(8 + 4 * values.length).put(ascii(type)).putInt(0);
        for (double value : values) {
            out.putInt(fixed(value));
        }
        return out.array();
    }

    private static byte[] curve() {
        ByteBuffer out = ByteBuffer.allocate(12 + 4 * CURVE.length).put(ascii("para"));
        out.putInt(0).putShort((short) 3).putShort((short) 0);
        for (double value : CURVE) {
            out.putInt(fixed(value));
        }
        return out.array();
    }

    /** A number of type s15Fixed16. */
    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }

    private static int padded(int length) {
        return (length + 3) / 4 * 4;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
