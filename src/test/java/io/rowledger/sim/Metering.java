package io.rowledger.sim;

import java.util.List;
import java.util.SplittableRandom;

/** From target and speed to true flows and to what the meters show, with every fault on the way. */
final class Metering {
    private static final double DROPOUT_SPELL_S = 1.5;
    private static final double NOMINAL_PRESSURE_PA = 165_000;
    private static final double MAX_PRESSURE_PA = 380_000;
    private static final double MIN_PRESSURE_PA = 20_000;
    private static final double CLOSED = 0.005;

    private final MeteringModel model;
    private final List<SimProduct> products;
    private final List<SimFault> faults;
    private final TargetMap targets;
    private final ControlMap map;
    private final Gauss noise;
    private final SplittableRandom random;
    private final Delay[] setDelay;
    private final double[][] controlled;
    private final double[] valve;
    private final boolean[] open;
    private final double[] pendingS;
    private final double[][] noiseFactor;
    private final boolean[] dropped;
    private final boolean[] airBound;
    private final double[][] lastOpen;
    private final double[][] stuck;
    private final double[] rowOpen;
    private final int together;
    private final double[][] scale;
    private boolean begun;

    Metering(Scenario scenario, ControlMap map, SplittableRandom random) {
        this.model = scenario.metering();
        this.products = scenario.products();
        this.faults = scenario.faults();
        this.targets = scenario.targets();
        this.map = map;
        this.together = scenario.shutOffTogether();
        this.random = random.split();
        this.noise = new Gauss(random.split());
        int rows = scenario.rig().rows();
        setDelay = new Delay[products.size()];
        controlled = new double[products.size()][rows];
        valve = new double[rows];
        open = new boolean[rows];
        pendingS = new double[rows];
        noiseFactor = new double[products.size()][rows];
        dropped = new boolean[rows];
        airBound = new boolean[rows];
        lastOpen = new double[products.size()][rows];
        stuck = new double[products.size()][rows];
        rowOpen = new double[rows];
        scale = new double[products.size()][rows];
        for (int p = 0; p < products.size(); p++) {
            for (int i = 0; i < rows; i++) {
                scale[p][i] = scenario.meterScale(p, i);
            }
            java.util.Arrays.fill(stuck[p], Double.NaN);
            setDelay[p] = new Delay(rows);
        }
        record();
    }

    /** New meter noise, held until the next record. */
    void record() {
        for (double[] ofProduct : noiseFactor) {
            for (int i = 0; i < ofProduct.length; i++) {
                ofProduct[i] = model.meterNoisePct() == 0 ? 1 : 1 + model.meterNoisePct() / 100 * noise.next();
            }
        }
    }

    /** Fills flows, commands, targets and meters of the step. */
    void step(StepState s) {
        for (int p = 0; p < products.size(); p++) {
            s.targetLPerM2[p] = products.get(p).targetLPerM2() * targets.factor(p, s.centerX, s.centerY, s.timeS);
        }
        for (int i = 0; i < s.rows; i++) {
            valve(s, i);
        }
        for (int p = 0; p < products.size(); p++) {
            control(s, p);
            swap(s, p);
            for (int i = 0; i < s.rows; i++) {
                rowOpen[i] = 1;
                s.trueLPerS[p][i] *= flowFactor(s, i);
            }
            stuckOpen(s, p);
            supply(s, p);
            for (int i = 0; i < s.rows; i++) {
                s.meterLPerS[p][i] = meter(s, p, i);
            }
        }
        if (map != null) {
            for (int i = 0; i < s.rows; i++) {
                if (s.delivering(i)) {
                    map.mark(s, i);
                }
            }
        }
        begun = true;
    }

