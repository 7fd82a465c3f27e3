package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.rig.Rig;

/**
 * The analysis again, with the figures of the setup that the log contradicts replaced by the log's.
 *
 * @param rig what the corrected rig file says
 * @param coverage the ground as it looks then
 */
public record CorrectedRun(Rig rig, Coverage coverage) {}
