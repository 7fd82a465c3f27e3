/**
 * What a call writes, whole or not at all: the files of a job, a season or a comparison as a folder that is replaced by
 * renaming ({@link io.rowledger.output.Reports}), the summary of a batch as a set of files beside the folders of its fields
 * ({@link io.rowledger.output.Outputs}).
 *
 * <p>For other packages: {@link Batches}, {@link CheckPages}, {@link Comparisons}, {@link NewFiles}, {@link Outputs},
 * {@link Reports}, {@link Seasons}.
 */
@NullMarked
package io.rowledger.output;

import org.jspecify.annotations.NullMarked;
