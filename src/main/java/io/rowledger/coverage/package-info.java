/**
 * Skips, overlaps and received rate of a job. Entry point is {@link io.rowledger.coverage.Coverages#of}.
 *
 * <p>A pass is divided into chunks along the path and into runs of neighboring rows across it; each becomes a polygon whose
 * vertices are poses that all rows share. With V the polygons of the delivering visits in time order:
 *
 * <pre>
 * covered  = ∪ Vᵢ
 * overlap  = ∪ (Vⱼ ∩ ∪ᵢ﹤ⱼ Vᵢ)          each place once; parts inside a pivot count as a whole
 * skip     = boundary − covered         without a boundary: enclosed gaps, and open ones below 1.5 row spacings
 * received = Σ volume · |strip ∩ cell| ÷ |strip|     per cell of the grid
 * </pre>
 *
 * <p>Worked by hand: a bar 6 m wide drives two passes of 100 m whose centers are 5 m apart. Covered 11 m × 100 m = 1100 m²,
 * overlap 1 m × 100 m = 100 m². At 0.02 L/m² each, 24 L lie on 1100 m²: a mean of 0.0218 L/m², and 100 m² received twice
 * the target. ({@code CoverageByHandTest} asserts it.)
 *
 * <p>For other packages: {@link AppliedArea}, {@link AreaCoverages}, {@link Coverage}, {@link CoverageDefect}, {@link CoverageOptions}, {@link Coverages},
 * {@link Slivers}.
 */
@NullMarked
package io.rowledger.coverage;

import org.jspecify.annotations.NullMarked;
