/** The antenna path to poses: smoothing, towing, passes. */
@NullMarked
package io.rowledger.track;

import org.jspecify.annotations.NullMarked;
