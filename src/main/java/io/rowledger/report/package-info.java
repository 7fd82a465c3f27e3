/** What the reports say, rounded and labelled. */
@NullMarked
package io.rowledger.report;

import org.jspecify.annotations.NullMarked;
