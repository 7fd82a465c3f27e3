package io.rowledger.rate;

/**
 * Masses of the four nutrients a fertiliser's analysis names, kg; NaN where one isn't known.
 *
 * @param nitrogenKg N
 * @param phosphateKg P₂O₅
 * @param potashKg K₂O
 * @param sulfurKg S
 */
public record NutrientKg(double nitrogenKg, double phosphateKg, double potashKg, double sulfurKg) {
    /** Nothing of any of them. */
    public static final NutrientKg NONE = new NutrientKg(0, 0, 0, 0);

    /** Both together; a nutrient that one of the two doesn't know stays unknown. */
    public NutrientKg plus(NutrientKg other) {
        return new NutrientKg(
                nitrogenKg + other.nitrogenKg,
                phosphateKg + other.phosphateKg,
                potashKg + other.potashKg,
                sulfurKg + other.sulfurKg);
    }
}
