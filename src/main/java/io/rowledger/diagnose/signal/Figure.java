package io.rowledger.diagnose.signal;

/**
 * A figure of a finding that needs a unit to be read, for a report to print in the reader's units.
 *
 * @param name what it is, such as "limit begins at this speed"
 * @param value in SI
 * @param unit {@code m/s}, {@code m}, {@code s} or {@code 1} (a fraction)
 */
public record Figure(String name, double value, String unit) {}
