/**
 * CSV logs, and task data ({@link io.rowledger.log.taskdata}), to {@link io.rowledger.log.LogTable}: columns, units,
 * cleaning.
 *
 * <p>The path of a file: {@link io.rowledger.log.LogReader} takes the paths, {@code LogFile} unpacks and digests,
 * {@code ColumnPlan} understands the header, {@code RecordReader} turns fields into figures, {@code Cleaner},
 * {@code FrozenFixes} and {@code Jumps} leave out what can't be, {@code PathAgreement} holds speed and course against the
 * path, {@code Joiner} puts files together by time.
 *
 * <p>Two records belong to one path if the machine could have driven from the first to the second: distance ≤ 16 m/s · Δt
 * + noise of the fix type. The largest set of records that belong together stays. By hand: 60 records a second apart,
 * 2 m from each other, the first of them thousands of kilometres off; it fits none of the 59 others, so it is the jump and
 * they stay.
 *
 * <p>Every record is used or counted: used + no fix + duplicate + out of order + jump + frozen + unreadable = records.
 */
@NullMarked
package io.rowledger.log;

import org.jspecify.annotations.NullMarked;
