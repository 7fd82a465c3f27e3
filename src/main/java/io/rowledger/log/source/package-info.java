/** Files to lines: unpacking, digests, the shape of a CSV file, numbers as text. */
@NullMarked
package io.rowledger.log.source;

import org.jspecify.annotations.NullMarked;
