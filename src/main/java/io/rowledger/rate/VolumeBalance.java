package io.rowledger.rate;

import io.rowledger.log.LogTable;
import io.rowledger.track.PathBreak;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;

/**
 * Where the metered volume of one product went, all outlets, L. Every reading covers half the interval to the reading before
 * and after it, so the parts add up to the flow integrated over the log by the trapezoidal rule, without silences longer
 * than {@link #MAX_GAP_S}. Unknown flow is in no part.
 *
 * @param workingL while working: what rows and passes have
 * @param liftedL while the bar was lifted
 * @param standingL lowered, while the machine stood
 * @param creepingL lowered, while the drop line moved forward slower than work does, or not forward
 * @param backingL lowered, while the tractor backed
 * @param gapL in gaps of the log, whose path is not known: the flow of the readings beside them times their duration
 */
public record VolumeBalance(
        double workingL, double liftedL, double standingL, double creepingL, double backingL, double gapL) {
    /** Longest gap that the readings beside it stand for, s; a logger that is silent for longer may have been off. */
    public static final double MAX_GAP_S = 120;
    /** Slower than this the machine stands, m/s: the drift of a receiver at rest. */
    private static final double STANDING_MPS = 0.02;

    /** Returns the volume outside the work, L: all but working. */
    public double outsideWorkL() {
        return liftedL + standingL + creepingL + backingL + gapL;
    }

    /** Returns the volume of all parts, L. */
    public double totalL() {
        return workingL + outsideWorkL();
    }

    /** Returns the balance of product p; all of it is NaN for a map of areas, which has nothing outside the work. */
    public static VolumeBalance of(LogTable log, Track track, Delivery delivery, int p) {
        if (log.isAreas()) {
            double unknown = Double.NaN;
            return new VolumeBalance(unknown, unknown, unknown, unknown, unknown, unknown);
        }
        Poses poses = track.poses();
        double working = 0;
        double lifted = 0;
        double standing = 0;
        double creeping = 0;
        double backing = 0;
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.record(k) < 0) {
                continue;
            }
            double volumeL = delivery.barFlowLPerS(p, poses.record(k)) * poses.durationS(k);
            if (poses.working(k)) {
                working += volumeL;
            } else if (!poses.lowered(k)) {
                lifted += volumeL;
            } else if (poses.backing(k)) {
                backing += volumeL;
            } else if (stands(poses, k)) {
                standing += volumeL;
            } else {
                creeping += volumeL;
            }
        }
        return new VolumeBalance(
                working, lifted, standing, creeping, backing, log.isTimed() ? gapL(log, track, delivery, p) : 0);
    }

    private static boolean stands(Poses poses, int k) {
        double movedM = Math.hypot(
                poses.antennaEastM(k + 1) - poses.antennaEastM(k), poses.antennaNorthM(k + 1) - poses.antennaNorthM(k));
        return movedM < STANDING_MPS * poses.durationS(k);
    }

    private static double gapL(LogTable log, Track track, Delivery delivery, int p) {
        double sum = 0;
        int i = 1;
        for (PathBreak gap : track.breaks()) {
            while (i < log.records() && log.timeS(i) < gap.endS()) {
                i++;
            }
            if (gap.kind() != PathBreak.Kind.BRIDGED && gap.durationS() <= MAX_GAP_S) {
                sum += (delivery.barFlowLPerS(p, i - 1) + delivery.barFlowLPerS(p, i)) / 2 * gap.durationS();
            }
        }
        return sum;
    }
}
