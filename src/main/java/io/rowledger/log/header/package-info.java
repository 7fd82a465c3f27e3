/**
 * Headers to quantities: recognizes names and units, applies the rig file's {@code columns:}, and refuses what is
 * missing or ambiguous.
 *
 * <p>For other packages: {@link BarLayout}, {@link ColumnName}, {@link ColumnPlan}, {@link ColumnPlanBuilder}, {@link CommentedHeader}, {@link DecimalMark},
 * {@link FormatUnits}, {@link Headers}, {@link LogHints}, {@link LogOptions}, {@link LogPreview}, {@link LogQuantity},
 * {@link LongFormatLines}, {@link NonDataLines}, {@link Questions}, {@link Role}, {@link RowMapping}.
 */
@NullMarked
package io.rowledger.log.header;

import org.jspecify.annotations.NullMarked;
