package io.rowledger.diagnose.signal;

import io.rowledger.text.Message;

/**
 * A figure of a finding that needs a unit to be read, for a report to print in the reader's units.
 *
 * @param label what it is, such as "the limit begins at this speed"
 * @param value in SI
 * @param unit {@code m/s}, {@code m}, {@code s} or {@code 1} (a fraction)
 */
public record Figure(Message label, double value, String unit) {
    /** A figure whose label is the message of this key, which takes no values. */
    public static Figure of(String key, double value, String unit) {
        return new Figure(Message.of(key), value, unit);
    }
}
