/**
 * The words for what can be wrong: with the input, with a row, with the supply, with the setup.
 *
 * <p>For other packages: {@link Finding}, {@link FindingKind}, {@link RefusalKind}, {@link RegularFile}, {@link UnusableInputException}.
 */
@NullMarked
package io.rowledger.finding;

import org.jspecify.annotations.NullMarked;
