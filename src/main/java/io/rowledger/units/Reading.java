package io.rowledger.units;

/** What came of reading a figure: the {@link Quantity}, or a {@link Refusal} in words for the person who wrote it. */
public sealed interface Reading permits Quantity, Refusal {}
