/**
 * What the detectors look at, computed once a job: working samples, the log's limits, flow ratios between rows, level shifts,
 * edges of passes, turn shares, response to the demand.
 *
 * <p>Limits: readings that are multiples of q resolve a flow of Q to q/Q; a mean over W seconds turns a sudden stop into a ramp
 * that takes 0.6 W from 80 % to 20 %.
 *
 * <p>Worked by hand: readings of 0.7, 0.8 and 1.0 gal/min differ by 0.1 at least and are all multiples of it, so q = 0.1, and
 * at a usual 0.8 gal/min the log resolves 12.5 %. A flow that reads 0.8, 0.6, 0.4, 0.2, 0 at one-second intervals falls from
 * 0.64 to 0.16 in 2.4 s; 2.4/0.6 less one interval is an averaging of 3 s.
 *
 * <p>For other packages: {@link Evidence}, {@link LogLimits}, {@link WorkingSamples}, {@link FlowRatios},
 * {@link EvaluationMask}, {@link Bins}, {@link LevelShifts}, {@link EpisodeClusters}, {@link Edges}, {@link SwitchingDelays},
 * {@link TurnShares}, {@link Demand}, {@link Responses}, {@link BarShare}, {@link ShutOffPlaces}, {@link LateralTrend},
 * {@link FindingMessages}, {@link Case}, {@link Figure}, {@link RowTime}, {@link RowBaseline}, {@link Baselines}.
 */
@NullMarked
package io.rowledger.diagnose.signal;

import org.jspecify.annotations.NullMarked;
