/**
 * The pass review: for the applicator, what was off, where, and by how much. {@link PassReviewReport} is its entry; the words are
 * those of the bundle {@code review}.
 *
 * <p>For other packages: {@link PassReview}, {@link PassReviewReport}, {@link WhatIfFigures}.
 */
@NullMarked
package io.rowledger.report.review;

import org.jspecify.annotations.NullMarked;
