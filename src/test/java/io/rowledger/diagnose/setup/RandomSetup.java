package io.rowledger.diagnose.setup;

import io.rowledger.sim.CurvePlan;
import io.rowledger.sim.FieldPlan;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.SpeedsByPass;
import io.rowledger.sim.TractorModel;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * A simulated job whose rig file is wrong on purpose, drawn at random: rig, field, speed, receiver, valves, the habit of
 * lowering and lifting, columns of the log, and how wrong flow lag, drop line and side are. The same seed draws the same.
 *
 * <p>The simulator knows nothing of the wrong figures: it drives the true machine; only the rig file's text is changed.
 */
final class RandomSetup {
    /** Seeds of one run lie this far apart, so that runs share no job. */
    static final long STRIDE = 10_007;

    private final SplittableRandom random;
    private final long seed;

    private RandomSetup(long seed) {
        this.seed = seed;
        this.random = new SplittableRandom(seed);
    }

    /**
     * A job.
     *
     * @param seed it was drawn from
     * @param result what was logged, and what was true
     * @param rtk false for differential
     * @param rateHz records a second
     * @param layout kind of field
     * @param severalSpeeds true if the passes are driven at three speeds
     * @param lagS the true flow lag
     * @param dropM the true length from pin to drop line
     * @param barRightM what the rig file would have to say, its antenna left as it is
     * @param trueBarRightM what the right rig file says
     * @param told what a log without any noise would tell of the three
     * @param rightText the right rig file
     * @param wrongText the wrong one
     */
    record Drawn(
            long seed,
            SimResult result,
            boolean rtk,
            double rateHz,
            String layout,
            boolean severalSpeeds,
            double lagS,
            double dropM,
            double barRightM,
            double trueBarRightM,
            Told told,
            String rightText,
            String wrongText) {
        /** The same for counting: without what was logged, which is large. */
        Drawn withoutLog() {
            return new Drawn(
                    seed,
                    null,
                    rtk,
                    rateHz,
                    layout,
                    severalSpeeds,
                    lagS,
                    dropM,
                    barRightM,
                    trueBarRightM,
                    told,
                    rightText,
                    wrongText);
        }
    }

    /**
     * Lag, drop line and side as a log without any noise tells them: off by what the valves' time is from the one assumed, by
     * half the difference of lifting late and lowering early, and by where the bar's middle is.
     */
    record Told(double lagS, double dropM, double barRightM) {}

    static Drawn draw(long seed) {
        return new RandomSetup(seed).draw();
    }

    private double between(double low, double high) {
        return random.nextDouble(low, high);
    }

    private boolean chance(double p) {
        return random.nextDouble() < p;
    }

    private <T> T one(List<T> values) {
        return values.get(random.nextInt(values.size()));
    }

    private String kind = "";

    private MeteringModel metering() {
        return new MeteringModel(
                chance(0.7),
                chance(0.5),
                between(0, 0.3),
                between(0.2, 1.0),
                between(0.05, 0.2),
                between(0.05, 0.3),
                between(0.05, 0.25),
                between(0.2, 2.0),
                Double.POSITIVE_INFINITY,
                false);
    }