    private void valve(StepState s, int i) {
        double onLatency = model.onLatencyS();
        boolean wanted = s.working;
        boolean early = false;
        for (SimFault f : faults) {
            if (f.active(s.timeS) && f.hits(i)) {
                if (f.kind() == SimFault.Kind.LATE_ON) {
                    onLatency += f.size();
                } else if (f.kind() == SimFault.Kind.EARLY_OFF) {
                    early |= s.toLiftM <= f.size() * s.barSpeedMps;
                }
            }
        }
        if (wanted && map != null) {
            double latency = open[i] ? model.offLatencyS() : model.onLatencyS();
            boolean covered = true;
            int first = i / together * together;
            for (int g = first; g < Math.min(s.rows, first + together); g++) {
                covered &= map.covered(s, g, latency * Math.max(0, s.rowSpeedMps[g]));
            }
            wanted = !covered;
        }
        s.commandedOn[i] = wanted;
        // The controller still says on: the valve or its wiring lets go by itself.
        wanted &= !early;
        if (wanted == open[i]) {
            pendingS[i] = 0;
        } else {
            pendingS[i] += s.dtS;
            if (pendingS[i] > (wanted ? onLatency : model.offLatencyS())) {
                open[i] = wanted;
                pendingS[i] = 0;
            }
        }
        double gain = gain(s.dtS, model.valveS());
        valve[i] += ((open[i] ? 1 : 0) - valve[i]) * gain;
        if (!open[i] && valve[i] < CLOSED) {
            valve[i] = 0;
        }
    }

    private void control(StepState s, int p) {
        double[] wanted = new double[s.rows];
        for (int i = 0; i < s.rows; i++) {
            boolean own = model.turnCompensation();
            for (SimFault f : faults) {
                own &= !(f.kind() == SimFault.Kind.NO_TURN_COMPENSATION && f.active(s.timeS) && f.hits(i));
            }
            double speed = Math.max(0, own ? s.rowSpeedMps[i] : s.barSpeedMps);
            wanted[i] = s.targetLPerM2[p] * s.rig.bandM(i) * speed;
        }
        double[] late = setDelay[p].next(wanted, (int) Math.round(model.controllerLagS() / s.dtS));
        for (int i = 0; i < s.rows; i++) {
            double response = model.responseS();
            for (SimFault f : faults) {
                if (f.kind() == SimFault.Kind.SLOW_RESPONSE && f.active(s.timeS) && f.hits(i)) {
                    response = f.size();
                }
            }
            controlled[p][i] =
                    begun ? controlled[p][i] + (late[i] - controlled[p][i]) * gain(s.dtS, response) : late[i];
            s.trueLPerS[p][i] = controlled[p][i] * valve[i];
        }
    }

    private static double gain(double dtS, double timeConstantS) {
        return timeConstantS <= 0 ? 1 : 1 - Math.exp(-dtS / timeConstantS);
    }

    private void swap(StepState s, int p) {
        for (SimFault f : faults) {
            if (f.kind() == SimFault.Kind.CHANNELS_SWAPPED && f.active(s.timeS)) {
                int a = f.rows().get(0) - 1;
                int b = f.rows().get(1) - 1;
                double kept = s.trueLPerS[p][a];
                s.trueLPerS[p][a] = s.trueLPerS[p][b];
                s.trueLPerS[p][b] = kept;
            }
        }
    }

    private double flowFactor(StepState s, int i) {
        double factor = 1;
        for (SimFault f : faults) {
            if (!f.active(s.timeS)) {
                continue;
            }
            boolean hit = f.hits(i);
            switch (f.kind()) {
                case PLUGGED, LEAKING -> factor *= hit ? f.size() : 1;
                case RESTRICTED -> {
                    double part = f.periodS() > 0 ? Math.min(1, (s.timeS - f.startS()) / f.periodS()) : 1;
                    factor *= hit ? 1 + (f.size() - 1) * part : 1;
                }
                case HUNTING ->
                    factor *= hit ? 1 + f.size() * Math.sin(2 * Math.PI * (s.timeS - f.startS()) / f.periodS()) : 1;
                case INTERMITTENT -> {
                    if (hit) {
                        double change = s.dtS / f.periodS() * (airBound[i] ? 1 : f.size() / (1 - f.size()));
                        airBound[i] ^= random.nextDouble() < change;
                        factor *= airBound[i] ? 0 : 1;
                    }
                }
                case SUPPLY_FAILING ->
                    factor *= 1 + (f.size() - 1) * Math.min(1, (s.timeS - f.startS()) / Math.max(1, f.periodS()));
                case RAN_EMPTY -> factor *= Math.max(0, 1 - (s.timeS - f.startS()) / 3);
                case OUTSIDE_SHARE -> factor *= i == 0 || i == s.rows - 1 ? f.size() : 1;
                default -> {}
            }
        }
        rowOpen[i] = Math.min(1, factor);
        return factor;
    }

