/** The grid of received volume: exact shares of each strip in each cell. */
@NullMarked
package io.rowledger.coverage.grid;

import org.jspecify.annotations.NullMarked;
