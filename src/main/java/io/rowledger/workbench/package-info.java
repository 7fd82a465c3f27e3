/**
 * The workbench: a local page over a season folder, for people who use no command line. A thin view: what it shows is computed
 * by the packages that the command line uses, and what it saves are the plain files that the command line reads.
 *
 * <p>For other packages: {@link Workbench}.
 */
@NullMarked
package io.rowledger.workbench;

import org.jspecify.annotations.NullMarked;
