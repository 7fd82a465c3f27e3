/**
 * The main job: logs, rig file and maps in, everything computed out.
 *
 * <p>{@link io.rowledger.analysis.Pipeline} runs the stages in order: read the log, rebuild the track, sum what each row put
 * out ({@link io.rowledger.analysis.FieldWork}), compute coverage, diagnose rows, estimate uncertainty. Each stage is a pure
 * function of its inputs; with a corrected rig file the first stages run again and nothing else.
 *
 * <p>For other packages: {@link Analysis}, {@link CorrectedRun}, {@link FieldParts}, {@link InputFile}, {@link JobClock}, {@link JobFiles}, {@link LogDates}, {@link Pipeline},
 * {@link Progress}, {@link RowCheck}, {@link SetupReview}.
 */
@NullMarked
package io.rowledger.analysis;

import org.jspecify.annotations.NullMarked;
