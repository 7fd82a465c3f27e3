package io.rowledger.rig;

/**
 * Nitrogen credit of the plan: from soybeans, manure of earlier years, irrigation water.
 *
 * @param what where it comes from, as entered
 * @param nitrogenKgPerM2 kg/m²
 * @param entered the figure as entered
 */
public record Credit(String what, double nitrogenKgPerM2, String entered) {}
