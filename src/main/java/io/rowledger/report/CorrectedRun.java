package io.rowledger.report;

import io.rowledger.coverage.Coverage;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigCorrection;

/**
 * The analysis again, with the figures of the setup that the log contradicts replaced by the log's.
 *
 * @param correction the user's rig file with those figures in it
 * @param rig what that file says
 * @param coverage the ground as it looks then
 */
public record CorrectedRun(RigCorrection.Corrected correction, Rig rig, Coverage coverage) {}
