/**
 * A prescription compared with what was applied, zone by zone, and how late the rate changed at lines between zones.
 *
 * <pre>
 * planned   = prescribed rate · covered area of the zone
 * received  = Σ volume of the grid cells, those on a zone line by their exact area in the zone
 * lateness  = distance from the line to where the rate is halfway between its levels before and behind
 * </pre>
 *
 * <p>Worked by hand: a zone of 100 m × 50 m with a prescribed rate of 0.03 L/m², entered at 0.02 L/m², and a rate that
 * changes 4 m behind the line. Planned 5000 m² · 0.03 L/m² = 150 L; received 4 m · 100 m · 0.02 L/m² +
 * 46 m · 100 m · 0.03 L/m² = 146 L, a mean of 0.0292 L/m²; 46 m of 50 m, 92 %, are within 5 %; lateness 4 m, 2 s at 2 m/s.
 * ({@code ZonesByHandTest} asserts it.)
 *
 * <p>For other packages: {@link Zones}, {@link ZonesBuilder}, {@link ZoneChanges}.
 */
@NullMarked
package io.rowledger.zones;

import org.jspecify.annotations.NullMarked;
