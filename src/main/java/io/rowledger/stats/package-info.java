/**
 * Robust statistics, weighted moments, change points and the truncated normal. Distributions themselves are those of Commons
 * Statistics.
 *
 * <p>Worked by hand: the values 1, 2, 3, 4 and 100 have the median 3 and the absolute deviations 2, 1, 0, 1 and 97 from it, so
 * the MAD is 1, the robust σ 1.4826, and the modified z of 100 is 97/1.4826 = 65.4, an outlier beyond 3.5.
 *
 * <p>For other packages: {@link RobustStatistics}, {@link WeightedMoments}, {@link ChangePoints}, {@link MaxSumRange},
 * {@link TruncatedNormal}, {@link WeightedLine}.
 */
@NullMarked
package io.rowledger.stats;

import org.jspecify.annotations.NullMarked;
