/** Records that can't be where or when they say are found and left out; speed, course and flow are held against the path. */
@NullMarked
package io.rowledger.log.clean;

import org.jspecify.annotations.NullMarked;
