package io.rowledger.log.read;

/**
 * The meaning of a column.
 *
 * @param file the file as given
 * @param header the header as written
 * @param quantity canonical name such as {@code uan.flow_03}; empty for an unused column
 * @param unit the unit of its values; empty if there is none
 * @param example the first value as written
 * @param remark how it was read; empty if it is a plain number
 */
public record ColumnMeaning(String file, String header, String quantity, String unit, String example, String remark) {
    /** Returns true for an unused column. */
    public boolean ignored() {
        return quantity.isEmpty();
    }
}
