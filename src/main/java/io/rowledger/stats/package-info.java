/** Robust statistics, distributions and change points; knows nothing of farming. */
@NullMarked
package io.rowledger.stats;

import org.jspecify.annotations.NullMarked;
