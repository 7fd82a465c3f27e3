/**
 * A season's worth of jobs: what of a folder is a job ({@link io.rowledger.batch.BatchFolder}), what of it was done before
 * ({@link io.rowledger.batch.BatchPlan}), and the doing of the rest, some at a time, so that a stop at any moment loses
 * nothing ({@link io.rowledger.batch.Batch}, {@link io.rowledger.batch.BatchStore}).
 *
 * <p>The rule of what is a job, by hand: {@code season/rig.yaml}, {@code season/north/a.csv}, {@code season/north/b.csv},
 * {@code season/north/boundary.kml} and {@code season/hill/log.csv} are two jobs: "hill" of one log without a boundary, and
 * "north" of two logs as one job with its boundary; both by the rig file above them.
 *
 * <p>For other packages: {@link Batch}, {@link BatchOptions}, {@link BatchRun}, {@link FieldFiles}, {@link JobGrouping}, {@link Shard}.
 */
@NullMarked
package io.rowledger.batch;

import org.jspecify.annotations.NullMarked;
