/**
 * Parts that several documents print: header, answer, coverage, zones, setbacks, data quality, titles and costs of findings,
 * cautions. Values are rounded and labeled here; nothing is measured.
 *
 * <p>Values of the whole job are sums over sums: mean rate = Σ volume ÷ covered area, deviation = Σ volume ÷ Σ (target × worked
 * area) − 1, turn error of the bar = Σ (row's mean × row's worked area) ÷ Σ worked area, nitrogen = Σ volume × density × N
 * fraction.
 *
 * <p>By hand: ten rows work 2,000 m² each at a target of 400 L/ha, 80 L a row. One puts out 40 L, one 84.8 L, eight 80 L:
 * 764.8 L of 800 L, 4.4 % under; the row with 40 L is 50 % under. At 1.325 kg/L and 32 % N that is 324.3 kg N.
 * {@code PassReviewTest} asserts it.
 *
 * <p>A row over a job: the median of its deviations from the other rows, and the fraction of its evaluated time beyond 10 %. Row 7
 * above runs at 1 for 120 bins of 5 s and at 0 for 120: median −50 %, half of its 1,200 s beyond 10 %.
 * {@code RowDiagnosisTest} asserts it.
 *
 * <p>For other packages: {@link Audience}, {@link Cautions}, {@link CoveragePhrases}, {@link CoverageSection},
 * {@link CoverageSectionBuilder}, {@link DefectLine}, {@link DriveBack}, {@link Fact}, {@link FindingFacts}, {@link FindingMark},
 * {@link FindingProducts}, {@link FindingTitles}, {@link FindingUncertainties}, {@link FindingUncertainty}, {@link GeoLink},
 * {@link InputFileLine}, {@link IntervalPhrases}, {@link JobTimes}, {@link JobView}, {@link Limits}, {@link MeteredRows}, {@link MeterLanes}, {@link NextActions}, {@link PlaceEnds},
 * {@link ProductSums}, {@link QualitySection}, {@link QualitySectionBuilder}, {@link ReportHeader},
 * {@link ReportHeaders}, {@link ReportOptions}, {@link ReturnPlaces}, {@link ReviewSummary}, {@link RowHealth},
 * {@link RowPicture}, {@link RowPictureFigure}, {@link SavedDiagnosis}, {@link SetbackSection},
 * {@link ShutOffLine}, {@link Warnings}, {@link ZoneSection}, {@link ZoneSectionBuilder}.
 */
@NullMarked
package io.rowledger.report.common;

import org.jspecify.annotations.NullMarked;
