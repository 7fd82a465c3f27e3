package io.rowledger.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** The loop: steer, move, lower and lift, meter, sum up, and at each receiver's beat log. */
final class Simulation {
    private static final double MAX_S = 200_000;

    private final Scenario scenario;
    private final FieldPlan plan;
    private final Motion motion;
    private final Tractor tractor;
    private final Metering metering;
    private final List<Logging> logs = new ArrayList<>();
    private final TruthRecorder recorder;
    private final StepState s;
    private final Delay[] rowDelay;
    private final Delay[] totalDelay;
    private final double[][] rowShown;
    private final double[] totalShown;
    private final Gauss habit;
    private int span;
    private double spanStart;
    private double spanEnd;

    /** Takes the records of a run. */
    interface Sink {
        void accept(SimRecord record);
    }

    /** A receiver, and what has been summed up since its last record. */
    private static final class Logging {
        final GnssModel model;
        final Receiver receiver;
        final double[][] rowSum;
        final double[] totalSum;
        int summed;
        double lastRecordS;
        Sink sink = record -> {};

        Logging(GnssModel model, Receiver receiver, int products, int rows) {
            this.model = model;
            this.receiver = receiver;
            rowSum = new double[products][rows];
            totalSum = new double[products];
        }

        long stepsPerRecord(double dtS) {
            long steps = Math.round(1 / (model.rateHz() * dtS));
            if (Math.abs(steps * model.rateHz() * dtS - 1) > 1e-9) {
                throw new IllegalArgumentException(
                        "no whole number of steps between records at " + model.rateHz() + " Hz");
            }
            return steps;
        }
    }

    Simulation(Scenario scenario) {
        this(scenario, List.of(scenario.gnss()));
    }

    /**
     * One drive that each of these receivers logs as if it were alone. The machine must not be steered by them; the meters'
     * noise is new with every record of the first.
     */
    Simulation(Scenario scenario, List<GnssModel> receivers) {
        if (receivers.size() > 1 && scenario.isSteeredByReceiver()) {
            throw new IllegalArgumentException("what this machine does depends on its receiver");
        }
        this.scenario = scenario;
        plan = scenario.layout().lay(scenario.rig());
        TourPath path = plan.path();
        SplittableRandom random = new SplittableRandom(scenario.seed());
        motion = new Motion(scenario.rig(), path.x()[0], path.y()[0], path.headingRad()[0]);
        tractor = new Tractor(scenario.tractor(), path, motion, random.split());
        tractor.stopAt(stops(path.spans()), scenario.stopS());
        double[] bounds = bounds(path);
        ControlMap map = scenario.metering().shutOff()
                ? new ControlMap(
                        bounds, scenario.fineShutOff(), scenario.shutOffOutside() ? plan.boundary() : new double[0][])
                : null;
        metering = new Metering(scenario, map, random.split());
        int rows = scenario.rig().rows();
        int products = scenario.products().size();
        LocalMap local = new LocalMap(scenario.site().latDeg(), scenario.site().lonDeg());
        random.split();
        for (GnssModel model : receivers) {
            logs.add(new Logging(model, new Receiver(model, local, noise(scenario.seed())), products, rows));
        }
        habit = new Gauss(random.split());
        CoverRaster raster = scenario.raster() ? new CoverRaster(bounds, plan.headingRad()) : null;
        recorder = new TruthRecorder(
                rows,
                products,
                raster,
                scenario.targets() instanceof ZoneMap zones ? new ZoneTally(zones, products) : null);
        s = new StepState(scenario.rig(), products);
        rowDelay = new Delay[products];
        totalDelay = new Delay[products];
        for (int p = 0; p < products; p++) {
            rowDelay[p] = new Delay(rows);
            totalDelay[p] = new Delay(1);
        }
        rowShown = new double[products][rows];
        totalShown = new double[products];
        nextSpan();
    }

    /** The random numbers of a receiver: the third of the scenario's streams, the same for each. */
    private static SplittableRandom noise(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        random.split();
        random.split();
        return random.split();
    }

    FieldPlan plan() {
        return plan;
    }

    private double[] bounds(TourPath path) {
        double margin = scenario.rig().widthM() / 2 + scenario.rig().dropBehindAxleM() + 12;
        double[] b = {1e9, 1e9, -1e9, -1e9};
        for (int i = 0; i < path.size(); i++) {
            b[0] = Math.min(b[0], path.x()[i] - margin);
            b[1] = Math.min(b[1], path.y()[i] - margin);
            b[2] = Math.max(b[2], path.x()[i] + margin);
            b[3] = Math.max(b[3], path.y()[i] + margin);
        }
        return b;
    }

    /** Where the tractor stops with the bar lowered: in so many passes, spread over the job, off their middles. */
    private double[] stops(List<TourPath.WorkSpan> spans) {
        double[] at = new double[Math.min(scenario.stops(), spans.size())];
        for (int i = 0; i < at.length; i++) {
            TourPath.WorkSpan pass = spans.get(i * spans.size() / at.length);
            at[i] = pass.startM() + (0.35 + 0.3 * i / at.length) * (pass.endM() - pass.startM());
        }
        return at;
    }

    private void nextSpan() {
        List<TourPath.WorkSpan> spans = plan.path().spans();
        if (span >= spans.size()) {
            spanStart = Double.POSITIVE_INFINITY;
            spanEnd = Double.POSITIVE_INFINITY;
            return;
        }
        TractorModel habits = scenario.tractor();
        spanStart = spans.get(span).startM() - habits.lowerEarlyM() + habits.workJitterM() * habit.next();
        spanEnd = spans.get(span).endM() + habits.liftLateM() + habits.workJitterM() * habit.next();
        span++;
    }

