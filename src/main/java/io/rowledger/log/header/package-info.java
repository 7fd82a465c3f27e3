/**
 * Headers to quantities: recognizes names and units, applies the rig file's {@code columns:}, and refuses what is
 * missing or ambiguous.
 *
 * <p>For other packages: {@link ColumnName}, {@link ColumnPlan}, {@link CommentedHeader}, {@link DecimalMark},
 * {@link FormatUnits}, {@link Headers}, {@link LogHints}, {@link LogOptions}, {@link LogPreview}, {@link LogQuantity},
 * {@link LongFormatLines}, {@link NonDataLines}, {@link Role}.
 */
@NullMarked
package io.rowledger.log.header;

import org.jspecify.annotations.NullMarked;
