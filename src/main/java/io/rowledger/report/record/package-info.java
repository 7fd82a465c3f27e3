/** The nitrogen record: for the landlord or farm manager, what was applied and what is not known. */
@NullMarked
package io.rowledger.report.record;

import org.jspecify.annotations.NullMarked;
