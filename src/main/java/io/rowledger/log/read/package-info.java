/**
 * Records to columns: parses fields into numbers, states, times and positions; counts dropped records by reason.
 *
 * <p>Volumes become flows by q = (V₀ + V₁) / (dt₀ + dt₁), see {@link TotalizerFlow}. By hand: 1 L in the 1 s before a
 * record and 3 L in the 1 s after it are (1 + 3) / (1 + 1) = 2 L/s at the record.
 *
 * <p>For other packages: {@link ColumnMeaning}, {@link DropCount}, {@link DropReason}, {@link FieldFaults},
 * {@link FileLog}, {@link LogFileReader}, {@link LogGlance}, {@link LogSample}, {@link RawLog}, {@link RecordReader}, {@link TotalizerFlow}.
 */
@NullMarked
package io.rowledger.log.read;

import org.jspecify.annotations.NullMarked;
