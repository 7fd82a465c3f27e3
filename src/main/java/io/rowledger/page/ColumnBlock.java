package io.rowledger.page;

import io.rowledger.digest.Sha256;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Columns of numbers, quantized, written as differences and packed into text.
 *
 * <p>A value v becomes the whole number q = round(v ÷ step). Of q its difference of the given order from the values before it
 * is kept (order 0: q itself; 1: qᵢ − qᵢ₋₁; 2: qᵢ − 2·qᵢ₋₁ + qᵢ₋₂; missing values are passed over), folded to a non-negative number
 * (0, −1, 1, −2, ... to 0, 1, 2, 3, ...), raised by one and written in groups of seven bits, least significant first, the eighth bit
 * set where more follow. A 0 is a missing value. All columns one after the other are deflated (zlib, RFC 1950) and written in
 * base64 (RFC 4648).
 */
final class ColumnBlock {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
    private final List<Column> columns = new ArrayList<>();

    /**
     * One column as the page's script reads it.
     *
     * @param name what it holds
     * @param count number of values
     * @param step size of one unit of the stored whole numbers
     * @param order order of the differences, 0 to 2
     */
    record Column(String name, int count, double step, int order) {}

    /** Appends a column; NaN is a missing value. */
    void add(String name, int count, double step, int order, IntToDoubleFunction value) {
        columns.add(new Column(name, count, step, order));
        long before = 0;
        long beforeThat = 0;
        for (int i = 0; i < count; i++) {
            double v = value.applyAsDouble(i);
            if (Double.isNaN(v)) {
                bytes.write(0);
                continue;
            }
            long q = Math.round(v / step);
            long difference = q - (order == 0 ? 0 : order == 1 ? before : 2 * before - beforeThat);
            write(((difference << 1) ^ (difference >> 63)) + 1);
            beforeThat = before;
            before = q;
        }
    }

    private void write(long folded) {
        long left = folded;
        while (left > 0x7f) {
            bytes.write((int) ((left & 0x7f) | 0x80));
            left >>>= 7;
        }
        bytes.write((int) left);
    }

    /** The columns in their order. */
    List<Column> columns() {
        return List.copyOf(columns);
    }

    /** Names these values: a digest of the bytes before they are packed. */
    String digest() {
        return Sha256.of(bytes.toByteArray());
    }

    /** The packed bytes as text. */
    String base64() {
        return packed(bytes.toByteArray(), Deflater.FILTERED);
    }

    /**
     * Bytes deflated and written in base64.
     *
     * @param strategy of {@link Deflater}: small, scattered differences pack best {@link Deflater#FILTERED filtered}
     */
    static String packed(byte[] plain, int strategy) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream(plain.length / 2);
        Deflater deflater = new Deflater();
        deflater.setStrategy(strategy);
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater)) {
            out.write(plain);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            deflater.end();
        }
        return Base64.getEncoder().encodeToString(packed.toByteArray());
    }
}
