package io.rowledger.rig;

/**
 * Nitrogen the plan counts on though nobody spread it: from soybeans, manure of earlier years, irrigation water.
 *
 * @param what where it comes from, as entered
 * @param nitrogenKgPerM2 kg/m²
 * @param entered the figure as entered
 */
public record Credit(String what, double nitrogenKgPerM2, String entered) {}
