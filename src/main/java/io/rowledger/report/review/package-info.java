/** The pass review: for the applicator, what was off, where, and by how much. */
@NullMarked
package io.rowledger.report.review;

import org.jspecify.annotations.NullMarked;
