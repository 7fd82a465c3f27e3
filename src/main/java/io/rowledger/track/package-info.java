/**
 * From the antenna's path to poses of tractor and bar: smoothing, towing, passes.
 *
 * <p>The antenna's path is smoothed two-sidedly ({@code PathSmoother}) and divided into steps of at most 0.5 m. Then, with
 * headings in rad clockwise from north, f(ψ) = (sin ψ, cos ψ),
 * r(ψ) = (cos ψ, −sin ψ) and lengths in m:
 * <pre>
 * drag law       tan(δ₁/2) = tan(δ₀/2)·exp(−s/A),  δ = θ − φ   body towed at distance A by a move s in direction φ
 * tractor        ψ by the drag law with A = antenna ahead of the axle, the antenna's move
 * hitch pin      antenna − (ahead + axle to hitch)·f(ψ) − right·r(ψ)
 * bar            pull-type: θ by the drag law with A = hitch to wheels, the hitch pin's move; mounted: θ = ψ
 * drop line      hitch pin − B·f(θ) + c·r(θ)                    B hitch to drop, c the bar's side offset
 * </pre>
 * exact for straight moves, valid forward; while backing the bar's angle is held, and steps are unsettled until the hitch
 * pin has moved 3·A forward. A step is working if the bar is lowered and the drop line moves forward.
 *
 * <p>Worked by hand: antenna 2 m ahead of the axle, pin 1 m behind it, wheels 4 m and drop line 6 m behind the pin; all in
 * line at heading 60°, antenna at (0, 0), pin at −3·f(60°) = (−2.598076, −1.5). The antenna moves 2 m north:
 * tan(ψ/2) = tan 30°·exp(−2/2) = 0.57735·0.367879 = 0.212395, so ψ = 23.982318°, and the pin goes to
 * (0, 2) − 3·(0.406455, 0.913671) = (−1.219364, −0.741013), a move of (1.378712, 0.758987): s = 1.573820 m in direction
 * 61.167019°. The bar stands 60° − 61.167019° = −1.167019° to that; exp(−1.573820/4) = 0.674722 leaves −0.787428°, so
 * θ = 60.379591°. The drop line's center is (−1.219364, −0.741013) − 6·(0.869319, 0.494252) = (−6.435278, −3.706522) and
 * the point 1.524 m right of it (−6.435278 + 1.524·0.494252, −3.706522 − 1.524·0.869319) = (−5.682038, −5.031364).
 * ({@code TrackWorkedExampleTest} asserts it.)
 *
 * <p>For other packages: {@link Pass}, {@link PathBreak}, {@link Poses}, {@link Track}, {@link TrackBuilder},
 * {@link TrackOptions}, {@link TrackQuality}.
 */
@NullMarked
package io.rowledger.track;

import org.jspecify.annotations.NullMarked;
