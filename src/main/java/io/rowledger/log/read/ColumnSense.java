package io.rowledger.log.read;

/**
 * How a column was understood.
 *
 * @param file the file as given
 * @param header the header as written
 * @param quantity canonical name such as {@code uan.flow_03}; empty for a column that is ignored
 * @param unit the unit its figures are in; empty where there is none
 * @param example the first figure in it as written
 * @param remark how it was read where that is not plain; empty where it is
 */
public record ColumnSense(String file, String header, String quantity, String unit, String example, String remark) {
    /** True where the program makes no use of the column. */
    public boolean ignored() {
        return quantity.isEmpty();
    }
}
