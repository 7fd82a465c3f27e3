package io.rowledger.log.header;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The rig file's information about the logs.
 *
 * @param columns quantity (as in the contract, a unit in brackets allowed) to the header in the log
 * @param productKeys keys of the rig file; empty without a rig file
 * @param rowsExpected outlets of the rig; 0 without a rig file
 * @param hints facts that the logs do not show
 * @param bar row widths, meters, sections and nitrogen of the products
 */
public record LogOptions(
        Map<String, String> columns, List<String> productKeys, int rowsExpected, LogHints hints, BarLayout bar) {
    /** Copies the collections. */
    public LogOptions {
        columns = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(columns));
        productKeys = List.copyOf(productKeys);
    }

    /** Options without hints. */
    public LogOptions(Map<String, String> columns, List<String> productKeys, int rowsExpected) {
        this(columns, productKeys, rowsExpected, LogHints.NONE);
    }

    /** Options of a bar with a meter for each row, of unknown width. */
    public LogOptions(Map<String, String> columns, List<String> productKeys, int rowsExpected, LogHints hints) {
        this(columns, productKeys, rowsExpected, hints, BarLayout.UNKNOWN);
    }

    /** Options without a rig file. */
    public static LogOptions unknownRig() {
        return new LogOptions(Map.of(), List.of(), 0);
    }
}
