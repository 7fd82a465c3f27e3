/**
 * Conversion factors with their sources, quantities as people write them, and the catalogue of units that headers and rig
 * files share.
 *
 * <p>A figure is its number times the factor of its unit; compound figures add up. By hand: {@code 19 ft 4 in} is
 * 19 × 0.3048 m + 4 × 0.0254 m = 5.7912 m + 0.1016 m = 5.8928 m.
 */
@NullMarked
package io.rowledger.units;

import org.jspecify.annotations.NullMarked;
