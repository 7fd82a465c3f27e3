/**
 * Units: conversion factors with their sources, reading quantities with units, formatting values in US or metric units.
 *
 * <pre>
 * SI value = Σ number · factor of its unit            terms of a compound quantity add up
 * t/°C     = (t/°F − 32) / 1.8
 * </pre>
 *
 * <p>Worked by hand: {@code 19 ft 4 in} is 19 × 0.3048 m + 4 × 0.0254 m = 5.7912 m + 0.1016 m = 5.8928 m.
 * ({@code QuantityTest} asserts it.)
 *
 * <p>For other packages: {@link Dimension}, {@link Factor}, {@link Quantity}, {@link QuantityKind}, {@link Reading},
 * {@link Refusal}, {@link Unit}, {@link UnitFormat}, {@link UnitSystem}.
 */
@NullMarked
package io.rowledger.units;

import org.jspecify.annotations.NullMarked;
