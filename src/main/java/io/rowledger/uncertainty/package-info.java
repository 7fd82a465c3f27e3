/**
 * Uncertainty of areas, volumes, rates and nitrogen: a 90 % interval for each figure that a report prints.
 *
 * <p>Three kinds of uncertainty add up as in JCGM 100:2008, "Guide to the expression of uncertainty in measurement" (GUM):
 *
 * <pre>
 * meters     limits ±a of a meter's error, taken as rectangular: u = a/√3 (GUM 4.3.7); half of that variance is an error
 *            all meters of the bar share, half is each meter's own, so over n rows of equal volume
 *            u² = a²/3 · (½ + ½/n)                                     (GUM 5.1.2, 5.2.2)
 * rounding   a reading stands for any flow within half a step; rows at the same flow are off alike: q/√12 each and together,
 *            less what changes of speed average out
 * setup      every measured length and every knife's place is off by up to ±t: a row between two knives has a width
 *            (xᵢ₊₁ − xᵢ₋₁)/2 with u = t/√6, the whole bar x_n − x₁ with u = t·√(2/3)
 * sampling   passes and rows start and stop somewhere within a record: ± half a record, u = interval/√12 per edge
 * position   a drift between passes that record-to-record noise does not show, and what the smoother leaves of the noise
 * </pre>
 *
 * <p>Volumes, swept areas and rates are propagated; covered, overlap and skip area come from a Monte Carlo simulation with
 * perturbed tracks, because noise biases them. A meter that the diagnosis puts in question, or a flow that the log does not
 * tell, moves the ends of the interval of everything that rests on it apart: to what the other rows gave, band for band. Held
 * against ground, that liquid and the ground it may lie on go together.
 *
 * <p>By hand: twelve meters of 2 %, equal volumes: u = 2 %/√3 · √(½ + ½/12) = 1.1547 % · 0.7360 = 0.8498 %; one meter
 * alone 1.1547 %. A bar of twelve 0.762 m rows measured to 0.0254 m: u = 0.0254·√(2/3) = 0.02074 m of 9.144 m, 0.2268 %; one
 * row 0.0254/√6 = 0.01037 m of 0.762 m, 1.361 %. ({@code IntervalsByHandTest} asserts it.)
 *
 * <p>For other packages: {@link io.rowledger.uncertainty.AreaIntervals},
 * {@link io.rowledger.uncertainty.IntervalsBuilder}, {@link io.rowledger.uncertainty.UncertaintyInputs},
 * {@link io.rowledger.uncertainty.MeterFault}, {@link io.rowledger.uncertainty.Intervals},
 * {@link io.rowledger.uncertainty.Interval}, {@link io.rowledger.uncertainty.UncertaintyBudget}.
 */
@NullMarked
package io.rowledger.uncertainty;

import org.jspecify.annotations.NullMarked;
