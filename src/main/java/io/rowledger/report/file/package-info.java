/** Files for machines: summary, tables, layers; and the one way everything gets written, whole or not at all. */
@NullMarked
package io.rowledger.report.file;

import org.jspecify.annotations.NullMarked;
