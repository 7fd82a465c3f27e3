/** The row diagnosis: for the dealer, which row, since when, hose or meter, and what to check. */
@NullMarked
package io.rowledger.report.rows;

import org.jspecify.annotations.NullMarked;
