/**
 * What was applied within setbacks, and the closest approach to the places they belong to.
 *
 * <pre>
 * volume inside = Σ volume(strip) · |strip ∩ setback| ÷ |strip|
 * </pre>
 *
 * <p>Worked by hand: a bar that passes a well at 3 m with a setback of 4 m applies to the segment of a circle of 4 m at 3 m
 * from its center: 16 m² · acos(3/4) − 3 m · √7 m = 11.564 m² − 7.937 m² = 3.626 m².
 * ({@code SetbacksTest} asserts it.)
 *
 * <p>For other packages: {@link AreaSetbacks}, {@link Setback}, {@link Setbacks}.
 */
@NullMarked
package io.rowledger.setback;

import org.jspecify.annotations.NullMarked;
