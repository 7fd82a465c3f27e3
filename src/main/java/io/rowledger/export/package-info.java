/** Files for other programs: CSV tables, GeoPackage, GeoTIFF, GPX, GeoJSON layers. */
@NullMarked
package io.rowledger.export;

import org.jspecify.annotations.NullMarked;
