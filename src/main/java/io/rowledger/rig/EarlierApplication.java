package io.rowledger.rig;

/**
 * Nutrients that the field had before this job, taken as spread evenly over it.
 *
 * @param date its date as entered
 * @param what what it was, as entered
 * @param nitrogenKgPerM2 N, kg/m²; NaN where what was entered does not tell, as the next three
 * @param phosphateKgPerM2 P₂O₅, kg/m²
 * @param potashKgPerM2 K₂O, kg/m²
 * @param sulfurKgPerM2 S, kg/m²
 * @param entered the figures as entered, such as "10 gal/ac at 11.65 lb/gal, 10-34-0"
 */
public record EarlierApplication(
        String date,
        String what,
        double nitrogenKgPerM2,
        double phosphateKgPerM2,
        double potashKgPerM2,
        double sulfurKgPerM2,
        String entered) {}
