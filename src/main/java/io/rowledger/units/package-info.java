/** Conversion factors with their sources, quantities as people write them, and formatting for people. */
@NullMarked
package io.rowledger.units;

import org.jspecify.annotations.NullMarked;
