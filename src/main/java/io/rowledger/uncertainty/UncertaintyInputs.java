package io.rowledger.uncertainty;

import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;

/**
 * What the figures were computed from.
 *
 * @param log the usable records
 * @param rig the machine
 * @param track poses and passes
 * @param strips the strips between the poses
 * @param delivery what left each outlet in each step
 */
public record UncertaintyInputs(LogTable log, Rig rig, Track track, Strips strips, Delivery delivery) {}
