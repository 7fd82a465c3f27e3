package io.rowledger.sim;

import java.util.SplittableRandom;

/** Turns true antenna positions into records with a receiver's errors and a logger's habits. */
final class Receiver {
    private final GnssModel model;
    private final LocalMap map;
    private final Gauss noise;
    private final SplittableRandom random;
    private double driftEast;
    private double driftNorth;
    private double driftM;
    private double course;
    private int leftOut;
    private int repeated;
    private int moved;
    private int withoutFix;
    private boolean begun;

    Receiver(GnssModel model, LocalMap map, SplittableRandom random) {
        this.model = model;
        this.map = map;
        this.random = random.split();
        this.noise = new Gauss(random.split());
        this.driftEast = noise.next();
        this.driftNorth = noise.next();
        this.driftM = model.driftM();
    }

    /** How far east of the antenna the receiver thinks it is, but for noise from record to record, m. */
    double offEastM() {
        return driftM * driftEast;
    }

    /** The same north. */
    double offNorthM() {
        return driftM * driftNorth;
    }

    /** How often the record at hand is written: 0 left out, 1, or 2 repeated. */
    int copies() {
        double dice = random.nextDouble();
        if (dice < model.leftOutShare()) {
            leftOut++;
            return 0;
        }
        if (dice < model.leftOutShare() + model.repeatedShare()) {
            repeated++;
            return 2;
        }
        return 1;
    }

    /** Fills position, fix, speed, course and yaw rate; velocity is the antenna's, m/s east and north. */
    void fix(SimRecord record, Motion motion, double[] velocity) {
        GnssModel kind = model;
        for (GnssModel.Spell spell : model.spells()) {
            if (record.timeS >= spell.startS() && record.timeS < spell.endS()) {
                kind = spell.fix() == 0 ? null : GnssModel.typical(spell.fix());
            }
        }
        drift(kind == null ? model.driftTauS() : kind.driftTauS());
        double east = noise.next();
        double north = noise.next();
        record.yawRateRadPerS = motion.kappa() * motion.speed() + Math.toRadians(0.1) * noise.next();
        record.hdop = 0.8 + 0.1 * Math.abs(driftEast);
        if (kind == null) {
            withoutFix++;
            record.fix = 0;
            record.latDeg = Double.NaN;
            record.lonDeg = Double.NaN;
            record.speedMps = Double.NaN;
            record.courseRad = Double.NaN;
            record.hdop = Double.NaN;
            return;
        }
        record.fix = kind.fix();
        driftM = kind.driftM();
        double x = motion.antennaX() + kind.whiteM() * east + offEastM();
        double y = motion.antennaY() + kind.whiteM() * north + offNorthM();
        for (GnssModel.Jump jump : model.jumps()) {
            double since = (record.timeS - jump.atS()) * model.rateHz();
            if (since >= -1e-6 && since < jump.records() - 1e-6) {
                x += jump.eastM();
                y += jump.northM();
                moved++;
            }
        }
        double[] latLon = map.latLonDeg(x, y);
        record.latDeg = latLon[0];
        record.lonDeg = latLon[1];
        double speed = Math.hypot(velocity[0], velocity[1]);
        record.speedMps = Math.max(0, speed + model.speedNoiseMps() * noise.next());
        if (speed > 0.1 || !begun) {
            course = speed > 0.1 ? Math.atan2(velocity[0], velocity[1]) : motion.psi();
        }
        begun = true;
        record.courseRad = course + model.courseNoiseRad() * noise.next();
    }

    private void drift(double tauS) {
        double keep = Math.exp(-1 / (model.rateHz() * tauS));
        double fresh = Math.sqrt(1 - keep * keep);
        driftEast = keep * driftEast + fresh * noise.next();
        driftNorth = keep * driftNorth + fresh * noise.next();
    }

    Truth.Flaws flaws() {
        return new Truth.Flaws(leftOut, repeated, moved, withoutFix);
    }
}
