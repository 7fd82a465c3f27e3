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
 */
public record LogOptions(Map<String, String> columns, List<String> productKeys, int rowsExpected, LogHints hints) {
    /** Copies the collections. */
    public LogOptions {
        columns = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(columns));
        productKeys = List.copyOf(productKeys);
    }

    /** Options without hints. */
    public LogOptions(Map<String, String> columns, List<String> productKeys, int rowsExpected) {
        this(columns, productKeys, rowsExpected, LogHints.NONE);
    }

    /** Options without a rig file. */
    public static LogOptions unknownRig() {
        return new LogOptions(Map.of(), List.of(), 0);
    }
}
