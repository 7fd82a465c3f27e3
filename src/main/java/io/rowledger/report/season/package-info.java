/**
 * The nitrogen ledger of a season and the summary of a batch: sums over the results of many jobs.
 *
 * <p>Each log is counted once, however often it was reported. Masses and areas add up over jobs; so do their bounds, because
 * jobs share most of the error. The rate of a field is (N of its jobs + earlier applications + credits) ÷ its area, where the
 * area is the covered area of its one job, or the boundary that several jobs have in common.
 *
 * <p>By hand: jobs of 140 kg and 30 kg N on a field whose boundary holds 20,010 m²: 170 kg ÷ 2.001 ha = 85.0 kg/ha.
 * {@code SeasonBuilderTest} asserts it.
 *
 * <p>{@code RowSeason} follows each row of a bar over its jobs: the slope of its ratio to the other rows over the working hours, by
 * {@link io.rowledger.stats.WeightedLine}. By hand: ratios 1.00, 0.98, 0.97 and 0.95 at hours 1 to 4, each good to 0.5 %, fall by
 * 4.8 ± 1.1 %. {@code RowSeasonTest} asserts it.
 *
 * <p>For other packages: {@link SeasonReport}, {@link SeasonLedger}, {@link SeasonBuilder}, {@link Season},
 * {@link SeasonField}, {@link SeasonJob}, {@link BarSeason}, {@link RowSeason}, {@link BatchReport}, {@link BatchSummary}, {@link BatchOutcome},
 * {@link BatchFigures}, {@link JobFinding}, {@link ColumnUnits}.
 */
@NullMarked
package io.rowledger.report.season;

import org.jspecify.annotations.NullMarked;
