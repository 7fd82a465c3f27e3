/**
 * Delivering runs of outlets as strip polygons and visits.
 *
 * <p>For other packages: {@link StripPolygon}, {@link Visit}, {@link VisitIndex}, {@link PassStrips}, {@link RowRuns},
 * {@link StripEdges}, {@link StripOutline}.
 */
@NullMarked
package io.rowledger.coverage.strips;

import org.jspecify.annotations.NullMarked;
