/**
 * The pipeline: from files to an {@link io.rowledger.analysis.Analysis}, readable on one screen. Prints nothing and exits
 * nowhere; what happens on the way goes to a {@link io.rowledger.analysis.Progress}.
 */
@NullMarked
package io.rowledger.analysis;

import org.jspecify.annotations.NullMarked;
