package io.rowledger.log.source;

/**
 * One line of a log taken apart.
 *
 * @param fields its fields, not copied
 * @param number its number in the file, from 1; of a record over several lines the last
 */
@SuppressWarnings("ArrayRecordComponent") // Handed on, never compared or kept.
public record Line(String[] fields, int number) {}
