/**
 * The maps of a field as handed in, in the job's plane: boundary, prescription, places to keep away from.
 *
 * <p>For other packages: {@link Boundary}, {@link BoundaryReader}, {@link MapGeometry}, {@link Prescription}, {@link PrescriptionReader},
 * {@link KeepOut}, {@link KeepOuts}, {@link KeepOutReader}.
 */
@NullMarked
package io.rowledger.field;

import org.jspecify.annotations.NullMarked;
