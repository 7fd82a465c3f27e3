package io.rowledger.analysis;

import io.rowledger.sim.Console;
import io.rowledger.sim.CurvePlan;
import io.rowledger.sim.FieldPlan;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A simulated job measured wrongly in every way the intervals speak of, each drawn at random: a receiver that drifts, meters
 * out of calibration, a tape measure read an inch off, knives not where they should be, a load denser than its ticket.
 * In half of the jobs the tractor drives true and the receiver's drift is in the log; in the other half the receiver steers
 * and its drift is in the ground. The errors are the simulator's own; they share no code with the product.
 */
record MismeasuredJob(
        SimResult result,
        List<Double> targetsLPerM2,
        List<Double> trueDensityKgPerL,
        boolean rtk,
        boolean steered,
        boolean oneHertz,
        boolean rounded) {
    private static final double INCH_M = 0.0254;
    /** The window of a pass-to-pass accuracy (ISO 12188). */
    private static final double WINDOW_S = 900;

    /** Step to which a third of the logs with faulty meters round flows, gal/min; common practice, no source. */
    private static final double ROUNDED_GAL_PER_MIN = 0.1;

    private static final double METER_ACCURACY = 0.02;
    private static final double DENSITY_ACCURACY = 0.01;

    static MismeasuredJob draw(long seed) {
        return draw(seed, false);
    }

    /** The same with one or two meters that stick, drop out or read a constant share off, for a part of the job or all of it; a third of the logs is rounded. */
    static MismeasuredJob draw(long seed, boolean faultyMeters) {
        SplittableRandom random = new SplittableRandom(seed);
        int rows = List.of(6, 8, 12).get(random.nextInt(3));
        SimRig stated = random.nextBoolean() ? SimRig.drawn(rows) : SimRig.carried(rows);
        boolean rtk = random.nextBoolean();
        Scenario scenario = new Scenario(seed, mismeasured(stated, random), layout(stated, random)).statedRig(stated);
        GnssModel gnss = receiver(rtk, random);
        scenario.gnss(gnss)
                .products(products(random))
                .metering(MeteringModel.perRow().withShutOff(random.nextInt(3) == 0))
                .meterScale(calibration(random, rows));
        boolean rounded = false;
        if (faultyMeters) {
            // A stream of its own, so that all else is drawn as without faults.
            SplittableRandom own = new SplittableRandom(seed ^ 0xfa17L);
            faults(own, rows).forEach(scenario::fault);
            rounded = own.nextInt(3) == 0;
            if (rounded) {
                scenario.format(scenario.format().withUnits(true)).console(Console.NONE.rounded(ROUNDED_GAL_PER_MIN));
            }
        }
        boolean steered = random.nextBoolean();
        if (steered) {
            scenario.steeredByReceiver();
        }
        List<Double> densities = new ArrayList<>();
        for (SimProduct product : scenario.products()) {
            densities.add(product.densityKgPerL() * (1 + random.nextDouble(-DENSITY_ACCURACY, DENSITY_ACCURACY)));
        }
        return new MismeasuredJob(
                scenario.run(),
                scenario.products().stream().map(SimProduct::targetLPerM2).toList(),
                densities,
                rtk,
                steered,
                gnss.rateHz() == 1,
                rounded);
    }

    private static List<SimFault> faults(SplittableRandom random, int rows) {
        int first = 1 + random.nextInt(rows);
        int second = 1 + (first + random.nextInt(1, rows) - 1) % rows;
        SimFault one = fault(random, first);
        return random.nextBoolean() ? List.of(one) : List.of(one, fault(random, second));
    }

    private static SimFault fault(SplittableRandom random, int row) {
        double startS = random.nextDouble(60, 400);
        return switch (random.nextInt(3)) {
            case 0 -> SimFault.of(SimFault.Kind.METER_STUCK, row, startS, 0);
            case 1 -> SimFault.of(SimFault.Kind.METER_DROPOUT, row, startS, random.nextDouble(0.2, 0.6));
            default ->
                SimFault.of(
                        SimFault.Kind.METER_SCALE,
                        row,
                        0,
                        random.nextBoolean() ? random.nextDouble(0.75, 0.9) : random.nextDouble(1.1, 1.3));
        };
    }

    private static SimProduct[] products(SplittableRandom random) {
        SimProduct uan = SimProduct.uan32(random.nextDouble(20, 50));
        return random.nextInt(3) == 0
                ? new SimProduct[] {uan, SimProduct.ats(random.nextDouble(3, 12))}
                : new SimProduct[] {uan};
    }

    /**
     * What a meter shows is off by an error all share, whatever they meter, and one of its own; together their variance is that
     * of an even spread over the stated limits.
     */
    private static double[][] calibration(SplittableRandom random, int rows) {
        double half = METER_ACCURACY / Math.sqrt(2);
        double shared = random.nextDouble(-half, half);
        double[][] scale = new double[2][rows];
        for (double[] ofProduct : scale) {
            for (int i = 0; i < rows; i++) {
                ofProduct[i] = 1 + shared + random.nextDouble(-half, half);
            }
        }
        return scale;
    }

    private static double off(SplittableRandom random) {
        return random.nextDouble(-INCH_M, INCH_M);
    }

    /** The machine that drives: every length of the stated one and every knife's place up to an inch off. */
    private static SimRig mismeasured(SimRig stated, SplittableRandom random) {
        double[] knife = new double[stated.rows()];
        for (int i = 0; i < knife.length; i++) {
            knife[i] = off(random);
        }
        double[] left = stated.leftM().clone();
        double[] right = stated.rightM().clone();
        int last = knife.length - 1;
        for (int i = 0; i <= last; i++) {
            left[i] += i == 0 ? knife[0] : (knife[i - 1] + knife[i]) / 2;
            right[i] += i == last ? knife[last] : (knife[i] + knife[i + 1]) / 2;
        }
        return stated.withBands(left, right)
                .withLengths(
                        stated.axleToHitchM() + off(random),
                        stated.hitchToWheelsM() + off(random),
                        stated.hitchToDropM() + off(random))
                .withAntenna(stated.antennaAheadM() + off(random), stated.antennaRightM() + off(random))
                .withBarRight(stated.barRightM() + off(random));
    }

    private static FieldPlan.Layout layout(SimRig stated, SplittableRandom random) {
        double length = random.nextDouble(120, 220);
        int passes = 6 + random.nextInt(5);
        FieldPlan.Layout plan =
                switch (random.nextInt(4)) {
                    case 0 ->
                        PassPlan.rectangle(length, passes, 0, stated.widthM())
                                .skipping(4)
                                .heading(random.nextDouble(0, 3));
                    case 1 ->
                        PassPlan.rectangle(length, passes, 1, stated.widthM())
                                .skipping(4)
                                .heading(random.nextDouble(0, 3));
                    case 2 -> CurvePlan.arcs(64, length, passes);
                    default ->
                        PassPlan.field(new double[][] {{0, 0}, {length, 15}, {length + 20, 110}, {20, 120}}, 1)
                                .skipping(3)
                                .heading(random.nextDouble(0, 3));
                };
        // The driver drives the bar as it is written down.
        return ignored -> plan.lay(stated);
    }

    /**
     * Drift such that 95 of 100 passes within 15 minutes agree within an inch (RTK) or a foot (differential), give or take a
     * third, with a time constant of 3 to 10 minutes. Two passes Δ apart differ by σ√(2(1 − e^(−Δ/τ))), over all Δ up to T by
     * σ√(2m), m = 1 − τ/T·(1 − e^(−T/τ)).
     */
    private static GnssModel receiver(boolean rtk, SplittableRandom random) {
        double rate = List.of(1.0, 5.0, 10.0).get(random.nextInt(3));
        double tauS = random.nextDouble(180, 600);
        double size = random.nextDouble(0.67, 1.33);
        double m = 1 - tauS / WINDOW_S * (1 - Math.exp(-WINDOW_S / tauS));
        double driftM = size * (rtk ? INCH_M : 12 * INCH_M) / (1.96 * Math.sqrt(2 * m));
        return rtk
                ? GnssModel.rtk(rate).withNoise(0.012, driftM, tauS)
                : GnssModel.differential(rate).withNoise(0.03, driftM, tauS);
    }
}
