/**
 * Charts and maps as vectors: painters that draw on a {@link io.rowledger.document.chart.Canvas} in points and know
 * nothing of PDF. Text is measured by the canvas, so no font of the machine is ever asked.
 */
@NullMarked
package io.rowledger.document.chart;

import org.jspecify.annotations.NullMarked;
