/**
 * What the reports say, rounded and labelled; drawn by {@code report.chart}, printed by {@code report.pdf}, written by
 * {@code report.file}.
 *
 * <p>Nothing is measured here. Figures of the whole job are sums over sums: mean rate = Σ volume ÷ covered area,
 * deviation = Σ volume ÷ Σ (target × swept area) − 1, turn error of the bar = Σ (row's mean × row's swept area) ÷ Σ swept
 * area, nitrogen = Σ volume × density × N fraction.
 *
 * <p>By hand: ten rows sweep 2,000 m² each at a target of 400 L/ha, 80 L a row. One puts out 40 L, one 84.8 L, eight 80 L:
 * 764.8 L of 800 L, 4.4 % under; the row with 40 L is 50 % under. At 1.325 kg/L and 32 % N that is 324.3 kg N.
 * {@code PassReviewTest} asserts it.
 *
 * <p>A row over a job: the median of its deviations from its siblings and the share of its judged time beyond 10 %. Row 7
 * above runs at 1 for 120 bins of 5 s and at 0 for 120: median −50 %, half of its 1,200 s beyond 10 %.
 * {@code RowDiagnosisTest} asserts it.
 */
@NullMarked
package io.rowledger.report.common;

import org.jspecify.annotations.NullMarked;