    /** Runs to the end of the planned line. */
    Truth run(Sink sink) {
        return run(List.of(sink)).get(0);
    }

    /** The same with a sink for each receiver; their truths differ in nothing but the flaws of their logs. */
    List<Truth> run(List<? extends Sink> sinks) {
        for (int i = 0; i < sinks.size(); i++) {
            logs.get(i).sink = sinks.get(i);
        }
        double dtS = logs.stream().allMatch(log -> Math.rint(50 / log.model.rateHz()) == 50 / log.model.rateHz())
                ? 0.02
                : 0.01;
        long[] perRecord =
                logs.stream().mapToLong(log -> log.stepsPerRecord(dtS)).toArray();
        s.edges(motion);
        s.advance();
        boolean wasWorking = false;
        for (long n = 0; !tractor.arrived(); n++) {
            s.timeS = n * dtS;
            s.dtS = dtS;
            if (s.timeS > MAX_S) {
                throw new IllegalStateException("the tractor never arrived; it is at " + tractor.alongM() + " m of "
                        + plan.path().lengthM());
            }
            lower();
            for (int i = 0; i < perRecord.length; i++) {
                if (n % perRecord[i] == 0) {
                    log(logs.get(i));
                }
            }
            if (scenario.isSteeredByReceiver()) {
                Receiver receiver = logs.get(0).receiver;
                tractor.sense(receiver.offEastM(), receiver.offNorthM());
                s.senseX = receiver.offEastM();
                s.senseY = receiver.offNorthM();
            }
            tractor.step(dtS);
            s.edges(motion);
            s.areas();
            s.working = s.lowered && motion.speed() > 0;
            if (s.working && !wasWorking) {
                s.pass++;
            }
            wasWorking = s.working;
            metering.step(s);
            recorder.step(s);
            scenario.keepOuts().forEach(place -> place.step(s));
            meters();
            s.advance();
        }
        Logging first = logs.get(0);
        Truth truth = recorder.done(plan.boundary(), scenario.faults(), first.receiver.flaws(), first.lastRecordS);
        return logs.stream()
                .map(log -> truth.loggedBy(log.receiver.flaws(), log.lastRecordS))
                .toList();
    }

    private void lower() {
        double drop = tractor.alongM() - scenario.rig().dropBehindAxleM();
        if (s.lowered && drop >= spanEnd) {
            s.lowered = false;
            nextSpan();
        } else if (!s.lowered && !tractor.backing() && drop >= spanStart) {
            s.lowered = true;
        }
        s.toLiftM = s.lowered ? spanEnd - drop : Double.POSITIVE_INFINITY;
    }

    /** What the meters show, late by each product's lag, and its sum since the last record. */
    private void meters() {
        for (int p = 0; p < rowDelay.length; p++) {
            int steps = (int) Math.round(scenario.products().get(p).flowLagS() / s.dtS);
            System.arraycopy(rowDelay[p].next(s.meterLPerS[p], steps), 0, rowShown[p], 0, s.rows);
            totalShown[p] = totalDelay[p].next(new double[] {Metering.sum(s.trueLPerS[p])}, steps)[0];
            for (Logging log : logs) {
                log.totalSum[p] += totalShown[p];
                for (int i = 0; i < s.rows; i++) {
                    log.rowSum[p][i] += rowShown[p][i];
                }
            }
        }
        logs.forEach(log -> log.summed++);
    }

    private void log(Logging log) {
        log.lastRecordS = s.timeS;
        SimRecord record = new SimRecord();
        record.timeS = s.timeS;
        double v = motion.speed();
        double turn = v * motion.kappa();
        double ahead = v - scenario.rig().antennaRightM() * turn;
        double right = scenario.rig().antennaAheadM() * turn;
        double sin = Math.sin(motion.psi());
        double cos = Math.cos(motion.psi());
        log.receiver.fix(record, motion, new double[] {ahead * sin + right * cos, ahead * cos - right * sin});
        record.down = s.lowered;
        record.backward = v < -0.05;
        record.on = s.commandedOn.clone();
        record.targetLPerM2 = s.targetLPerM2.clone();
        if (s.timeS == 0) {
            for (int p = 0; p < s.products; p++) {
                SimProduct product = scenario.products().get(p);
                record.targetLPerM2[p] =
                        product.targetLPerM2() * scenario.targets().factor(p, s.centerX, s.centerY, 0);
            }
        }
        record.pressurePa = metering.pressurePa(s);
        record.rowPressurePa = new double[s.rows];
        for (int i = 0; i < s.rows; i++) {
            record.rowPressurePa[i] = metering.rowPressurePa(s, i);
        }
        flows(record, log);
        if (log == logs.get(0)) {
            metering.record();
        }
        for (int copies = log.receiver.copies(); copies > 0; copies--) {
            log.sink.accept(record);
        }
    }

    private void flows(SimRecord record, Logging log) {
        boolean mean = scenario.metering().meanOverInterval() && log.summed > 0;
        record.flowLPerS = new double[s.products][];
        record.totalLPerS = new double[s.products];
        for (int p = 0; p < s.products; p++) {
            record.flowLPerS[p] = mean ? log.rowSum[p].clone() : rowShown[p].clone();
            record.totalLPerS[p] = mean ? log.totalSum[p] / log.summed : totalShown[p];
            for (int i = 0; mean && i < s.rows; i++) {
                record.flowLPerS[p][i] /= log.summed;
            }
            java.util.Arrays.fill(log.rowSum[p], 0);
            log.totalSum[p] = 0;
        }
        log.summed = 0;
    }
}
