package io.rowledger.report.pdf;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Takes chance and the machine's locale out of a finished PDF, in place and without moving a byte.
 *
 * <p>The library (OpenPDF 2.0.5) tags font subsets at random and writes the cross-reference table in the digits of the
 * default locale, which in Arabic or Hindi makes a file whose table can't be read.
 */
final class SteadyBytes {
    private static final byte[] FONT_NAME = ascii("LiberationSans");
    private static final byte[] START_XREF = ascii("startxref\n");
    private static final byte[] XREF = ascii("xref\n");
    /** Letters of a subset's tag (ISO 32000-1, 9.6.4). */
    private static final int SUBSET_TAG = 6;
    /** Bytes of a table entry: ten digits, a space, five digits, a space, n or f, two for the line's end (7.5.4). */
    private static final int ENTRY = 20;

    private SteadyBytes() {}

    static void settle(byte[] pdf) {
        nameSubsets(pdf);
        plainDigits(pdf);
    }

    /** Gives every font subset the tag of its weight. */
    private static void nameSubsets(byte[] pdf) {
        for (int i = SUBSET_TAG + 2; i + FONT_NAME.length < pdf.length; i++) {
            boolean tagged = pdf[i - 1] == '+' && pdf[i - SUBSET_TAG - 2] == '/';
            if (tagged && isAt(pdf, i, FONT_NAME)) {
                boolean bold = pdf[i + FONT_NAME.length] == '-';
                byte[] tag = ascii(bold ? "ROWLDB" : "ROWLDR");
                System.arraycopy(tag, 0, pdf, i - SUBSET_TAG - 1, SUBSET_TAG);
            }
        }
    }

    /** Writes the cross-reference table's digits as 0 to 9. */
    private static void plainDigits(byte[] pdf) {
        int start = pdf.length - START_XREF.length;
        while (!isAt(pdf, start, START_XREF)) {
            start--;
        }
        int table = (int) number(pdf, start + START_XREF.length);
        if (!isAt(pdf, table, XREF)) {
            throw new IllegalStateException("no cross-reference table at " + table);
        }
        int line = table + XREF.length;
        while (pdf[line] != 't') {
            int end = line;
            while (pdf[end] != '\n') {
                end++;
            }
            int first = end + 1;
            int space = line;
            while (pdf[space] != ' ') {
                space++;
            }
            int entries = (int) number(pdf, space + 1);
            for (int i = 0; i < entries; i++) {
                entry(pdf, first + i * ENTRY);
            }
            line = first + entries * ENTRY;
        }
    }

    private static void entry(byte[] pdf, int at) {
        // An entry in use has generation 0 and the free one offset 0: either shows what a zero looks like here.
        byte zero = pdf[at + 17] == 'n' ? pdf[at + 15] : pdf[at];
        for (int i = 0; i < 16; i++) {
            if (i != 10) {
                pdf[at + i] = (byte) (pdf[at + i] - zero + '0');
            }
        }
    }

    private static long number(byte[] pdf, int at) {
        long value = 0;
        for (int i = at; pdf[i] >= '0' && pdf[i] <= '9'; i++) {
            value = value * 10 + pdf[i] - '0';
        }
        return value;
    }

    private static boolean isAt(byte[] pdf, int at, byte[] what) {
        return Arrays.equals(pdf, at, Math.min(pdf.length, at + what.length), what, 0, what.length);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
