/**
 * Setup check: flow lag, drop offset, side offset and antenna as the log shows them, each with an interval, what it rests on and
 * the line of the rig file it would change. Nothing here changes a value of the user's.
 *
 * <p>Let b be the drop line's place in the rig file less its true place (m, back), s the bar's place less its true place (m,
 * right) and d = ±1 the direction of a pass along one axis. A pass end is rebuilt d·b too far back and a pass d·s too far right.
 * Against the line between its two neighbors of the other direction, an end is off by 2·b and a pass by 2·s; the shape of the
 * headland and the distance of the passes cancel out.
 *
 * <p>By hand: the rig file says 6.9 m from pin to drop, 5.9 m is true, so b = 1 m. Passes north start, and passes south stop, on
 * the line y = 0. Rebuilt, the starts lie at y = −1 m and the stops at y = +1 m: the mismatch is 2 m, half of it is b. A bar set
 * up 0.2 m too far right, passes 9 m apart: rebuilt gaps are 8.6 m and 9.4 m in turn, and a quarter of the difference is s.
 * ({@code SetupByHandTest} asserts it.)
 *
 * <p>A bar that is lowered and lifted t seconds late moves both ends of a pass by v·t along the direction of travel: b − v·t is
 * what a headland crossed at v shows. At one speed no log tells a habit from a length; at several it does, and only then is a
 * length contradicted. 1.4 s late at 2 m/s looks as a drop line 2.8 m too far forward does.
 *
 * <p>A flow that is logged L seconds late moves both edges of a pass by v·L. Against the work state or a row's command, which are
 * logged in time, it is L plus the valves' time.
 *
 * <p>For other packages: {@link SetupCheck}, {@link SetupChecks}, {@link SetupFindings}, {@link SetupMeasurement},
 * {@link SetupParameter}.
 */
@NullMarked
package io.rowledger.diagnose.setup;

import org.jspecify.annotations.NullMarked;
