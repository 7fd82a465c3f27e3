package io.rowledger.log.source;

/**
 * One line of a log, split into fields.
 *
 * @param fields its fields, not copied
 * @param number line number in the file, from 1; the last one for a record that spans several lines
 */
@SuppressWarnings("ArrayRecordComponent") // Passed on once, never compared or stored.
public record Line(String[] fields, int number) {}
