/**
 * Files to lines: unpacking, digests, the delimiter of a CSV file, numbers as text.
 *
 * <p>For other packages: {@link Line}, {@link Lines}, {@link CsvLines}, {@link CsvShape}, {@link CsvText}, {@link GroupedNumbers}, {@link OtherForms}, {@link LogFile},
 * {@link LoggedPolygons}, {@link LogSource}, {@link NumberParser}.
 */
@NullMarked
package io.rowledger.log.source;

import org.jspecify.annotations.NullMarked;
