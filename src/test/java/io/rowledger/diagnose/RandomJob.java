package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import io.rowledger.sim.CurvePlan;
import io.rowledger.sim.FieldPlan;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimFault.Kind;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TargetMap;
import io.rowledger.sim.TractorModel;
import io.rowledger.sim.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A simulated job drawn at random: rig, field, speed, rate, receiver, meter noise, response, shut-off, turn compensation,
 * columns of the log, and none to three faults of random kind, row, size and time. The same seed draws the same job.
 *
 * <p>A fault is put where it can leave a sign: onset in the middle of a pass, at least two minutes of work under it;
 * crossed channels and missing turn compensation only on fields with turns. Faults of rows hit different rows,
 * at most one of a job's faults concerns the whole bar, and fewer than half of the rows err.
 */
final class RandomJob {
    /** For counting false alarms: no job has a fault. */
    private static final boolean CLEAN_ONLY = Boolean.getBoolean("scoring.clean");

    private static final List<Kind> OF_A_ROW = List.of(
            Kind.PLUGGED,
            Kind.RESTRICTED,
            Kind.LEAKING,
            Kind.METER_DROPOUT,
            Kind.METER_STUCK,
            Kind.METER_SCALE,
            Kind.CHANNELS_SWAPPED,
            Kind.SLOW_RESPONSE,
            Kind.HUNTING,
            Kind.LATE_ON,
            Kind.EARLY_OFF);
    private static final List<Kind> OF_THE_BAR = List.of(
            Kind.SUPPLY_LIMITED,
            Kind.SLOW_RESPONSE,
            Kind.HUNTING,
            Kind.LATE_ON,
            Kind.EARLY_OFF,
            Kind.OUTSIDE_SHARE,
            Kind.NO_TURN_COMPENSATION);

    /** Faults that the jobs of {@link LogForm#IDEAL} leave out: their seeds have tables of their own. */
    private static final List<Kind> MORE_OF_A_ROW =
            List.of(Kind.INTERMITTENT, Kind.INTERMITTENT, Kind.VALVE_STUCK_OPEN, Kind.METER_STUCK);

    private static final List<Kind> MORE_OF_THE_BAR = List.of(Kind.SUPPLY_FAILING, Kind.RAN_EMPTY);

    /** A row or a bar this far off must be told (1). */
    private static final double OFF = 0.08;

    /**
     * What should be found.
     *
     * @param rows from 1; empty for the whole bar
     * @param onsetS seconds since the Unix epoch
     * @param step false for slides and for what shows only at the ends of passes or in turns
     */
    record Expected(FindingKind kind, List<Integer> rows, double onsetS, boolean step) {}

    private final SplittableRandom random;
    private final long seed;
    private final LogForm form;
    private boolean turns;
    private SimRig rig;
    private double workMps;
    private double galPerAc;
    private MeteringModel metering;
    private final List<Expected> expected = new ArrayList<>();
    private final List<String> traits = new ArrayList<>();

    /** True if only what an oracle can tell is expected. */
    private final boolean asksOracle;

    private RandomJob(long seed, LogForm form, boolean asksOracle) {
        this.seed = seed;
        this.asksOracle = asksOracle;
        this.form = form;
        random = new SplittableRandom(seed);
    }

    /**
     * A job with what should be found in it, and what is in it without any sign: neither asked for nor held against.
     *
     * @param off rows from 1, and 0 for the bar, that put out 8 % or more less or more than the same job without faults
     */
    record Drawn(SimResult result, List<Expected> expected, List<Expected> unseen, List<Integer> off, String traits) {
        int rows() {
            return result.truth().rows().size();
        }
    }

    /** A job of this seed, its log ideal; all of its faults are expected, but crossed rows only where an oracle can tell them. */
    static Drawn draw(long seed) {
        return new RandomJob(seed, LogForm.IDEAL, false).draw();
    }

    /** A job of this seed, its log in this form; what an {@link Oracle} can tell is expected. */
    static Drawn draw(long seed, LogForm form) {
        return new RandomJob(seed, form, true).draw();
    }

