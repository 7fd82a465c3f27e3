/** Saved results in and out: the JSON files of a job, a season, a batch and a comparison. */
@NullMarked
package io.rowledger.results;

import org.jspecify.annotations.NullMarked;
