/** Visits, skips, overlaps and the received-rate grid. */
@NullMarked
package io.rowledger.coverage;

import org.jspecify.annotations.NullMarked;
