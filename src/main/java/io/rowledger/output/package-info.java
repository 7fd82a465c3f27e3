/**
 * What a call writes, whole or not at all: the files of a job as a folder that is replaced by renaming
 * ({@link io.rowledger.output.Reports}), those of a season, a batch and a comparison file by file into a folder that may hold
 * others ({@link io.rowledger.output.Outputs}).
 *
 * <p>For other packages: {@link Batches}, {@link Comparisons}, {@link Outputs}, {@link Reports}, {@link Seasons}.
 */
@NullMarked
package io.rowledger.output;

import org.jspecify.annotations.NullMarked;
