/** Maps and pictures of ground, rows and time that several documents print. */
@NullMarked
package io.rowledger.report.map;

import org.jspecify.annotations.NullMarked;
