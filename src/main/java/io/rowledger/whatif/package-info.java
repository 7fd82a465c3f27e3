/** The same drive with other machinery or another speed. */
@NullMarked
package io.rowledger.whatif;

import org.jspecify.annotations.NullMarked;
