/**
 * The review page: the whole job in one file that opens from disk, with maps, rows and traces.
 *
 * <p>The file holds its data as JSON ({@link io.rowledger.page.PageData}) and as packed columns
 * ({@link io.rowledger.page.ColumnBlock}), the libraries and scripts of {@code io/rowledger/web}, and the same answer, picture
 * and tables as plain HTML for a browser without JavaScript.
 *
 * <p>By hand: the values 1.0, 1.5, 2.0 in steps of 0.5 are the whole numbers 2, 3, 4; as differences of order 2 they are 2, −1,
 * 0; folded and raised by one 5, 2, 1.
 *
 * <p>For other packages: {@link io.rowledger.page.ReviewPage}.
 */
@NullMarked
package io.rowledger.page;

import org.jspecify.annotations.NullMarked;
