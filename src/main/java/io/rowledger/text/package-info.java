/**
 * Text for people before it has a language: a key and typed arguments. Every package may make one; only
 * {@code document.text} turns it into words.
 *
 * <p>For other packages: {@link Message}, {@link Argument}, {@link VisibleText}.
 */
@NullMarked
package io.rowledger.text;

import org.jspecify.annotations.NullMarked;
