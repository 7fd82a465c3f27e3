/**
 * Findings as reports print them: title, confidence, cost with its bounds, products; the picture of all rows over time, each row's
 * health, and what a job's results keep of its diagnosis.
 *
 * <p>A row over a job: the median of its deviations from the other rows, and the fraction of its evaluated time beyond 10 %. By hand:
 * row 7 runs at 1 for 120 bins of 5 s and at 0 for 120: median −50 %, half of its 1,200 s beyond 10 %.
 * {@code RowDiagnosisTest} asserts it.
 *
 * <p>For other packages: {@link FindingFacts}, {@link FindingMark}, {@link FindingProducts}, {@link FindingTitles},
 * {@link FindingUncertainties}, {@link FindingUncertainty}, {@link MeterLanes}, {@link RowHealth}, {@link RowPicture},
 * {@link RowPictureFigure}, {@link SavedDiagnosis}.
 */
@NullMarked
package io.rowledger.report.findings;

import org.jspecify.annotations.NullMarked;
