/** Corners and swept area per outlet and step. */
@NullMarked
package io.rowledger.strip;

import org.jspecify.annotations.NullMarked;
