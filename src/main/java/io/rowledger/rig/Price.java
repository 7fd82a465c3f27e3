package io.rowledger.rig;

/**
 * Price of a product, by volume or by weight; a density converts one to the other.
 *
 * @param currency as entered, such as USD
 * @param perL price of a liter; NaN where the price is by weight
 * @param perKg price of a kilogram; NaN where the price is by volume
 * @param entered as entered, such as "1.85 USD/gal"
 */
public record Price(String currency, double perL, double perKg, String entered) {
    /** Price of a liter of this product; NaN if the price is by weight and the density unknown. */
    public double perLitreOf(Product product) {
        return Double.isNaN(perL) ? perKg * product.densityKgPerL() : perL;
    }
}
