/**
 * Charts as vectors: painters that draw on a {@link io.rowledger.document.chart.Canvas} in points (1/72 inch) and know nothing
 * of PDF. Text is measured by the canvas, so the fonts of the machine play no part.
 *
 * <p>Axes have round steps: 1, 2 or 5 times a power of ten. By hand: a span of 27 with about 5 marks wants a step of 5.4,
 * rounded up to 10.
 *
 * <p>For other packages: {@link Axis}, {@link Canvas}, {@link Chart}, {@link Labels}, {@link Outline},
 * {@link Palette}, {@link Scale}, {@link XyChart}.
 */
@NullMarked
package io.rowledger.document.chart;

import org.jspecify.annotations.NullMarked;
