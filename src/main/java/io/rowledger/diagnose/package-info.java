/**
 * Which row is faulty, since when, how sure, and what else it could be: one detector, one kind of finding, one test.
 *
 * <p>Every row is held against its other rows in the same instant and against its own past, because speed and target move
 * all rows together. With the flow q of a row (L/s), its band b (m), the bar's speed v and curvature κ (1/m, clockwise
 * positive), its place y (m right of center) and the share c of the turn the machine takes out (1 with turn compensation,
 * 0 without), a row's flux is
 * <pre>
 * x = q / (b·(1 − c·κ·y))        ratio = x / median of the other rows' x
 * </pre>
 * and a healthy row has a ratio of 1, whatever speed and target do.
 *
 * <p>Worked by hand: five rows of 0.75 m give 0.030, 0.031, 0.015, 0.029 and 0.030 L/s straight ahead. Fluxes are
 * 0.0400, 0.0413, 0.0200, 0.0387 and 0.0400 L/s a meter, their median 0.0400, the ratios 1, 1.033, 0.5, 0.967 and 1: the
 * third row gives half. The deviations from the median ratio 1 are 0, 0.033, 0.5, 0.033 and 0, their median 0.033, so
 * the modified z of the third row is 0.6745 · (0.5 − 1) / 0.0333 = −10.1, beyond 3.5.
 *
 * <p>Detectors work within what the log can resolve ({@link io.rowledger.diagnose.signal.LogLimits}), and costs are split so
 * that no two findings charge the same liquid.
 *
 * <p>For other packages: {@link Diagnoses}, {@link Diagnosis}, {@link Deviation}, {@link OnsetWindow}.
 */
@NullMarked
package io.rowledger.diagnose;

import org.jspecify.annotations.NullMarked;
