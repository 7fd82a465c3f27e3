/**
 * A picture of the ground, from an aerial photograph with a place on the earth to a small one, north up in the job's plane.
 *
 * <p>A georeference is an affine map from the picture's columns and rows, counted from the upper left corner of the upper left
 * pixel, to coordinates x = a·col + b·row + c, y = d·col + e·row + f of a known coordinate system. A world file gives the six
 * numbers for pixel centers; a GeoTIFF (OGC 19-008) gives them as a matrix, or as a pixel size and one tie point.
 *
 * <p>By hand: a world file with the lines 0.5, 0, 0, −0.5, 500000.25, 4600000.25 puts the upper left corner of the picture at
 * x = 500000.25 − 0.5/2 = 500000 and y = 4600000.25 + 0.5/2 = 4600000.5; the corner 10 columns right and 4 rows down lies at
 * 500005 and 4599998.5.
 *
 * <p>For other packages: {@link Backdrop}, {@link BackdropReader}.
 */
@NullMarked
package io.rowledger.backdrop;

import org.jspecify.annotations.NullMarked;
