package io.rowledger.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Damages a file: bytes flipped, put in, taken out and cut off, blocks repeated, numbers swapped for extreme ones, words of
 * the format put where they don't belong, nesting without end, the end of another file.
 */
final class Mutator {
    /** Larger than any seed, small enough that a hang is one of the reader's making. */
    private static final int MAX = 1 << 20;

    private static final int DEEPEST = 20_000;

    private static final String[] EXTREMES = {
        "NaN",
        "Infinity",
        "-Infinity",
        "1e308",
        "-1e308",
        "1e999",
        "4.9e-324",
        "0",
        "-0.0",
        "-1",
        "2147483647",
        "-2147483648",
        "4294967296",
        "9223372036854775807",
        "99999999999999999999",
        "1e-320",
        "180.0000001",
        "90.0",
        "1,5",
        "0x1p3",
        "\u0661",
        "\uff11"
    };

    private static final String[] OPENERS = {
        "[", "{\"a\":", "<a>", "<MultiGeometry>", "- ", "{a: ", "((", "\"", "GEOGCS["
    };

    private static final int[] INTEGERS = {0, 1, -1, 255, 256, 65535, Integer.MAX_VALUE, Integer.MIN_VALUE, 0x7FFF};

    private static final double[] DOUBLES = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        1e308,
        -1e308,
        Double.MIN_VALUE,
        0,
        -0.0,
        180,
        1e9
    };

    private final Random random;
    private final List<String> words;

    Mutator(Random random, List<String> words) {
        this.random = random;
        this.words = words;
    }

    /**
     * The file, damaged once to six times.
     *
     * @param other a file of the same kind to splice with
     * @param binary whether numbers stand in it as bytes: then what follows mostly keeps its place
     */
    byte[] damaged(byte[] file, byte[] other, boolean binary) {
        byte[] result = file;
        // One alone mostly leaves something to read, and that reaches deepest.
        for (int edit = random.nextInt(3) > 0 ? 1 : random.nextInt(6) + 1; edit > 0; edit--) {
            byte[] next = binary && random.nextInt(4) > 0 ? inPlace(result) : edited(result, other);
            result = next.length > MAX ? result : next;
        }
        return result;
    }

    private byte[] inPlace(byte[] bytes) {
        byte[] out = bytes.clone();
        if (out.length < 16) {
            return out;
        }
        ByteBuffer buffer =
                ByteBuffer.wrap(out).order(random.nextBoolean() ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int at = place(bytes, random.nextInt(out.length - 8));
        switch (random.nextInt(6)) {
            case 0 -> out[at] ^= (byte) (1 << random.nextInt(8));
            case 1 -> out[at] = (byte) random.nextInt(256);
            case 2 -> buffer.putInt(at, INTEGERS[random.nextInt(INTEGERS.length)]);
            case 3 -> buffer.putShort(at, (short) INTEGERS[random.nextInt(INTEGERS.length)]);
            case 4 -> buffer.putDouble(at, DOUBLES[random.nextInt(DOUBLES.length)]);
            default -> {
                int length = Math.min(random.nextInt(64), out.length - at);
                int from = random.nextInt(out.length - length + 1);
                System.arraycopy(bytes, from, out, at, length);
            }
        }
        return out;
    }

    /** Most of a database is empty: the next byte that says something, and the head of the file more often than the rest. */
    private int place(byte[] bytes, int at) {
        int place = random.nextInt(5) == 0 ? random.nextInt(Math.min(200, bytes.length - 8)) : at;
        while (place < bytes.length - 9 && bytes[place] == 0) {
            place++;
        }
        return place;
    }

    private byte[] edited(byte[] bytes, byte[] other) {
        int at = random.nextInt(bytes.length + 1);
        int end = Math.min(bytes.length, at + random.nextInt(20));
        return switch (random.nextInt(13)) {
            case 0 -> joined(bytes, at, new byte[0], end);
            case 1 -> joined(bytes, at, word(), random.nextBoolean() ? at : end);
            case 2 -> joined(bytes, at, new byte[] {(byte) random.nextInt(256)}, random.nextBoolean() ? at : end);
            case 3 -> flipped(bytes, at);
            case 4 -> random.nextInt(4) == 0 ? Arrays.copyOf(bytes, at) : joined(bytes, at, new byte[0], end);
            case 5 -> joined(bytes, at, Arrays.copyOfRange(bytes, at, end), at);
            case 6 -> repeated(bytes, at);
            case 7, 8 -> otherNumber(bytes, at);
            case 9 -> lineAgain(bytes, at);
            case 10 -> joined(bytes, at, other, other.length - random.nextInt(other.length + 1), -1);
            case 11 -> nested(bytes, at);
            default -> elementAgain(bytes, at);
        };
    }

    private byte[] word() {
        return utf8(words.get(random.nextInt(words.size())));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private byte[] flipped(byte[] bytes, int at) {
        byte[] out = bytes.clone();
        if (at < out.length) {
            out[at] ^= (byte) (1 << random.nextInt(8));
        }
        return out;
    }

    /** A block many times over. */
    private byte[] repeated(byte[] bytes, int at) {
        int end = Math.min(bytes.length, at + 1 + random.nextInt(300));
        int most = random.nextInt(50) == 0 ? MAX / 4 : 4_000;
        int times = 1 + random.nextInt(Math.max(1, most / Math.max(1, end - at)));
        return joined(bytes, at, times(Arrays.copyOfRange(bytes, at, end), times), at);
    }

    private static byte[] times(byte[] block, int times) {
        byte[] out = new byte[block.length * times];
        for (int i = 0; i < times; i++) {
            System.arraycopy(block, 0, out, i * block.length, block.length);
        }
        return out;
    }

    private static boolean isOfNumber(byte b) {
        return (b >= '0' && b <= '9') || b == '.' || b == '-' || b == '+';
    }

    /** The next number, swapped for an extreme one. */
    private byte[] otherNumber(byte[] bytes, int at) {
        int from = at;
        while (from < bytes.length && !(bytes[from] >= '0' && bytes[from] <= '9')) {
            from++;
        }
        while (from > 0 && from < bytes.length && isOfNumber(bytes[from - 1])) {
            from--;
        }
        int end = from;
        while (end < bytes.length && isOfNumber(bytes[end])) {
            end++;
        }
        return joined(bytes, from, utf8(EXTREMES[random.nextInt(EXTREMES.length)]), end);
    }

    /** A line or some lines moved or said again elsewhere. */
    private byte[] lineAgain(byte[] bytes, int at) {
        int from = at;
        while (from > 0 && bytes[from - 1] != '\n') {
            from--;
        }
        int end = at;
        for (int lines = 1 + random.nextInt(5); lines > 0 && end < bytes.length; lines--) {
            while (end < bytes.length && bytes[end++] != '\n') {
                // To the end of the line.
            }
        }
        end = Math.min(end, from + 8_000);
        byte[] lines = Arrays.copyOfRange(bytes, from, end);
        byte[] rest = random.nextBoolean() ? bytes : joined(bytes, from, new byte[0], end);
        int to = random.nextInt(rest.length + 1);
        while (to > 0 && to < rest.length && rest[to - 1] != '\n') {
            to++;
        }
        return joined(rest, to, lines, to);
    }

    /** What opens a level, over and over; closed again or not. */
    private byte[] nested(byte[] bytes, int at) {
        String opener = OPENERS[random.nextInt(OPENERS.length)];
        int depth = random.nextInt(20) == 0 ? random.nextInt(DEEPEST) : random.nextInt(80);
        String closer = opener.startsWith("<")
                ? "</" + opener.substring(1)
                : opener.startsWith("[") || opener.endsWith("[")
                        ? "]"
                        : opener.startsWith("{") ? "}" : opener.startsWith("((") ? "))" : "";
        String text = opener.repeat(depth) + (random.nextBoolean() ? "1" + closer.repeat(depth) : "");
        return joined(bytes, at, utf8(text), at);
    }

    /** From an opening bracket to some closing one of its kind, inside itself or beside itself, some times. */
    private byte[] elementAgain(byte[] bytes, int at) {
        int from = at;
        while (from < bytes.length && "<[{(".indexOf(bytes[from]) < 0) {
            from++;
        }
        if (from >= bytes.length) {
            return bytes;
        }
        byte closer = (byte) ">]})".charAt("<[{(".indexOf(bytes[from]));
        int end = from;
        for (int skip = random.nextInt(12); skip >= 0 && end < bytes.length; skip--) {
            while (end < bytes.length && bytes[end++] != closer) {
                // To the next closing bracket.
            }
        }
        byte[] block = Arrays.copyOfRange(bytes, from, Math.min(end, from + 3_000));
        int into = random.nextBoolean() ? from : from + random.nextInt(block.length);
        return joined(bytes, into, times(block, 1 + random.nextInt(20)), into);
    }

    private static byte[] joined(byte[] bytes, int at, byte[] middle, int resume) {
        return joined(bytes, at, middle, 0, resume);
    }

    /** The beginning, then the middle from a place on, then the rest; no rest where {@code resume} is below 0. */
    private static byte[] joined(byte[] bytes, int at, byte[] middle, int from, int resume) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + middle.length);
        out.write(bytes, 0, at);
        out.write(middle, from, middle.length - from);
        if (resume >= 0) {
            out.write(bytes, resume, bytes.length - resume);
        }
        return out.toByteArray();
    }
}
