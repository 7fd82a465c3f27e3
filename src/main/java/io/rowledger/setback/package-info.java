/** What was applied within setbacks. */
@NullMarked
package io.rowledger.setback;

import org.jspecify.annotations.NullMarked;
