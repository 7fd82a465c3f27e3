/**
 * What the log says about the setup: flow lag, where the drop line is, how far the bar hangs aside, each with an interval,
 * what it rests on and the line of the rig file it would change. Nothing here changes a figure of the user's.
 *
 * <p>With b the drop line's place as set up less its true place (m, back), s the bar's place as set up less its true place
 * (m, right), and d = ±1 the direction of a pass seen along one axis, a pass end is rebuilt d·b too far back and a pass
 * d·s too far right. Held against the line between its two neighbours of the other direction, an end is off by 2·b and a
 * pass by 2·s; whatever shape the headland has, and however wide the passes lie apart, drops out.
 *
 * <p>Worked by hand: the rig file says 6.9 m from pin to drop where 5.9 m is true, so b = 1 m. Passes north start, and passes
 * south stop, on the line y = 0. Rebuilt, the starts lie at y = −1 m and the stops at y = +1 m: the mismatch is 2 m,
 * half of it is b. A bar set up 0.2 m too far right, passes 9 m apart: rebuilt gaps are 8.6 m and 9.4 m in turn, and a
 * quarter of the difference is s.
 *
 * <p>A flow that is logged L seconds late moves both edges of a pass by v·L the way it is driven: by more where it is driven
 * faster, which a wrong length is not. Against the work state or a row's command, which are logged in time, it is L plus
 * what valves take.
 */
@NullMarked
package io.rowledger.diagnose.setup;

import org.jspecify.annotations.NullMarked;
