/** The season's ledger and the summary of a batch. */
@NullMarked
package io.rowledger.report.season;

import org.jspecify.annotations.NullMarked;
