package io.rowledger.log;

import io.rowledger.log.read.ColumnSense;
import io.rowledger.log.taskdata.ReadFile;
import java.util.List;

/**
 * A job's logs as read.
 *
 * @param table the usable records
 * @param columns how each column of each file was understood, in the order of the files
 * @param notes what was assumed or set right, each a sentence for a person
 * @param beside the files that say how to read the logs, where logs have such
 */
public record LogReading(LogTable table, List<ColumnSense> columns, List<String> notes, List<ReadFile> beside) {
    /** Copies the lists. */
    public LogReading {
        columns = List.copyOf(columns);
        notes = List.copyOf(notes);
        beside = List.copyOf(beside);
    }
}
