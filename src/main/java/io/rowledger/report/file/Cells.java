package io.rowledger.report.file;

import io.rowledger.interval.Interval;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/** CSV after RFC 4180 in UTF-8, with text that a spreadsheet could take for a formula made harmless. */
final class Cells {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180;

    private Cells() {}

    static Writer writer(OutputStream out) {
        return new OutputStreamWriter(out, StandardCharsets.UTF_8);
    }

    /** Writes one record. */
    static void record(Writer out, List<String> cells) throws IOException {
        FORMAT.printRecord(out, cells.toArray());
    }

    /** Headers of a figure's bounds. */
    static void boundsHeader(List<String> header, String figure) {
        header.add(figure + "_low");
        header.add(figure + "_high");
    }

    /** A figure's bounds, times {@code factor}; empty where nothing can be said. */
    static void bounds(List<String> cells, Interval interval, double factor, int decimals) {
        cells.add(Decimals.text(interval.low() * factor, decimals));
        cells.add(Decimals.text(interval.high() * factor, decimals));
    }

    /**
     * Text as a cell: a spreadsheet runs what starts with =, +, −, @, tab or carriage return, so such text gets a leading
     * apostrophe (OWASP, "CSV Injection"). Numbers never pass through here.
     */
    static String text(String text) {
        return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
