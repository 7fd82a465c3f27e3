package io.rowledger.export;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;

/** CSV after RFC 4180 in UTF-8, with text that a spreadsheet could take for a formula made harmless. */
public final class Cells {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180;
    /** The place before what a spreadsheet runs: at the start of the text, or behind what may part cells. */
    private static final Pattern RUNS =
            Pattern.compile("(?:^|(?<=[,;|\\t\\r\\n\"]))(?=[=+\\-@\\t\\r\\n\uff1d\uff0b\uff0d\uff20])");

    private Cells() {}

    /** Writes one record. */
    public static void record(Writer out, List<String> cells) throws IOException {
        FORMAT.printRecord(out, cells.toArray());
    }

    /**
     * Text as a cell. A spreadsheet runs what starts with =, +, −, @, tab, carriage return or line feed, or with the
     * full-width form of one of the signs (OWASP, "CSV Injection"); and one that takes another character for the separator
     * sees such a start in the middle of a cell too. So each such start gets an apostrophe before it. Numbers never pass
     * through here.
     */
    public static String text(String text) {
        return RUNS.matcher(text).replaceAll("'");
    }
}
