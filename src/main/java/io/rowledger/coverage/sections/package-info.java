/**
 * Section control: rows shut off over covered ground, rows on over covered ground, and what other groupings of rows would
 * have changed.
 *
 * <pre>
 * right    off over ground that another visit covers
 * skip     off over ground that stays uncovered
 * overlap  on over ground that an earlier visit covers
 * </pre>
 *
 * <p>Worked by hand: a bar of 6 m crosses its own strip of 6 m at a right angle. With all rows on, the overlap is
 * 6 m × 6 m = 36 m², which section control row by row would have saved. ({@code WhatIfByHandTest} asserts it.)
 *
 * <p>For other packages: {@link Grouping}, {@link OffReasons}, {@link ShutOffCase}, {@link ShutOffCases}, {@link ShutOffCredit},
 * {@link ShutOffCreditFinder}, {@link ShutOffScore}, {@link ShutOffs}.
 */
@NullMarked
package io.rowledger.coverage.sections;

import org.jspecify.annotations.NullMarked;
