package io.rowledger.sim;

import java.util.ArrayList;
import java.util.List;

/** Sums up what happens step by step. */
final class TruthRecorder {
    /** Slower rows, as a part of the bar's speed, have no meaningful rate. */
    private static final double SLOW = 0.05;

    private final CoverRaster raster;
    private final ZoneTally zones;
    private final double[] swept;
    private final double[] applied;
    private final double[][] volume;
    private final double[][] metered;
    private final double[][] target;
    private final double[] stray;
    private final Turn[] turn;
    private final Turn[] remaining;
    private final List<Truth.Pass> passes = new ArrayList<>();
    private int pass;
    private double passStartS;
    private double passEndS;
    private double passLengthM;
    private double passSwept;
    private double[] passVolume;

    /** Area-weighted relative errors. */
    private static final class Turn {
        double sum;
        double area;
        double over;
        double under;

        void add(double error, double areaM2) {
            sum += Math.abs(error) * areaM2;
            area += areaM2;
            over = Math.max(over, error);
            under = Math.min(under, error);
        }

        Truth.TurnError done() {
            return new Truth.TurnError(area > 0 ? sum / area : Double.NaN, over, under);
        }
    }

    /** With a raster and zones, or without (null). */
    TruthRecorder(int rows, int products, CoverRaster raster, ZoneTally zones) {
        this.zones = zones;
        this.raster = raster;
        swept = new double[rows];
        applied = new double[rows];
        volume = new double[products][rows];
        metered = new double[products][rows];
        target = new double[products][rows];
        stray = new double[products];
        turn = new Turn[rows];
        remaining = new Turn[rows];
        for (int i = 0; i < rows; i++) {
            turn[i] = new Turn();
            remaining[i] = new Turn();
        }
    }

    void step(StepState s) {
        if (!s.working) {
            for (int p = 0; p < s.products; p++) {
                stray[p] += Metering.sum(s.trueLPerS[p]) * s.dtS;
            }
            endPass();
            return;
        }
        if (s.pass != pass) {
            endPass();
            pass = s.pass;
            passStartS = s.timeS;
            passVolume = new double[s.products];
        }
        passEndS = s.timeS + s.dtS;
        passLengthM += s.centerStepM;
        double flowPerSpeed = barFlowOverSpeed(s);
        for (int i = 0; i < s.rows; i++) {
            row(s, i, flowPerSpeed);
        }
        if (zones != null) {
            zones.step(s);
        }
        if (raster != null) {
            raster.step(s);
        }
    }

    private void row(StepState s, int i, double flowPerSpeed) {
        double area = Math.max(0, s.areaM2[i]);
        swept[i] += area;
        passSwept += area;
        applied[i] += s.delivering(i) ? area : 0;
        for (int p = 0; p < s.products; p++) {
            volume[p][i] += s.trueLPerS[p][i] * s.dtS;
            metered[p][i] += s.meterLPerS[p][i] * s.dtS;
            target[p][i] += s.targetLPerM2[p] * area;
            passVolume[p] += s.trueLPerS[p][i] * s.dtS;
        }
        if (s.rowSpeedMps[i] >= SLOW * s.barSpeedMps && area > 0) {
            turn[i].add(s.barSpeedMps / s.rowSpeedMps[i] - 1, area);
            if (s.delivering(i) && flowPerSpeed > 0) {
                double own = s.trueLPerS[0][i] / (s.rig.bandM(i) * s.rowSpeedMps[i]);
                remaining[i].add(own / flowPerSpeed - 1, area);
            }
        }
    }

    /** Flow of the delivering rows over the area they sweep in a second: the bar's own rate just now, L/m². */
    private static double barFlowOverSpeed(StepState s) {
        double flow = 0;
        double area = 0;
        for (int i = 0; i < s.rows; i++) {
            if (s.delivering(i)) {
                flow += s.trueLPerS[0][i];
                area += s.rig.bandM(i) * s.rowSpeedMps[i];
            }
        }
        return area > 0 ? flow / area : 0;
    }

    private void endPass() {
        if (pass > 0 && passVolume != null) {
            passes.add(new Truth.Pass(pass, passStartS, passEndS, passLengthM, passSwept, passVolume));
        }
        passVolume = null;
        passLengthM = 0;
        passSwept = 0;
    }

    Truth done(double[][] boundary, List<SimFault> faults, Truth.Flaws flaws, double durationS) {
        endPass();
        int products = stray.length;
        List<Truth.Row> rows = new ArrayList<>();
        for (int i = 0; i < swept.length; i++) {
            rows.add(new Truth.Row(
                    i + 1,
                    swept[i],
                    applied[i],
                    column(volume, i),
                    column(metered, i),
                    column(target, i),
                    turn[i].done(),
                    remaining[i].done()));
        }
        double[] volumes = new double[products];
        double[] meters = new double[products];
        for (int p = 0; p < products; p++) {
            volumes[p] = Metering.sum(volume[p]);
            meters[p] = Metering.sum(metered[p]);
        }
        Truth.Ground ground = raster == null ? Truth.Ground.UNKNOWN : raster.ground(boundary);
        return new Truth(
                List.copyOf(rows),
                List.copyOf(passes),
                ground,
                Metering.sum(swept),
                volumes,
                meters,
                stray.clone(),
                faults,
                flaws,
                durationS,
                zones == null ? List.of() : zones.done());
    }

    private static double[] column(double[][] table, int i) {
        double[] column = new double[table.length];
        for (int p = 0; p < table.length; p++) {
            column[p] = table[p][i];
        }
        return column;
    }
}