    private Drawn draw() {
        int rows = one(List.of(6, 8, 12, 12, 16));
        SimRig rig = (chance(0.6) ? SimRig.drawn(rows) : SimRig.carried(rows))
                .withRows(rows, one(List.of(0.508, 0.762, 0.762, 0.9144)), 1);
        double antennaRightM = chance(0.5) ? 0 : between(-0.4, 0.4);
        // Guidance keeps the tractor's middle on its line; how far the bar's middle is from there nobody knows to the
        // centimeter.
        double barM = Math.rint(10 * random.nextGaussian()) / 1000;
        rig = rig.withAntenna(between(0.5, 2.5), antennaRightM).withBarRight(barM);
        double workMps = between(1.7, 3.0);
        FieldPlan.Layout layout = layout(rig, workMps);
        // A stream of its own, so that all else is drawn as without it.
        boolean severalSpeeds = new SplittableRandom(seed ^ 0x5eedL).nextDouble() < 0.6;
        layout = severalSpeeds ? new SpeedsByPass(layout, 0.75, 1, 1.3) : layout;
        double lagS = between(0, 3);
        MeteringModel metering = metering();
        double hz = one(List.of(1.0, 2.0, 5.0, 5.0, 10.0));
        boolean rtk = chance(0.6);
        GnssModel receiver =
                !rtk ? GnssModel.differential(hz) : chance(0.5) ? GnssModel.rtk(hz) : GnssModel.rtkDrifting(hz);
        LogFormat format = chance(0.5) ? LogFormat.customaryUnits() : LogFormat.metricUnits();
        format = chance(0.3) ? format.with(LogFormat.Column.ON) : format;
        format = chance(0.3) ? format.with(LogFormat.Column.YAW_RATE) : format;
        // Some hundredths of the step the simulator delays by.
        lagS = Math.round(lagS / 0.02) * 0.02;
        double lowerEarlyM = between(-0.1, 0.1);
        double liftLateM = between(-0.1, 0.1);
        SimResult result = new Scenario(seed, rig, layout)
                .products(SimProduct.uan32(between(12, 60)).withFlowLag(lagS))
                .tractor(TractorModel.guided().withLift(0.15, lowerEarlyM, liftLateM))
                .metering(metering)
                .gnss(receiver)
                .format(format)
                .withoutGround()
                .run();
        double dropM = rig.hitchToDropM();
        double wrongDropM = Math.max(0.1, dropM + between(-2, 2));
        double sideM = between(-0.5, 0.5);
        boolean antenna = chance(0.4);
        String right = result.rigText();
        String wrong = with(right, "hitch_to_drop", wrongDropM, "m");
        wrong = antenna
                ? with(wrong, "right_of_center", antennaRightM - sideM, "m")
                : with(wrong, "bar_right_of_center", barM + sideM, "m");
        wrong = with(wrong, "flow_lag", chance(0.7) ? 0 : between(0, 3), "s");
        // An antenna set up too far left puts the bar too far right: the bar's own line would have to make up for it.
        double barRightM = antenna ? barM - sideM : barM;
        // A first-order valve is half open after ln 2 time constants; 0.5 s are allowed for opening and closing
        // together.
        double valveS = (metering.onLatencyS() + metering.offLatencyS()) / 2 + Math.log(2) * metering.valveS();
        Told told = new Told(lagS + valveS - 0.25, dropM + (liftLateM - lowerEarlyM) / 2, barRightM - barM);
        return new Drawn(seed, result, rtk, hz, kind, severalSpeeds, lagS, dropM, barRightM, barM, told, right, wrong);
    }

    /** The rig file with another figure behind a key. */
    static String with(String text, String key, double value, String unit) {
        return text.replaceFirst(
                "(?m)^(\\s*)" + key + ": \\S+ \\S+",
                "$1" + key + ": " + String.format(Locale.ROOT, "%.3f %s", value, unit));
    }

    private FieldPlan.Layout layout(SimRig rig, double workMps) {
        double bar = rig.widthM();
        int passes = (int) Math.round(between(12, 22));
        double length = between(100, 180);
        switch (random.nextInt(5)) {
            case 0, 1 -> {
                kind = "straight";
                return PassPlan.rectangle(length, passes, 0, bar)
                        .speeds(workMps, Math.min(1.8, workMps), 0.85 * workMps)
                        .skipping(one(List.of(1, 1, 4)))
                        .heading(between(0, 6));
            }
            case 2 -> {
                kind = "laps";
                double w = passes * bar;
                double[][] corners = {{0, 0}, {length, between(0, 20)}, {length + between(0, 25), w}, {15, w + 10}};
                return PassPlan.field(corners, 1)
                        .speeds(workMps, Math.min(1.8, workMps), 0.85 * workMps)
                        .heading(between(0, 6));
            }
            case 3 -> {
                kind = "arcs";
                return CurvePlan.arcs(Math.max(40, 4 * bar), length, passes)
                        .speed(workMps)
                        .endingExactly();
            }
            default -> {
                kind = "waves";
                double wave = between(150, 220);
                double amplitude = Math.min(10, wave * wave / (4 * Math.PI * Math.PI) / (2.5 * bar + passes * bar / 2));
                return CurvePlan.waves(amplitude, wave, Math.max(length, wave), passes)
                        .speed(workMps)
                        .endingExactly();
            }
        }
    }
}
