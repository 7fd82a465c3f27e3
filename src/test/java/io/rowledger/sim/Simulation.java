package io.rowledger.sim;

import java.util.List;
import java.util.SplittableRandom;

/** The loop: steer, move, lower and lift, meter, sum up, and at the receiver's beat log. */
final class Simulation {
    private static final double MAX_S = 200_000;

    private final Scenario scenario;
    private final FieldPlan plan;
    private final Motion motion;
    private final Tractor tractor;
    private final Metering metering;
    private final Receiver receiver;
    private final TruthRecorder recorder;
    private final StepState s;
    private final Delay[] rowDelay;
    private final Delay[] totalDelay;
    private final double[][] rowShown;
    private final double[] totalShown;
    private final double[][] rowSum;
    private final double[] totalSum;
    private int summed;
    private final Gauss habit;
    private int span;
    private double spanStart;
    private double spanEnd;

    /** Takes the records of a run. */
    interface Sink {
        void accept(SimRecord record);
    }

    Simulation(Scenario scenario) {
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
        receiver = new Receiver(
                scenario.gnss(),
                new LocalMap(scenario.site().latDeg(), scenario.site().lonDeg()),
                random.split());
        habit = new Gauss(random.split());
        int rows = scenario.rig().rows();
        int products = scenario.products().size();
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
        rowSum = new double[products][rows];
        totalSum = new double[products];
        nextSpan();
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
        double rate = scenario.gnss().rateHz();
        double dtS = Math.rint(50 / rate) == 50 / rate ? 0.02 : 0.01;
        long perRecord = Math.round(1 / (rate * dtS));
        if (Math.abs(perRecord * rate * dtS - 1) > 1e-9) {
            throw new IllegalArgumentException("no whole number of steps between records at " + rate + " Hz");
        }
        s.edges(motion);
        s.advance();
        double lastRecordS = 0;
        boolean wasWorking = false;
        for (long n = 0; !tractor.arrived(); n++) {
            s.timeS = n * dtS;
            s.dtS = dtS;
            if (s.timeS > MAX_S) {
                throw new IllegalStateException("the tractor never arrived; it is at " + tractor.alongM() + " m of "
                        + plan.path().lengthM());
            }
            lower();
            if (n % perRecord == 0) {
                log(sink);
                lastRecordS = s.timeS;
            }
            if (scenario.isSteeredByReceiver()) {
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
        return recorder.done(plan.boundary(), scenario.faults(), receiver.flaws(), lastRecordS);
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
            totalSum[p] += totalShown[p];
            for (int i = 0; i < s.rows; i++) {
                rowSum[p][i] += rowShown[p][i];
            }
        }
        summed++;
    }

    private void log(Sink sink) {
        SimRecord record = new SimRecord();
        record.timeS = s.timeS;
        double v = motion.speed();
        double turn = v * motion.kappa();
        double ahead = v - scenario.rig().antennaRightM() * turn;
        double right = scenario.rig().antennaAheadM() * turn;
        double sin = Math.sin(motion.psi());
        double cos = Math.cos(motion.psi());
        receiver.fix(record, motion, new double[] {ahead * sin + right * cos, ahead * cos - right * sin});
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
        flows(record);
        metering.record();
        for (int copies = receiver.copies(); copies > 0; copies--) {
            sink.accept(record);
        }
    }

    private void flows(SimRecord record) {
        boolean mean = scenario.metering().meanOverInterval() && summed > 0;
        record.flowLPerS = new double[s.products][];
        record.totalLPerS = new double[s.products];
        for (int p = 0; p < s.products; p++) {
            record.flowLPerS[p] = mean ? rowSum[p].clone() : rowShown[p].clone();
            record.totalLPerS[p] = mean ? totalSum[p] / summed : totalShown[p];
            for (int i = 0; mean && i < s.rows; i++) {
                record.flowLPerS[p][i] /= summed;
            }
            java.util.Arrays.fill(rowSum[p], 0);
            totalSum[p] = 0;
        }
        summed = 0;
    }
}
