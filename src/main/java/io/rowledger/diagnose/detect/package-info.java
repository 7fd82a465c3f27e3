/**
 * The detectors: one class, one kind of finding, one test. A detector reads {@link io.rowledger.diagnose.signal.Evidence},
 * works within the log's limits and returns cases; it stays silent where the log can't tell.
 *
 * <p>For other packages: {@link Detector}, {@link CaseFilter}, {@link MeterStuckDetector}, {@link ValveStuckOpenDetector},
 * {@link RanEmptyDetector}, {@link IntermittentDetector}, {@link MeterDropoutDetector}, {@link OutsideShareDetector},
 * {@link PluggedDetector}, {@link MeterScaleDetector}, {@link RestrictedDetector}, {@link LeakingDetector},
 * {@link LateOnDetector}, {@link EarlyOffDetector}, {@link NoTurnCompensationDetector}, {@link SupplyFailingDetector},
 * {@link SupplyLimitedDetector}, {@link SlowResponseDetector}, {@link HuntingDetector}, {@link ChannelsSwappedDetector}.
 */
@NullMarked
package io.rowledger.diagnose.detect;

import org.jspecify.annotations.NullMarked;
