/** The rig file to {@link io.rowledger.rig.Rig}: bands, products, job. */
@NullMarked
package io.rowledger.rig;

import org.jspecify.annotations.NullMarked;
