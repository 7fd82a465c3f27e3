package io.rowledger.units;

/**
 * Why a text could not be read as a quantity, as the parts of a message; the caller adds file and line.
 *
 * @param found what was found
 * @param expected what was expected
 * @param hint what to write instead
 */
public record Refusal(String found, String expected, String hint) implements Reading {}
