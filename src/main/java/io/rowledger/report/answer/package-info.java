/**
 * The answer of a job and what follows from it: did every row put on its rate, what did the ground receive, what makes that uncertain,
 * what to do next and where to drive back to, in the order that takes the least driving. {@code FirstPageTest} works the figures out by
 * hand.
 *
 * <p>For other packages: {@link MeteredRows}, {@link NextActions}, {@link ReturnPlaces}, {@link ReviewSummary}.
 */
@NullMarked
package io.rowledger.report.answer;

import org.jspecify.annotations.NullMarked;