    private void stuckOpen(StepState s, int p) {
        for (int i = 0; i < s.rows; i++) {
            if (valve[i] > 0.9) {
                lastOpen[p][i] = s.trueLPerS[p][i];
                continue;
            }
            for (SimFault f : faults) {
                if (f.kind() == SimFault.Kind.VALVE_STUCK_OPEN && f.active(s.timeS) && f.hits(i)) {
                    s.trueLPerS[p][i] = Math.max(s.trueLPerS[p][i], f.size() * lastOpen[p][i]);
                }
            }
        }
    }

    private void supply(StepState s, int p) {
        double cap = model.supplyCapLPerS();
        for (SimFault f : faults) {
            if (f.kind() == SimFault.Kind.SUPPLY_LIMITED && f.active(s.timeS)) {
                cap = Math.min(cap, f.size());
            }
        }
        double sum = sum(s.trueLPerS[p]);
        if (sum > cap) {
            for (int i = 0; i < s.rows; i++) {
                s.trueLPerS[p][i] *= cap / sum;
            }
        }
    }

    static double sum(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return sum;
    }

    private double meter(StepState s, int p, int i) {
        double shown = s.trueLPerS[p][i] * noiseFactor[p][i] * scale[p][i];
        boolean isStuck = false;
        double wanderOfStuck = 0;
        for (SimFault f : faults) {
            if (!f.active(s.timeS) || !f.hits(i)) {
                continue;
            }
            switch (f.kind()) {
                case METER_SCALE -> shown *= f.size();
                case METER_DROPOUT -> {
                    if (p == 0) {
                        double change = s.dtS / DROPOUT_SPELL_S * (dropped[i] ? 1 : f.size() / (1 - f.size()));
                        dropped[i] ^= random.nextDouble() < change;
                    }
                    shown = dropped[i] ? 0 : shown;
                }
                case METER_STUCK -> {
                    isStuck = true;
                    wanderOfStuck = f.periodS();
                    if (Double.isNaN(stuck[p][i])) {
                        stuck[p][i] = shown;
                    }
                }
                default -> {}
            }
        }
        if (isStuck) {
            return stuck[p][i]
                    * (1 + wanderOfStuck * (noiseFactor[p][i] - 1) / Math.max(1e-9, model.meterNoisePct() / 100));
        }
        stuck[p][i] = Double.NaN;
        return Math.max(0, shown);
    }

    /** Pressure at row i of product 0: rises with the square of the flow asked for, and where the way is blocked. */
    double rowPressurePa(StepState s, int i) {
        double usual = products.get(0).targetLPerM2() * s.rig.bandM(i) * 2.2;
        double asked = controlled[0][i] * valve[i] / usual;
        double blocked = 1 + 1.1 * (1 - rowOpen[i]);
        return Math.min(MAX_PRESSURE_PA, MIN_PRESSURE_PA + NOMINAL_PRESSURE_PA * asked * asked * blocked);
    }

    /** Pressure ahead of the rows: their mean, up where some are blocked or shut. */
    double pressurePa(StepState s) {
        double sum = 0;
        for (int i = 0; i < s.rows; i++) {
            sum += rowPressurePa(s, i);
        }
        return sum / s.rows;
    }
}
