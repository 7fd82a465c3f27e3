/** Delivering runs of outlets cut into strips of ground and visits. */
@NullMarked
package io.rowledger.coverage.strips;

import org.jspecify.annotations.NullMarked;
