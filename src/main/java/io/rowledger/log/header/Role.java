package io.rowledger.log.header;

import java.util.Locale;

/**
 * What a column stands for.
 *
 * @param measured the quantity
 * @param product the product's key, empty where none is written or needed
 * @param row the outlet from 1, 0 where it is not of one outlet
 */
public record Role(LogQuantity measured, String product, int row) {
    /** The name the contract gives the column, without unit: {@code uan.flow_03}. */
    public String canonical() {
        String prefix = product.isEmpty() ? "" : product + ".";
        String suffix = row == 0 ? "" : String.format(Locale.ROOT, "_%02d", row);
        return prefix + measured.canonical() + suffix;
    }
}
