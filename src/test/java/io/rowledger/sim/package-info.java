/**
 * The field simulator: an independent oracle that knows what every row truly did.
 *
 * <p>It drives a tractor over a planned field at steps of 20 ms or finer, pulls or carries a bar behind it, meters liquid
 * row by row, spoils all of it on demand, and writes what a logger would have written together with the truth. It imports
 * no class of the product, and it shares none of the product's formulas: the bar is integrated from its no-slip equation,
 * never from the tractrix; covered ground is counted on a 5 cm raster, never as polygons.
 *
 * <p>Frame: x east, y north, meters, about the site's origin (an azimuthal equidistant map made of WGS 84 geodesics, true
 * to a few micrometres a kilometer). Heading psi clockwise from north: forward f = (sin psi, cos psi), right r = (cos psi,
 * -sin psi); curvature and offsets are positive to the right.
 *
 * <p>Example: {@code Scenarios.straightDrawn(1).gnss(GnssModel.rtk(10)).run().writeTo(folder)}.
 */
package io.rowledger.sim;