    private static List<Integer> off(Truth with, Truth without) {
        List<Integer> off = new ArrayList<>();
        if (Math.abs(with.volumeL()[0] / without.volumeL()[0] - 1) >= OFF) {
            off.add(0);
        }
        for (int r = 0; r < with.rows().size(); r++) {
            double share =
                    with.rows().get(r).volumeL()[0] / without.rows().get(r).volumeL()[0];
            if (Math.abs(share - 1) >= OFF) {
                off.add(r + 1);
            }
        }
        return off;
    }

    /** Moves a fault that the log can't tell from the expected to the unseen ones; what reads as another kind may be told so. */
    private void hold(SimFault fault, Oracle.Verdict verdict, List<Expected> unseen) {
        if (verdict.tellable()) {
            return;
        }
        FindingKind kind = FindingKind.valueOf(fault.kind().name());
        expected.removeIf(e -> e.kind() == kind && e.rows().equals(fault.rows()) && unseen.add(e));
        for (FindingKind other : verdict.readsAs()) {
            unseen.add(new Expected(other, fault.rows(), fault.startS(), false));
        }
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

    private Drawn draw() {
        int rows = one(List.of(6, 8, 8, 12, 12, 16, 24));
        rig = chance(0.6) ? SimRig.drawn(rows) : SimRig.carried(rows);
        double share = one(List.of(1.0, 1.0, 1.0, 0.5, 1.5));
        rig = rig.withRows(rows, one(List.of(0.508, 0.762, 0.762, 0.9144)), share);
        workMps = between(1.6, 3.0);
        galPerAc = between(12, 60);
        FieldPlan.Layout layout = layout();
        metering = new MeteringModel(
                chance(0.7),
                chance(0.4),
                between(0, 0.3),
                between(0.2, 1.0),
                between(0.05, 0.2),
                between(0.05, 0.3),
                between(0.05, 0.25),
                between(0.2, 2.0),
                Double.POSITIVE_INFINITY,
                chance(0.3));
        if (form == LogForm.SLOPED_ENDS) {
            metering = metering.withShutOff(true);
        }
        Scenario plain = scenario(layout, GnssModel.perfect(1));
        Truth motion = plain.run().truth();
        double baseS = plain.site().startEpochS();
        List<SimFault> faults = faults(motion.passes());
        GnssModel receiver = receiver();
        Scenario scenario = written(layout, receiver, format());
        for (SimFault fault : faults) {
            scenario.fault(fault);
            boolean step = fault.periodS() == 0
                    && List.of(Kind.PLUGGED, Kind.RESTRICTED, Kind.LEAKING, Kind.METER_STUCK)
                            .contains(fault.kind());
            expected.add(
                    new Expected(FindingKind.valueOf(fault.kind().name()), fault.rows(), baseS + fault.startS(), step));
        }
        if (!metering.turnCompensation() && turns) {
            expected.add(new Expected(FindingKind.NO_TURN_COMPENSATION, List.of(), baseS, false));
        }
        traits.add(rows + " rows" + (rig.drawn() ? " drawn" : " carried") + " share " + share);
        traits.add(metering.toString());
        traits.add(receiver.rateHz() + " Hz fix " + receiver.fix());
        traits.add(faults.toString());
        SimResult result = scenario.run();
        List<Expected> unseen = new ArrayList<>();
        Oracle oracle = new Oracle(result, rig.rows(), metering, form.console(), motion.passes(), targetVaries);
        for (SimFault fault : faults) {
            if (asksOracle || fault.kind() == Kind.CHANNELS_SWAPPED) {
                Scenario without = written(layout, receiver, scenario.format());
                faults.stream().filter(f -> !f.equals(fault)).forEach(without::fault);
                hold(fault, oracle.tells(fault, without.run()), unseen);
            }
        }
        if (asksOracle && !metering.turnCompensation() && turns) {
            Scenario without = written(layout, receiver, scenario.format());
            without.metering(metering.withTurnCompensation(true));
            faults.forEach(without::fault);
            SimFault uniform = new SimFault(Kind.NO_TURN_COMPENSATION, List.of(), 0, Double.POSITIVE_INFINITY, 0, 0);
            hold(uniform, oracle.tells(uniform, without.run()), unseen);
        }
        return new Drawn(result, expected, unseen, off(result.truth(), motion), String.join(", ", traits));
    }

    private TargetMap targetMap = TargetMap.constant();
    private boolean targetVaries;

    private Scenario written(FieldPlan.Layout layout, GnssModel receiver, LogFormat format) {
        Scenario scenario =
                scenario(layout, receiver).format(form.format(format)).console(form.console());
        return form == LogForm.STOP_AND_GO ? scenario.stops(7, 25) : scenario;
    }

    private Scenario scenario(FieldPlan.Layout layout, GnssModel receiver) {
        Scenario scenario = new Scenario(seed, rig, layout)
                .products(SimProduct.uan32(galPerAc))
                .targets(targetMap)
                .tractor(TractorModel.guided().withWander(seed % 3 == 0 ? 0.05 : 0.02))
                .metering(metering)
                .gnss(receiver)
                .withoutGround();
        return form == LogForm.SLOPED_ENDS ? scenario.withShutOffOutside() : scenario;
    }

    private FieldPlan.Layout layout() {
        double bar = rig.widthM();
        int passes = (int) Math.round(between(6, 9));
        double length = Math.max(120, workMps * between(50, 90));
        if (chance(0.25)) {
            targetMap = TargetMap.steps(between(0, 3), between(25, 60), 1, between(0.7, 0.9), between(1.1, 1.3));
            targetVaries = true;
            traits.add("target steps");
        }
        if (form == LogForm.SLOPED_ENDS) {
            return slopedEnds(length, passes * bar);
        }
        if (form == LogForm.SHORT_FIELD) {
            traits.add("short");
            return straight(PassPlan.rectangle(between(50, 80), 2 * passes, 0, bar));
        }
        switch (random.nextInt(4)) {
            case 0 -> {
                traits.add("straight");
                return straight(PassPlan.rectangle(length, passes, 0, bar));
            }
            case 1 -> {
                traits.add("laps");
                turns = true;
                double w = Math.max(7, passes) * bar;
                double[][] corners = {{0, 0}, {length, between(0, 20)}, {length + between(0, 25), w}, {15, w + 10}};
                return PassPlan.field(corners, 1)
                        .speeds(workMps, Math.min(1.8, workMps), 0.85 * workMps)
                        .heading(between(0, 6));
            }
            case 2 -> {
                traits.add("arcs");
                turns = true;
                return CurvePlan.arcs(Math.max(30, 3.5 * bar), length, passes).speed(workMps);
            }
            default -> {
                traits.add("waves");
                turns = true;
                double wave = between(130, 220);
                // Least radius wave²/(4 π² amplitude) stays above two and a half bars, with room for the bundle.
                double amplitude = Math.min(12, wave * wave / (4 * Math.PI * Math.PI) / (2.5 * bar + passes * bar / 2));
                return CurvePlan.waves(amplitude, wave, Math.max(length, wave), passes)
                        .speed(workMps);
            }
        }
    }

    /** A field so wide whose ends slope by 6 to 50 degrees to the bar, alike or against each other. */
    private PassPlan slopedEnds(double lengthM, double widthM) {
        double near = widthM * between(0.1, 1.2);
        double far = chance(0.5) ? near : -widthM * between(0.1, 1.2);
        traits.add("ends at " + near / widthM + " and " + far / widthM);
        // The shortest pass is half as long at least.
        double u = lengthM / 2 + Math.max(lengthM / 2, near - far);
        double[][] corners = {{0, 0}, {u, 0}, {u + far, widthM}, {near, widthM}};
        return straight(PassPlan.field(corners, 0));
    }

    private PassPlan straight(PassPlan plan) {
        return plan.speeds(workMps, Math.min(1.8, workMps), 0.85 * workMps).heading(between(0, 6));
    }

    private GnssModel receiver() {
        double drawnHz = one(List.of(1.0, 2.0, 5.0, 5.0, 10.0));
        double hz = form.rateHz() > 0 ? form.rateHz() : drawnHz;
        GnssModel model =
                switch (random.nextInt(6)) {
                    case 0 -> GnssModel.differential(hz);
                    case 1 -> GnssModel.rtkFloat(hz);
                    case 2 -> GnssModel.autonomous(hz);
                    case 3 -> GnssModel.rtkDrifting(hz);
                    default -> GnssModel.rtk(hz);
                };
        return chance(0.3) ? model.withLosses(0.003, 0.002) : model;
    }

    private LogFormat format() {
        LogFormat format = chance(0.5) ? LogFormat.customaryUnits() : LogFormat.metricUnits();
        if (chance(0.3)) {
            format = format.with(LogFormat.Column.TOTAL);
        }
        if (chance(form == LogForm.SLOPED_ENDS ? 0.5 : 0.3)) {
            format = format.with(LogFormat.Column.ON);
        }
        if (chance(0.3)) {
            format = format.with(LogFormat.Column.PRESSURE, LogFormat.Column.ROW_PRESSURE);
        }
        return format;
    }

    private List<SimFault> faults(List<Truth.Pass> passes) {
        RandomFaults drawn = new RandomFaults(random, form, rig, workMps, galPerAc);
        int many = one(List.of(0, 0, 1, 1, 2, 3));
        int count = CLEAN_ONLY ? 0 : many;
        List<Integer> free = new ArrayList<>();
        for (int r = 1; r <= rig.rows(); r++) {
            free.add(r);
        }
        List<SimFault> faults = new ArrayList<>();
        boolean barTaken = false;
        int most = rig.rows() < 8 ? Math.min(count, 2) : count;
        while (faults.size() < most) {
            boolean ofBar = !barTaken && chance(0.35);
            Kind kind = kind(ofBar);
            boolean told = kind == Kind.CHANNELS_SWAPPED && (metering.turnCompensation() || metering.shutOff());
            if (kind == Kind.CHANNELS_SWAPPED && !(turns && told)) {
                continue;
            }
            if (kind == Kind.NO_TURN_COMPENSATION && !(turns && metering.turnCompensation())) {
                continue;
            }
            // Crossed channels show only where each row is told its own: in turns, or when to shut off.
            boolean swapped = kind == Kind.CHANNELS_SWAPPED || has(faults, Kind.CHANNELS_SWAPPED);
            boolean uniform = kind == Kind.NO_TURN_COMPENSATION || has(faults, Kind.NO_TURN_COMPENSATION);
            // A fault of the whole bar hides the same fault of a row.
            boolean hidden = has(faults, kind) && (ofBar || hasOfBar(faults, kind));
            if (hidden || (swapped && (uniform || has(faults, kind)))) {
                continue;
            }
            SimFault fault = ofBar ? drawn.ofBar(kind, passes) : drawn.ofRow(kind, free, passes);
            barTaken |= ofBar;
            free.removeAll(fault.rows());
            if (kind == Kind.OUTSIDE_SHARE) {
                free.remove(Integer.valueOf(1));
                free.remove(Integer.valueOf(rig.rows()));
            }
            faults.add(fault);
        }
        // The other rows' median holds while fewer than half of the rows err.
        while (2 * faults.stream().mapToInt(this::rowsHit).sum() >= rig.rows()) {
            faults.remove(faults.size() - 1);
        }
        boolean outside = faults.stream().anyMatch(f -> f.kind() == Kind.OUTSIDE_SHARE);
        faults.removeIf(f -> outside
                && f.kind() != Kind.OUTSIDE_SHARE
                && (f.rows().contains(1) || f.rows().contains(rig.rows())));
        return faults;
    }

    private Kind kind(boolean ofBar) {
        if (form != LogForm.IDEAL && chance(0.3)) {
            return one(ofBar ? MORE_OF_THE_BAR : MORE_OF_A_ROW);
        }
        return one(ofBar ? OF_THE_BAR : OF_A_ROW);
    }

    private static boolean hasOfBar(List<SimFault> faults, Kind kind) {
        return faults.stream().anyMatch(f -> f.kind() == kind && f.rows().isEmpty());
    }

    private int rowsHit(SimFault fault) {
        return fault.kind() == Kind.OUTSIDE_SHARE ? 2 : fault.rows().size();
    }

    private static boolean has(List<SimFault> faults, Kind kind) {
        return faults.stream().anyMatch(f -> f.kind() == kind);
    }
}
