/** What was handed in of the field: boundary, prescription, places to keep away from. */
@NullMarked
package io.rowledger.field;

import org.jspecify.annotations.NullMarked;
