/** Section control: rows shut off over covered ground, rightly or not. */
@NullMarked
package io.rowledger.coverage.sections;

import org.jspecify.annotations.NullMarked;
