package io.rowledger.report.common;

import io.rowledger.coverage.Coverage;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.Rates;
import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import io.rowledger.uncertainty.Intervals;

/**
 * A job as it was driven and metered: what the sections read that every document shares.
 *
 * @param rig the machine
 * @param log the usable records
 * @param track path, poses and passes
 * @param delivery what left each outlet in each step
 * @param rates areas and volumes per row and pass
 * @param coverage covered ground, skips, overlaps and the received rate
 * @param intervals uncertainty of areas, volumes and nitrogen
 */
public record JobView(
        Rig rig, LogTable log, Track track, Delivery delivery, Rates rates, Coverage coverage, Intervals intervals) {}
