package io.rowledger.rig;

/**
 * One liquid with its own meters.
 *
 * @param key the key of the rig file, which prefixes its columns in the log
 * @param name what the records print
 * @param densityKgPerL density, kg/L; NaN where the rig file gives none (then nitrogen is unknown)
 * @param nitrogenFraction mass fraction of N, 0 to 1; this and the next three are NaN where the rig file has no
 *     analysis
 * @param phosphateFraction mass fraction of P₂O₅, 0 to 1
 * @param potashFraction mass fraction of K₂O, 0 to 1
 * @param sulfurFraction mass fraction of S, 0 to 1
 * @param targetLPerM2 target rate where log and prescription have none, L/m²; NaN for none
 * @param flowLagS how much later the meter shows what left the outlet, s
 * @param meterAccuracy limits of a meter's error as a fraction of its reading; NaN where the rig file gives none
 * @param densityAccuracy limits of the density's error as a fraction of it; NaN where the rig file gives none
 * @param densityAtC temperature the density is for, °C, for the record only: density is never corrected; NaN for none
 */
public record Product(
        String key,
        String name,
        double densityKgPerL,
        double nitrogenFraction,
        double phosphateFraction,
        double potashFraction,
        double sulfurFraction,
        double targetLPerM2,
        double flowLagS,
        double meterAccuracy,
        double densityAccuracy,
        double densityAtC) {
    /** A product without accuracies and without a temperature of its density. */
    public Product(
            String key,
            String name,
            double densityKgPerL,
            double nitrogenFraction,
            double phosphateFraction,
            double potashFraction,
            double sulfurFraction,
            double targetLPerM2,
            double flowLagS) {
        this(
                key,
                name,
                densityKgPerL,
                nitrogenFraction,
                phosphateFraction,
                potashFraction,
                sulfurFraction,
                targetLPerM2,
                flowLagS,
                Double.NaN,
                Double.NaN,
                Double.NaN);
    }

    /** Nitrogen in a liter, kg/L; NaN where the density is unknown. */
    public double nitrogenKgPerL() {
        return densityKgPerL * nitrogenFraction;
    }

    /** Nitrogen put down by a rate (L/m²), kg/m²: volume × density × N fraction; NaN where the density is unknown. */
    public double nitrogenKgPerM2(double rateLPerM2) {
        return rateLPerM2 * nitrogenKgPerL();
    }
}
