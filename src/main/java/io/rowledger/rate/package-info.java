/**
 * Volume, target, rate, turn error and nitrogen, per outlet and summed.
 *
 * <p>With the flow q (L/s) shifted by the product's lag, the step's time Δt (s), its swept area S (m²), the target τ
 * (L/m²), density ρ (kg/L) and N fraction n:
 * <pre>
 * volume V = Σ q·Δt (L)       target volume = Σ τ·S (L)       rate = ΣV / ΣS (L/m²)       nitrogen = ρ·n·ΣV (kg)
 * </pre>
 * always sums over sums. A row of band b (m) advances S/b (m) in a step, the bar ΣS/Σb; the turn error a row would see
 * with uniform flow is ε = (ΣS/Σb)/(S/b) − 1, the one that remained is (V/ℓ/S)/(Σ(V/ℓ)/ΣS) − 1 with the row's
 * own level ℓ on straight ground, both weighted by swept area. A flow that is blank, not a number or negative in the log is
 * unknown, never zero: it is in no sum, and the area swept meanwhile is counted apart.
 *
 * <p>Worked by hand: three rows of 2 m on a bar that turns clockwise on R = 10 m at 1 m/s, 20 steps of 0.05 s, 0.005 rad
 * each. The rows' middles run on 12, 10 and 8 m. A row's area in a step is 2 m · radius · sin 0.005, the bar's chords
 * being 0.9999958 of the arcs; over 20 steps 2.39999, 1.99999 and 1.59999 m². Flows of 0.0008 L/s for 10 s give each row
 * 0.008 L: rates 33.3335, 40.0002 and 50.0002 L/ha (1 L/m² is 10,000 L/ha). Turn errors 10/12 − 1 = −16.6667 %, 0 and
 * 10/8 − 1 = +25 %, and as the flows are uniform and no ground is straight all of it remains. All three together: 0.024 L on 5.99998 m²,
 * 40.0002 L/ha: the turn moves liquid sideways and leaves the mean alone. Of UAN 32-0-0 at 1.32528 kg/L, 0.42409 kg N per
 * liter, that is 16.9637 kg N/ha. With a target of 40 L/ha the rows deviate by −16.666 %, +0.0004 % and +25.001 %.
 *
 * <p>For other packages: {@link AreaRates}, {@link Delivery}, {@link DeliveryBuilder}, {@link DeviationLimits}, {@link NutrientKg},
 * {@link Nutrients}, {@link PrescribedRates}, {@link RateFormula}, {@link Rates}, {@link RatesBuilder}, {@link RowTotals},
 * {@link TurnShift}, {@link TurnShifts}, {@link VolumeBalance}.
 */
@NullMarked
package io.rowledger.rate;

import org.jspecify.annotations.NullMarked;
