/**
 * The row diagnosis, for the dealer: which row, since when, hose or meter, and what to check.
 *
 * <p>Nothing is measured here; findings, pictures and baselines come from {@code diagnose}. What this package computes is how
 * much of the work could be evaluated ({@code EvaluatedTime}): Σ length of the evaluated bins of all rows ÷ Σ length of all
 * bins of all rows. By hand: 10 rows, 25 bins of 5 s a pass, of which 24 hold a deviation: 24 ÷ 25 = 96 %.
 * {@code RowDiagnosisTest} asserts it.
 *
 * <p>{@code JobTraces} holds the rows over the whole job: applied rate of a slice = Σ flow·Δt ÷ Σ swept area. {@code WorkClock}
 * is the time axis without turns. Both have an example worked by hand that their tests assert.
 *
 * <p>For other packages: {@link RowDiagnosisReport}, {@link RowDiagnosis}.
 */
@NullMarked
package io.rowledger.report.rows;

import org.jspecify.annotations.NullMarked;
