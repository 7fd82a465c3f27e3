/** The command line: options, progress, exit codes. The only package that prints, reads the clock or exits. */
@NullMarked
package io.rowledger.cli;

import org.jspecify.annotations.NullMarked;
