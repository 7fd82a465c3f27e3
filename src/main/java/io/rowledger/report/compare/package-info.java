/**
 * The comparison of two jobs of one bar, before and after a repair: which findings are gone, remain, are new or could not be
 * tested, and how each row did in both.
 *
 * <p>A finding of the earlier job is gone only if its rows were evaluated for 2 min or more in the later one. A row is off if
 * its median deviation is beyond the watch limit, or if it was beyond the act limit for more than 5 % of its evaluated time.
 * By hand: a row at 0 for 120 of 240 evaluated bins has a median of −50 % and is off; at 0 % in the later job it is repaired.
 * {@code ComparisonPdfTest} asserts it.
 *
 * <p>For other packages: {@link ComparisonReport}, {@link Comparison}, {@link Matching}, {@link RowVerdict}.
 */
@NullMarked
package io.rowledger.report.compare;

import org.jspecify.annotations.NullMarked;
