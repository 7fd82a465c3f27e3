/** Times as logs write them to seconds since the Unix epoch. */
@NullMarked
package io.rowledger.log.time;

import org.jspecify.annotations.NullMarked;
