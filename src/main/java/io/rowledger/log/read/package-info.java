/** Lines to columns: fields become numbers, states, times and places; what is dropped is counted by reason. */
@NullMarked
package io.rowledger.log.read;

import org.jspecify.annotations.NullMarked;
