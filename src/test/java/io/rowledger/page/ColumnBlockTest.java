package io.rowledger.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.util.Base64;
import java.util.SplittableRandom;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.junit.jupiter.api.Test;

/** The packed columns, read back by a reader of the test's own. */
class ColumnBlockTest {
    private static byte[] unpacked(ColumnBlock block) throws DataFormatException {
        Inflater inflater = new Inflater();
        inflater.setInput(Base64.getDecoder().decode(block.base64()));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] part = new byte[1024];
        while (!inflater.finished()) {
            out.write(part, 0, inflater.inflate(part));
        }
        inflater.end();
        return out.toByteArray();
    }

    /** The example of the package description, by hand. */
    @Test
    void differences_of_order_two_are_folded_and_raised_by_one() throws DataFormatException {
        double[] values = {1.0, 1.5, 2.0};
        ColumnBlock block = new ColumnBlock();
        block.add("a", 3, 0.5, 2, i -> values[i]);
        assertArrayEquals(new byte[] {5, 2, 1}, unpacked(block));
    }

    @Test
    void a_missing_value_is_a_zero_and_is_passed_over() throws DataFormatException {
        double[] values = {3, Double.NaN, 4};
        ColumnBlock block = new ColumnBlock();
        block.add("a", 3, 1, 1, i -> values[i]);
        assertArrayEquals(new byte[] {7, 0, 3}, unpacked(block));
    }

    /** 300 is 601 raised and folded: 0x59 with more to follow, then 4 (seven bits each). */
    @Test
    void a_large_number_takes_several_bytes() throws DataFormatException {
        ColumnBlock block = new ColumnBlock();
        block.add("a", 1, 1, 0, i -> 300);
        assertArrayEquals(new byte[] {(byte) (0x59 | 0x80), 4}, unpacked(block));
    }

    @Test
    void every_order_gives_the_values_back_within_half_a_step() throws DataFormatException {
        SplittableRandom random = new SplittableRandom(5);
        double[] values = new double[500];
        for (int i = 0; i < values.length; i++) {
            values[i] = random.nextInt(10) == 0 ? Double.NaN : random.nextDouble(-1e4, 1e4);
        }
        for (int order = 0; order <= 2; order++) {
            ColumnBlock block = new ColumnBlock();
            block.add("a", values.length, 0.25, order, i -> values[i]);
            double[] read = read(unpacked(block), values.length, 0.25, order);
            for (int i = 0; i < values.length; i++) {
                assertEquals(values[i], read[i], 0.125 + 1e-9, "order " + order + ", value " + i);
            }
        }
    }

    private static double[] read(byte[] bytes, int count, double step, int order) {
        double[] out = new double[count];
        int at = 0;
        long before = 0;
        long beforeThat = 0;
        for (int i = 0; i < count; i++) {
            long folded = 0;
            int shift = 0;
            while (bytes[at] < 0) {
                folded |= (long) (bytes[at++] & 0x7f) << shift;
                shift += 7;
            }
            folded |= (long) bytes[at++] << shift;
            if (folded == 0) {
                out[i] = Double.NaN;
                continue;
            }
            folded--;
            long q = (folded >>> 1 ^ -(folded & 1)) + (order == 0 ? 0 : order == 1 ? before : 2 * before - beforeThat);
            beforeThat = before;
            before = q;
            out[i] = q * step;
        }
        return out;
    }
}
