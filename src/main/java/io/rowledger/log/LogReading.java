package io.rowledger.log;

import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.taskdata.ControllerTotals;
import io.rowledger.log.taskdata.ReadFile;
import io.rowledger.text.Message;
import java.util.List;

/**
 * A job's logs as read.
 *
 * @param table the usable records
 * @param columns the meaning of each column of each file, in the order of the files
 * @param notes assumptions and corrections
 * @param beside files that describe how to read the logs (task data); empty if there are none
 * @param totals totals of the controller beside what its flows add up to (task data); empty if there are none
 */
public record LogReading(
        LogTable table,
        List<ColumnMeaning> columns,
        List<Message> notes,
        List<ReadFile> beside,
        List<ControllerTotals> totals) {
    /** Copies the lists. */
    public LogReading {
        columns = List.copyOf(columns);
        notes = List.copyOf(notes);
        beside = List.copyOf(beside);
        totals = List.copyOf(totals);
    }
}
