package io.rowledger.log.header;

import java.util.Locale;

/**
 * The meaning of a column.
 *
 * @param quantity the quantity
 * @param product the product's key, empty if none is written or needed
 * @param row the outlet from 1, 0 if the column is not of one outlet
 */
public record Role(LogQuantity quantity, String product, int row) {
    /** Returns the canonical column name without unit: {@code uan.flow_03}. */
    public String canonical() {
        String prefix = product.isEmpty() ? "" : product + ".";
        String suffix = row == 0 ? "" : String.format(Locale.ROOT, "_%02d", row);
        return prefix + quantity.canonical() + suffix;
    }
}
