/**
 * Times as logs write them to seconds since the Unix epoch (UTC).
 *
 * <p>GPS time: utc = 315964800 + 604800·week + seconds − leap, with leap the number of leap seconds since 1980-01-06. By
 * hand: week 2000, second 0 is 315964800 + 1209600000 − 18 = 1525564782 s, 2018-05-05T23:59:42Z.
 *
 * <p>For other packages: {@link EpochRange}, {@link FileNameZone}, {@link WholeDays}, {@link IsoTimestamps}, {@link TimestampFormatDetector},
 * {@link TimestampReader}.
 */
@NullMarked
package io.rowledger.log.time;

import org.jspecify.annotations.NullMarked;
