/** Files for machines: summary, tables, layers; and the one way everything gets written, whole or not at all. */
@NullMarked
package io.rowledger.output;

import org.jspecify.annotations.NullMarked;
