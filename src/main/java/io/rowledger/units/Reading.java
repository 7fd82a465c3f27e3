package io.rowledger.units;

/** Result of reading a quantity: the {@link Quantity}, or a {@link Refusal}. */
public sealed interface Reading permits Quantity, Refusal {}
