/** The local plane, angles and quadrangle kernels, and the way to JTS and back. */
@NullMarked
package io.rowledger.geo;

import org.jspecify.annotations.NullMarked;
