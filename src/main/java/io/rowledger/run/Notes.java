package io.rowledger.run;

import io.rowledger.coverage.Boundary;
import io.rowledger.coverage.Coverage;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogSource;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a reader must know before trusting the figures, one sentence each. */
final class Notes {
    /** Beyond this share of records left out, the figures are of a part of the job. */
    private static final double MANY_DROPPED = 0.01;

    /** From this noise on, thin skips and doubles may be the receiver's and not the driver's, m. */
    private static final double COARSE_FIX_M = 0.04;

    private Notes() {}

    static List<String> of(LogReading reading, Rig rig, Track track, @Nullable Boundary boundary, Coverage coverage) {
        List<String> notes = new ArrayList<>(reading.notes());
        for (int p = 0; p < rig.products().size(); p++) {
            targets(reading.table(), p, rig.products().get(p), notes);
        }
        TrackQuality quality = track.quality();
        if (quality.workStateDerived()) {
            notes.add("The log has no work state: the bar was taken as lowered wherever a row had flow.");
        }
        for (LogSource source : reading.table().sources()) {
            if (source.dropped().total() > MANY_DROPPED * source.records()) {
                notes.add(source.file() + ": " + source.dropped().total() + " of " + source.records()
                        + " records could not be used; what happened in them is in no figure.");
            }
        }
        if (quality.gaps() > 0) {
            notes.add("The log is silent in " + quality.gaps() + (quality.gaps() == 1 ? " place" : " places") + ", "
                    + Math.round(quality.gapS()) + " s in all; nothing is assumed about them.");
        }
        double noise = worstNoise(quality);
        if (noise > COARSE_FIX_M) {
            notes.add(
                    "Fixes scatter by about " + Math.round(noise * 100) + " cm (1 sigma) and can drift further between"
                            + " passes: skips and doubles as thin as that may be the receiver's, and turn errors look larger"
                            + " than they were.");
        }
        if (boundary == null) {
            notes.add("No boundary was given: missed ground means gaps between strips only.");
        } else if (boundary.repaired()) {
            notes.add(boundary.file() + ": the outline was not valid (it crosses or touches itself) and was repaired.");
        }
        notes.addAll(coverage.notes());
        return notes;
    }

    private static double worstNoise(TrackQuality quality) {
        double worst = 0;
        for (double noise : quality.noiseM()) {
            worst = Double.isNaN(noise) ? worst : Math.max(worst, noise);
        }
        return worst;
    }

    /** A target that is there only in part can't be summed: the reader must know why nothing is judged against it. */
    private static void targets(LogTable log, int p, Product product, List<String> notes) {
        if (!log.hasTarget(p) || !Double.isNaN(product.targetLPerM2())) {
            return;
        }
        int without = 0;
        for (int i = 0; i < log.records(); i++) {
            without += Double.isNaN(log.targetLPerM2(p, i)) ? 1 : 0;
        }
        if (without > 0) {
            notes.add(product.name() + ": " + without + " of " + log.records()
                    + " records have no target rate and the rig file has none to fill in, so rows can't be held against a"
                    + " target. A line 'target:' under the product in the rig file mends it.");
        }
    }
}
