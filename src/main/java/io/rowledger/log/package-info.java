/** CSV logs to {@link io.rowledger.log.LogTable}: columns, units, cleaning. */
@NullMarked
package io.rowledger.log;

import org.jspecify.annotations.NullMarked;
