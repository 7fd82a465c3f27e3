package io.rowledger.diagnose;

import io.rowledger.track.Poses;

/**
 * How long the bar drove at working speed without flow. In a log without a work state that reads as a lifted bar, and may as well
 * be a tank that ran empty.
 */
final class DrivenWithoutFlow {
    /** Shorter drives are turns and ways between passes, s. */
    static final double MIN_S = 60;

    /** Share of the usual working speed from which the bar drives as if it worked (1). */
    private static final double AT_WORK = 0.8;

    /** A drive is interrupted by slower driving for longer than this, s. */
    private static final double PAUSE_S = 5;

    private DrivenWithoutFlow() {}

    /** The longest drive without flow, s; 0 for none. */
    static double longestS(Poses poses, double usualMps) {
        double longest = 0;
        double drivenS = 0;
        double pausedS = 0;
        for (int k = 0; k < poses.steps(); k++) {
            double seconds = poses.durationS(k);
            double east = poses.dropEastM(k + 1) - poses.dropEastM(k);
            double north = poses.dropNorthM(k + 1) - poses.dropNorthM(k);
            if (poses.working(k) || poses.record(k) < 0) {
                drivenS = 0;
            } else if (Math.hypot(east, north) >= AT_WORK * usualMps * seconds) {
                drivenS += seconds;
                pausedS = 0;
            } else {
                pausedS += seconds;
                drivenS = pausedS > PAUSE_S ? 0 : drivenS;
            }
            longest = Math.max(longest, drivenS);
        }
        return longest;
    }
}
