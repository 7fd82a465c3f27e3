package io.rowledger.log;

import java.util.List;

/**
 * A job's logs as read.
 *
 * @param table the usable records
 * @param columns how each column of each file was understood, in the order of the files
 * @param notes what was assumed or set right, each a sentence for a person
 */
public record LogReading(LogTable table, List<ColumnSense> columns, List<String> notes) {
    /** Copies the lists. */
    public LogReading {
        columns = List.copyOf(columns);
        notes = List.copyOf(notes);
    }
}
