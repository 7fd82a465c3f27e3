package io.rowledger.rate;

/**
 * Masses of the four nutrients a fertilizer analysis, kg; NaN if one is unknown.
 *
 * @param nitrogenKg N
 * @param phosphateKg P₂O₅
 * @param potashKg K₂O
 * @param sulfurKg S
 */
public record NutrientKg(double nitrogenKg, double phosphateKg, double potashKg, double sulfurKg) {
    /** Nothing of any of them. */
    public static final NutrientKg NONE = new NutrientKg(0, 0, 0, 0);

    /** Both together; a nutrient that is unknown in one of them stays unknown. */
    public NutrientKg plus(NutrientKg other) {
        return new NutrientKg(
                nitrogenKg + other.nitrogenKg,
                phosphateKg + other.phosphateKg,
                potashKg + other.potashKg,
                sulfurKg + other.sulfurKg);
    }
}
