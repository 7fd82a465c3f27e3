package io.rowledger.rate;

/**
 * What turn compensation would have changed for one product: the liquid that went to the wrong rows in turns.
 *
 * <p>In a turn row r covers the share sᵣ = max(0, areaᵣ) ÷ Σ max(0, area) of the bar's ground, while equal flow gives it the
 * share uᵣ = bandᵣ ÷ Σ band of the bar's liquid. A machine that takes the share c of the turn out gives uᵣ + c·(sᵣ − uᵣ); what
 * is left to shift in a step with volume Q is Q·(1 − c)·(sᵣ − uᵣ). The sum over rows is 0: no liquid is saved.
 *
 * @param turningS time in turns the answer rests on, s
 * @param takenOut the share c the machine took out as its flows show, 0 to 1; NaN without turns
 * @param rowChangeL per outlet, what it would have given more (or less, negative), L
 * @param movedL liquid that would have gone to another row, L: half of the sum of all sizes, step by step
 * @param beyond5M2 ground that got more than 5 % too much or too little by the turning alone, m²
 * @param beyond10M2 the same for 10 %
 */
public record TurnShift(
        double turningS, double takenOut, double[] rowChangeL, double movedL, double beyond5M2, double beyond10M2) {
    /** True where the log has turns to tell by. */
    public boolean known() {
        return Double.isFinite(takenOut);
    }
}
