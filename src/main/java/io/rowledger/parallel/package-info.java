/** Splits work over threads so that the result is the same bytes for any number of them. */
@NullMarked
package io.rowledger.parallel;

import org.jspecify.annotations.NullMarked;
