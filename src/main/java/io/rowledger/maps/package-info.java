/**
 * Map files as features that know nothing of their format. The way in is {@link io.rowledger.maps.MapReader#read}, which
 * looks at what a file holds and not at what it is called.
 *
 * <p>All positions are longitude λ and latitude φ in degrees on WGS 84. What a file has in a projection is taken back to
 * degrees on the file's own ellipsoid; a datum within two metres of WGS 84 is taken as WGS 84 and said so, any other is
 * refused ({@link io.rowledger.maps.ReferenceSystem}).
 *
 * <p>By hand, the spherical Mercator of web maps, R = 6,378,137 m: λ = x/R, φ = atan(sinh(y/R)). x = 111,319.4908 m is
 * λ = 0.01745329252 rad = 1 degree; y = 111,325.1429 m is y/R = 0.0174541786, sinh of it 0.0174550648, φ = 0.0174532925
 * rad = 1 degree. ({@code ReferenceSystemTest} asserts it.)
 */
@NullMarked
package io.rowledger.maps;

import org.jspecify.annotations.NullMarked;
