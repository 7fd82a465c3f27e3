package io.rowledger.sim;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Steers a {@link Motion} along a {@link TourPath}: curvature of the line ahead, corrected for offset and heading error,
 * through a steering gear with a lag, a limited rate and a limited lock. So curvature is continuous, as in life.
 */
final class Tractor {
    private static final int WANDER_WAVES = 6;
    private static final double BACKING_MPS = 0.8;

    private final TractorModel model;
    private final TourPath path;
    private final Motion motion;
    private final double[] waveM = new double[WANDER_WAVES];
    private final double[] wavePhase = new double[WANDER_WAVES];
    private final double swingPhase;
    private int at;
    private double offset;
    private double along;
    private int nextBacking;
    private double backLeftM;
    private double senseX;
    private double senseY;
    private double[] stopAtM = {};
    private int nextStop;
    private double stopS;
    private double standingS;

    Tractor(TractorModel model, TourPath path, Motion motion, SplittableRandom random) {
        this.model = model;
        this.path = path;
        this.motion = motion;
        for (int i = 0; i < WANDER_WAVES; i++) {
            waveM[i] = 18 * StrictMath.pow(1.45, i) * (0.9 + 0.2 * random.nextDouble());
            wavePhase[i] = 2 * Math.PI * random.nextDouble();
        }
        swingPhase = 2 * Math.PI * random.nextDouble();
        project();
    }

    /** From here on the steering takes the rear axle to be so far from where it is, m. */
    void sense(double offEastM, double offNorthM) {
        senseX = offEastM;
        senseY = offNorthM;
    }

    /** Stops at these lengths of the line, ascending, each time for so long. */
    void stopAt(double[] alongM, double forS) {
        stopAtM = alongM.clone();
        stopS = forS;
    }

    /** Length of the line the rear axle has reached, m. */
    double alongM() {
        return along;
    }

    /** Offset of the rear axle from the line, m right. */
    double offsetM() {
        return offset;
    }

    boolean backing() {
        return backLeftM > 0;
    }

    boolean arrived() {
        return at >= path.size() - 2 && along >= path.lengthM() - 0.05;
    }

    private void project() {
        while (true) {
            double dx = path.x()[at + 1] - path.x()[at];
            double dy = path.y()[at + 1] - path.y()[at];
            double len = path.s()[at + 1] - path.s()[at];
            double px = motion.x() + senseX - path.x()[at];
            double py = motion.y() + senseY - path.y()[at];
            double t = (px * dx + py * dy) / (len * len);
            if (t > 1 && at < path.size() - 2) {
                at++;
                continue;
            }
            offset = (px * dy - py * dx) / len;
            along = path.s()[at] + t * len;
            return;
        }
    }

    /** Moves on by dt. */
    void step(double dtS) {
        List<TourPath.Backing> backings = path.backings();
        if (backLeftM > 0) {
            stepBack(dtS);
            return;
        }
        double t = (along - path.s()[at]) / (path.s()[at + 1] - path.s()[at]);
        double heading = path.headingRad()[at] + t * (path.headingRad()[at + 1] - path.headingRad()[at]);
        double speed = motion.speed();
        double previewM = speed * (model.steerLagS() + model.previewS());
        double ahead = path.curvaturePerM()[pointAt(along + previewM)];
        double k = 1 / model.trackingLengthM();
        double wanted = ahead
                - k * k * clamp(offset - wander(along), 2 * model.trackingLengthM())
                - 1.6 * k * Math.sin(motion.psi() - heading);
        double curvatureRate = clamp(
                (clamp(wanted, model.maxCurvaturePerM()) - motion.kappa()) / model.steerLagS(), model.steerRatePerMS());
        double wantedSpeed = path.speedMps()[at]
                * (1 + model.speedSwing() * Math.sin(along / 23 + swingPhase) * Math.sin(along / 61 + 2 * swingPhase));
        if (nextBacking < backings.size()) {
            double left = backings.get(nextBacking).atM() - along;
            wantedSpeed = Math.min(wantedSpeed, Math.sqrt(2 * model.accelMps2() * 0.7 * Math.max(0, left)));
            if (left < 0.05 || (left < 0.3 && speed < 0.1)) {
                wantedSpeed = 0;
                if (speed < 0.03) {
                    backLeftM = backings.get(nextBacking++).distanceM();
                }
            }
        }
        if (nextStop < stopAtM.length) {
            double left = stopAtM[nextStop] - along;
            wantedSpeed = Math.min(wantedSpeed, Math.sqrt(2 * model.accelMps2() * 0.7 * Math.max(0, left)));
            if (left < 0.05 || (left < 0.3 && speed < 0.1)) {
                wantedSpeed = 0;
                standingS += speed < 0.03 ? dtS : 0;
                if (standingS >= stopS) {
                    standingS = 0;
                    nextStop++;
                }
            }
        }
        double accel = clamp((wantedSpeed - speed) / 0.3, model.accelMps2());
        motion.step(dtS, curvatureRate, accel);
        project();
    }

    private void stepBack(double dtS) {
        double wantedSpeed = -Math.min(BACKING_MPS, Math.sqrt(0.5 * model.accelMps2() * backLeftM) + 0.05);
        double curvatureRate = clamp(-motion.kappa() / model.steerLagS(), model.steerRatePerMS());
        double before = motion.speed();
        motion.step(dtS, curvatureRate, clamp((wantedSpeed - before) / 0.3, model.accelMps2()));
        backLeftM -= Math.max(0, -(before + motion.speed()) / 2 * dtS);
        at = Math.max(0, at - 2);
        project();
    }

    private int pointAt(double s) {
        int i = at;
        while (i < path.size() - 1 && path.s()[i] < s) {
            i++;
        }
        return i;
    }

    private double wander(double s) {
        double sum = 0;
        for (int i = 0; i < WANDER_WAVES; i++) {
            sum += Math.sin(2 * Math.PI * s / waveM[i] + wavePhase[i]);
        }
        return model.wanderRmsM() * sum / Math.sqrt(WANDER_WAVES / 2.0);
    }

    private static double clamp(double value, double limit) {
        return Math.max(-limit, Math.min(limit, value));
    }
}
