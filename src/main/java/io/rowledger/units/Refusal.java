package io.rowledger.units;

/**
 * Why a text is not the figure asked for, in the parts of a message; whoever knows file and line adds them.
 *
 * @param found what was found
 * @param expected what was expected
 * @param hint how to mend it
 */
public record Refusal(String found, String expected, String hint) implements Reading {}
