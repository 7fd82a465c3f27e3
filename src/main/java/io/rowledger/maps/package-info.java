/**
 * Map files to features, whatever the format. {@link io.rowledger.maps.MapReader#read} goes by a file's content, not by
 * its name.
 *
 * <p>All positions are longitude λ and latitude φ in degrees on WGS 84. Projected coordinates are converted to degrees on
 * the file's own ellipsoid. A datum within two meters of WGS 84 counts as WGS 84, with a note; any other is refused
 * ({@link io.rowledger.maps.ReferenceSystem}).
 *
 * <p>By hand, the spherical Mercator of web maps, R = 6,378,137 m: λ = x/R, φ = atan(sinh(y/R)). x = 111,319.4908 m is
 * λ = 0.01745329252 rad = 1 degree; y = 111,325.1429 m is y/R = 0.0174541786, sinh of it 0.0174550648, φ = 0.0174532925
 * rad = 1 degree. ({@code ReferenceSystemTest} asserts it.)
 *
 * <p>For other packages: {@link MapReader}, {@link MapReference}, {@link MapUse}, {@link MapFeatures}, {@link MapFeature},
 * {@link MapShape}, {@link MapProperty}, {@link MapFormat}, {@link SqliteLibrary}, {@link XmlCharacters}.
 */
@NullMarked
package io.rowledger.maps;

import org.jspecify.annotations.NullMarked;
