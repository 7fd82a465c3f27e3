/**
 * The pipeline: from files to an {@link io.rowledger.report.Analysis}, readable on one screen. Prints nothing and exits
 * nowhere; what happens on the way goes to a {@link io.rowledger.run.Progress}.
 */
@NullMarked
package io.rowledger.run;

import org.jspecify.annotations.NullMarked;
