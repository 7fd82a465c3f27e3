package io.rowledger.rig;

/**
 * An amount of liquid that somebody ordered or weighed, as volume and as mass.
 *
 * @param volumeL volume, L; NaN where only a weight is known and no density
 * @param massKg mass, kg; NaN where only a volume is known and no density
 * @param densityKgPerL the density that turned one into the other, kg/L; NaN where nothing was turned
 * @param densityFrom whose density that was
 * @param entered the figures as entered, such as "12,000 lb" without its comma
 */
public record Amount(double volumeL, double massKg, double densityKgPerL, DensityFrom densityFrom, String entered) {
    /** Whose density turned a weight into a volume, or a volume into a weight. */
    public enum DensityFrom {
        /** The ticket's own. */
        TICKET("the density on the ticket"),
        /** The product's in the rig file. */
        PRODUCT("the product's density in the rig file"),
        /** None: volume and weight were both entered, or one of them is unknown. */
        NONE("no density");

        private final String words;

        DensityFrom(String words) {
            this.words = words;
        }

        /** In words that follow "by". */
        public String words() {
            return words;
        }
    }
}
