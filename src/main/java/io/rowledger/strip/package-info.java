/**
 * Corners and signed swept area per outlet and step.
 *
 * <p>Pose i has the drop line's center c (east, north, m) and the bar's heading θ (rad clockwise from north); a point y
 * (m, positive right) along the bar is c + y·r(θ), r(θ) = (cos θ, −sin θ). Step k between poses k and k + 1 and a band
 * [left, right] (m) make the quadrangle left₀, left₁, right₁, right₀; its signed area (m²) is half the cross product of
 * its diagonals,
 * <pre>S = ½·[(right₁ − left₀)ₑ·(left₁ − right₀)ₙ − (right₁ − left₀)ₙ·(left₁ − right₀)ₑ],</pre>
 * positive where the band goes forward, negative where a row inside the pivot goes backward.
 *
 * <p>Worked by hand: a bar at (0, 0) heading north moves to (0.5, 2) heading 30°, sin 30° = 0.5, cos 30° = 0.8660254. Its
 * band from −1 m to 2 m has left₀ = (−1, 0), right₀ = (2, 0), left₁ = (0.5 − 0.8660254, 2 + 0.5) = (−0.3660254, 2.5),
 * right₁ = (0.5 + 1.7320508, 2 − 1) = (2.2320508, 1). Diagonals right₁ − left₀ = (3.2320508, 1) and
 * left₁ − right₀ = (−2.3660254, 2.5); S = ½·(3.2320508·2.5 + 1·2.3660254) = ½·(8.0801270 + 2.3660254) = 5.2230762 m².
 * The band from 4 m to 5 m is inside the pivot: its corners (4, 0), (3.9641016, 0), (4.8301270, −0.5), (5, 0) give
 * S = ½·(0.8301270·0 − 0.5·1.0358984) = −0.2589746 m², backward. ({@code StripWorkedExampleTest} asserts it.)
 *
 * <p>For other packages: {@link Strips}.
 */
@NullMarked
package io.rowledger.strip;

import org.jspecify.annotations.NullMarked;
