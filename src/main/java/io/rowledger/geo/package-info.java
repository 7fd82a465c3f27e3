/**
 * The job's plane, headings, and polygon operations with JTS.
 *
 * <p>Conventions of the whole program: x (m) east, y (m) north; heading ψ (rad) clockwise from north, forward
 * f(ψ) = (sin ψ, cos ψ), right r(ψ) = (cos ψ, −sin ψ); lateral offsets (m) positive right. Latitude φ and longitude λ in
 * degrees on WGS 84, a = 6,378,137 m, 1/f = 298.257223563, e² = f·(2 − f).
 *
 * <p>The plane is transverse Mercator of scale 1, its origin at the middle of the job ({@link LocalPlane}). Near the
 * origin it is the ellipsoid's own radii: dy = M·dφ and dx = N·cos φ·dλ (dφ, dλ in rad) with
 * N = a/√(1 − e² sin² φ) and M = a(1 − e²)/(1 − e² sin² φ)^(3/2), m. At a distance x east of the origin's meridian a
 * length is too long by x²/(2·M·N) of itself: at 1 km by 1.229e-8, 0.012 m in 1000 km.
 *
 * <p>Worked by hand, origin 45° N 93° W: sin² 45° = 0.5, e² = 0.00669438, so 1 − e²/2 = 0.99665281,
 * N = 6,378,137 / √0.99665281 = 6,388,838.29 m and M = 6,388,838.29 · 0.99330562 / 0.99665281 = 6,367,381.82 m. The place
 * 0.0009° further north lies y = 6,367,381.82 · 0.0009 · π/180 = 100.019 m north; the place 0.0009° further east lies
 * x = 6,388,838.29 · 0.70710678 · 0.0009 · π/180 = 70.962 m east. From the one to the other the heading is
 * atan2(−70.962, 100.019) = −35.355°, that is 35.355° west of north. ({@code GeoWorkedExampleTest} asserts it.)
 *
 * <p>For other packages: {@link Heading}, {@link Jts}, {@link LocalPlane}, {@link Unions}, {@link WorkParts}.
 */
@NullMarked
package io.rowledger.geo;

import org.jspecify.annotations.NullMarked;
