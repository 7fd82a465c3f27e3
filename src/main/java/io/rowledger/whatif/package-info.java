/**
 * What-if: the same drive with section control, turn compensation, a lower speed or rows on and off in time, against what
 * happened.
 *
 * <p>A supply that holds the target up to a speed v₁ would have held it everywhere at no more than v₁: on ground A (m²) that the
 * bar of width w (m) crossed faster, the gain is Σ(τ·A) − Σ(q·Δt) (L) and the extra time Σ(A/w)/v₁ − Σ Δt (s), with the target τ
 * (L/m²), the flow q (L/s) and the step's time Δt (s).
 *
 * <p>By hand: 1,000 m of a 10 m bar at 2.5 m/s, 400 s, with 5 % too little of 0.01 L/m²: at 2 m/s it would have got 5 L more
 * and taken 100 s more.
 *
 * <p>For other packages: {@link WhatIf}.
 */
@NullMarked
package io.rowledger.whatif;

import org.jspecify.annotations.NullMarked;
