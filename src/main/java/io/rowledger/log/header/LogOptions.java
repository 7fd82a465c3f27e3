package io.rowledger.log.header;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the rig file says about the logs.
 *
 * @param columns quantity (as in the contract, a unit in brackets allowed) to the header in the log
 * @param productKeys keys of the rig file; empty where there is no rig file yet
 * @param rowsExpected outlets of the rig; 0 where there is no rig file yet
 * @param hints what the logs leave open
 */
public record LogOptions(Map<String, String> columns, List<String> productKeys, int rowsExpected, LogHints hints) {
    /** Copies the collections. */
    public LogOptions {
        columns = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(columns));
        productKeys = List.copyOf(productKeys);
    }

    /** For logs that leave nothing open. */
    public LogOptions(Map<String, String> columns, List<String> productKeys, int rowsExpected) {
        this(columns, productKeys, rowsExpected, LogHints.NONE);
    }

    /** For a look at a log without a rig file. */
    public static LogOptions unknownRig() {
        return new LogOptions(Map.of(), List.of(), 0);
    }
}
