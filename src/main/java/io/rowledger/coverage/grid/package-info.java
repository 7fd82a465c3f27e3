/**
 * The received rate by grid cell: each strip's volume distributed by its exact area in each cell.
 *
 * <pre>
 * volume(cell) = Σ volume(strip) · |strip ∩ cell| ÷ |strip|
 * target(cell) = target · covered area of the cell
 * </pre>
 *
 * <p>Worked by hand: a strip from 0.25 m to 1.25 m east and 0 m to 2 m north with 0.04 L, cells of 0.5 m. A cell of the
 * first column holds 0.25 m · 0.5 m = 0.125 m² of 2 m², 1/16 of the volume, 0.0025 L; a cell of the second column holds
 * 0.25 m², 0.005 L.
 * ({@code ReceivedGridTest} asserts it.)
 *
 * <p>For other packages: {@link AreaGridBuilder}, {@link ReceivedGrid}, {@link ReceivedGridBuilder}, {@link ReceivedStatistics},
 * {@link ReceivedStatisticsBuilder}, {@link AreaAccumulator}, {@link GroundDeposit}, {@link StripDeposit}.
 */
@NullMarked
package io.rowledger.coverage.grid;

import org.jspecify.annotations.NullMarked;
