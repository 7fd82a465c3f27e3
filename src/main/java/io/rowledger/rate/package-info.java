/** Volume, target, rate, turn error and nitrogen. */
@NullMarked
package io.rowledger.rate;

import org.jspecify.annotations.NullMarked;
