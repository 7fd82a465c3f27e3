package io.rowledger.rig;

/**
 * An amount of liquid ordered or delivered, as volume and as mass.
 *
 * @param volumeL volume, L; NaN if only a weight is known and no density
 * @param massKg mass, kg; NaN if only a volume is known and no density
 * @param densityKgPerL the density of the conversion, kg/L; NaN without one
 * @param densityFrom source of that density
 * @param entered the figures as entered, such as "12,000 lb" without its comma
 */
public record Amount(double volumeL, double massKg, double densityKgPerL, DensityFrom densityFrom, String entered) {
    /** Source of the density that converts weight and volume. */
    public enum DensityFrom {
        /** The ticket's own. */
        TICKET("the density on the ticket"),
        /** The product's in the rig file. */
        PRODUCT("the product's density in the rig file"),
        /** No conversion: volume and weight were both entered, or one is unknown. */
        NONE("no density");

        private final String words;

        DensityFrom(String words) {
            this.words = words;
        }

        /** Returns the source as words that follow "by", such as in "converted by ...". */
        public String words() {
            return words;
        }
    }
}
