package io.rowledger.uncertainty;

import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import io.rowledger.track.TrackQuality;
import java.util.SplittableRandom;

/**
 * One Monte Carlo sample of the errors of a job: receiver drift and noise at every vertex, starts and stops within half a
 * record, the setup's lengths, the knives' places.
 */
final class ErrorSample {
    /** Bands whose edges are nearer than this share an edge, m. */
    private static final double TOUCH_M = 0.005;

    private final SplittableRandom random;
    private final double[] eastM;
    private final double[] northM;
    private final double[] endM;
    private final double[] leftM;
    private final double[] rightM;
    private final double alongM;
    private final double sideM;
    private double spare = Double.NaN;

    ErrorSample(UncertaintyInputs job, PerturbedCoverage ground, long seed) {
        random = new SplittableRandom(seed);
        double toleranceM = DefaultUncertainties.toleranceM(job.rig());
        // Antenna ahead, axle to hitch, hitch to drop; antenna and bar offset to the side.
        alongM = toleranceM * (uniform() + uniform() + uniform());
        sideM = toleranceM * (uniform() + uniform());
        leftM = new double[job.strips().rows()];
        rightM = new double[leftM.length];
        knives(job.strips(), toleranceM);
        int n = ground.pose.length;
        eastM = new double[n];
        northM = new double[n];
        endM = new double[n];
        track(job, ground);
    }

    /** Uniform in [−1, 1). */
    private double uniform() {
        return 2 * random.nextDouble() - 1;
    }

    /** Standard normal: G. Box, M. Muller, Ann. Math. Stat. 29 (1958) 610-611; strict, for the same bytes everywhere. */
    private double normal() {
        if (!Double.isNaN(spare)) {
            double z = spare;
            spare = Double.NaN;
            return z;
        }
        double size = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
        double angle = 2 * Math.PI * random.nextDouble();
        spare = size * StrictMath.sin(angle);
        return size * StrictMath.cos(angle);
    }

    /** A band's edge lies halfway between two knives, or at a fixed distance outside the outermost. */
    private void knives(Strips strips, double toleranceM) {
        double[] knifeM = new double[leftM.length];
        for (int r = 0; r < knifeM.length; r++) {
            knifeM[r] = toleranceM * uniform();
        }
        for (int r = 0; r < knifeM.length; r++) {
            boolean meets = r + 1 < knifeM.length && Math.abs(strips.rightM(r) - strips.leftM(r + 1)) < TOUCH_M;
            boolean met = r > 0 && Math.abs(strips.leftM(r) - strips.rightM(r - 1)) < TOUCH_M;
            rightM[r] = meets ? (knifeM[r] + knifeM[r + 1]) / 2 : knifeM[r];
            leftM[r] = met ? (knifeM[r] + knifeM[r - 1]) / 2 : knifeM[r];
        }
    }

    private void track(UncertaintyInputs job, PerturbedCoverage ground) {
        Poses poses = job.track().poses();
        TrackQuality quality = job.track().quality();
        double east = normal();
        double north = normal();
        double whiteEast = 0;
        double whiteNorth = 0;
        double lastS = Double.NaN;
        for (int m = 0; m < eastM.length; m++) {
            int i = ground.pose[m];
            double timeS = poses.timeS(i);
            if (m > 0) {
                double keep = StrictMath.exp(-Math.max(0, timeS - lastS) / DefaultUncertainties.DRIFT_TAU_S);
                double fresh = Math.sqrt(1 - keep * keep);
                east = keep * east + fresh * normal();
                north = keep * north + fresh * normal();
            }
            lastS = timeS;
            int k = Math.min(i, poses.steps() - 1);
            int record = poses.record(k) >= 0 ? poses.record(k) : poses.record(Math.max(0, k - 1));
            int slot = record < 0 ? 9 : DefaultUncertainties.slot(job.log().fix(record));
            double noiseM = quality.noiseM()[slot];
            double residualM = Double.isNaN(noiseM) ? 0 : DefaultUncertainties.SMOOTHED_SHARE * noiseM;
            if (ground.noiseOf[m] == m) {
                whiteEast = residualM * normal();
                whiteNorth = residualM * normal();
            }
            double driftM = DefaultUncertainties.driftM(slot);
            eastM[m] = driftM * east + whiteEast;
            northM[m] = driftM * north + whiteNorth;
            endM[m] = uniform() / 2 * quality.medianIntervalS() * speedMps(poses, k);
        }
    }

    private static double speedMps(Poses poses, int k) {
        double distanceM =
                Math.hypot(poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k));
        return poses.record(k) < 0 ? 0 : distanceM / poses.durationS(k);
    }

    /** Returns the position error of vertex m to the east, m. */
    double eastM(int m) {
        return eastM[m];
    }

    /** Returns the position error of vertex m to the north, m. */
    double northM(int m) {
        return northM[m];
    }

    /** Returns how much later a strip starts or ends at vertex m, m along the direction of travel. */
    double endM(int m) {
        return endM[m];
    }

    /** Returns the error of the left edge of row r, m right. */
    double leftM(int r) {
        return leftM[r];
    }

    /** Returns the error of the right edge of row r, m right. */
    double rightM(int r) {
        return rightM[r];
    }

    /** Returns the error of the lengths along the direction of travel, m back. */
    double alongM() {
        return alongM;
    }

    /** Returns the error of the side offset, m right. */
    double sideM() {
        return sideM;
    }
}
