package io.rowledger.log.read;

import io.rowledger.text.Message;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The meaning of a column.
 *
 * @param file the file as given
 * @param header the header as written
 * @param quantity canonical name such as {@code uan.flow_03}; empty for an unused column
 * @param unit the unit of its values; empty if there is none
 * @param example the first value as written
 * @param remarks how it was read; none if it is a plain number
 * @param open true if a question about it is open, or its unit is not known
 */
public record ColumnMeaning(
        String file, String header, String quantity, String unit, String example, List<Message> remarks, boolean open) {
    /** Copies the list. */
    public ColumnMeaning {
        remarks = List.copyOf(remarks);
    }

    /** How it was read, in words; empty if it is a plain number. */
    public String remark(Function<Message, String> words) {
        return remarks.stream().map(words).collect(Collectors.joining(", "));
    }

    /** Returns true for an unused column. */
    public boolean ignored() {
        return quantity.isEmpty();
    }
}
