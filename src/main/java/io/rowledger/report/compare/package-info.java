/** The comparison of two jobs: what is gone, what remains, what is new, what was not tested. */
@NullMarked
package io.rowledger.report.compare;

import org.jspecify.annotations.NullMarked;
