/**
 * What every report shares: readers, options, header, units in headings, limits, cautions, bounds in words, sums of a product over the
 * whole job. Values are rounded and labeled here; nothing is measured.
 *
 * <p>Values of the whole job are sums over sums: mean rate = Σ volume ÷ covered area, deviation = Σ volume ÷ Σ (target × worked
 * area) − 1, turn error of the bar = Σ (row's mean × row's worked area) ÷ Σ worked area, nitrogen = Σ volume × density × N
 * fraction.
 *
 * <p>By hand: ten rows work 2,000 m² each at a target of 400 L/ha, 80 L a row. One puts out 40 L, one 84.8 L, eight 80 L:
 * 764.8 L of 800 L, 4.4 % under; the row with 40 L is 50 % under. At 1.325 kg/L and 32 % N that is 324.3 kg N.
 * {@code PassReviewTest} asserts it.
 *
 * <p>For other packages: {@link Audience}, {@link Cautions}, {@link Fact}, {@link GeoLink}, {@link InputFileLine},
 * {@link IntervalPhrases}, {@link JobTimes}, {@link JobView}, {@link Limits}, {@link ProductSums}, {@link ReportHeader},
 * {@link ReportHeaders}, {@link ReportOptions}, {@link Warnings}.
 */
@NullMarked
package io.rowledger.report.common;

import org.jspecify.annotations.NullMarked;
