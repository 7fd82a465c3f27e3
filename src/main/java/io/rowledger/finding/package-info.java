/** The words for what can be wrong: with the input, with a row, with the setup. */
@NullMarked
package io.rowledger.finding;

import org.jspecify.annotations.NullMarked;
