package io.rowledger.rig;

import io.rowledger.log.header.LogHints;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the rig file says about how to read logs and maps.
 *
 * @param columns quantity to header, for logs whose headers are not recognized: the {@code columns:} block
 * @param log clock and units of the logs: the {@code log:} block
 * @param prescription attributes of the prescription map: the {@code prescription:} block
 */
public record FileHints(Map<String, String> columns, LogHints log, PrescriptionColumns prescription) {
    /** No hints: logs and maps say everything themselves. */
    public static final FileHints NONE = new FileHints(Map.of(), LogHints.NONE, PrescriptionColumns.NONE);

    /** Copies the columns in their order. */
    public FileHints {
        columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    }
}
