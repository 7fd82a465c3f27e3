/**
 * Visits, skips, overlaps and the received-rate grid. The way in is {@link io.rowledger.coverage.Coverages#of}; a
 * boundary comes from {@link io.rowledger.field.BoundaryReader}.
 *
 * <p>A pass is cut into chunks along the way and into runs of neighbouring rows across it; each becomes a polygon whose
 * vertices are poses that all rows share. With V the polygons of the delivering visits in time order:
 *
 * <pre>
 * covered  = ∪ Vᵢ
 * overlap  = ∪ (Vⱼ ∩ ∪ᵢ﹤ⱼ Vᵢ)          each place once; parts inside a pivot count whole
 * missed   = boundary − covered         without a boundary: enclosed gaps, and open ones under 1.5 row spacings
 * received = Σ volume · |strip ∩ cell| ÷ |strip|     per cell of the grid
 * </pre>
 *
 * <p>By hand: a bar 6 m wide drives two passes of 100 m whose centres are 5 m apart. Covered 11 m × 100 m = 1100 m²,
 * overlap 1 m × 100 m = 100 m². At 0.02 L/m² each, 24 L lie on 1100 m²: a mean of 0.0218 L/m², and 100 m² got twice
 * the target. ({@code CoverageByHandTest} asserts it.)
 */
@NullMarked
package io.rowledger.coverage;

import org.jspecify.annotations.NullMarked;
