/**
 * Cleaning of a log: removes records with impossible times or positions; checks speed, course, flow and work state.
 *
 * <p>Two records belong to one path if the machine could have driven from the first to the second: distance ≤ 16 m/s · Δt
 * + noise of the fix type. The largest set of records that belong together stays. By hand: 60 records 1 s and 2 m apart,
 * the first of them thousands of kilometers off; it fits none of the 59 others, so it is the jump and they stay.
 *
 * <p>Every record is used or counted: used + no fix + duplicate + out of order + jump + frozen + unreadable = records.
 *
 * <p>For other packages: {@link DuplicateLogs}, {@link FileChecks}, {@link LogCleaning}, {@link PositionOutliers},
 * {@link RateConversion}.
 */
@NullMarked
package io.rowledger.log.clean;

import org.jspecify.annotations.NullMarked;
