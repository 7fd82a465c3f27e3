package io.rowledger.uncertainty;

import io.rowledger.rate.Delivery;
import io.rowledger.rate.Rates;
import io.rowledger.stats.WeightedMoments;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How far a row's true volume may lie from the metered one because its meter is faulty or its flow unknown.
 *
 * <p>While a meter is in question, the row gave what the meter says or what the other rows gave, band for band, or something
 * between: with the metered volume V and the peers' volume P the truth's middle lies anywhere in [min(V, P), max(V, P)]. While
 * a flow is unknown, it lies in [0, P]; if no other row's flow is known either, P is target × area × the bar's own volume ÷
 * target volume where its flow is known. Where the log shows its flow to be later than the rig file says, a pass gave what it
 * metered or what it would have by the later flow, or something between. Swapped rows have each other's volume.
 *
 * <p>Rows differ from their peers, which goes into the normal part. By how much, the n rows that are in order tell: with the standard
 * deviation s of their flows a meter of band and time, and each meter's own error u, which the log does not show, another row lies
 * within (s² + u²)·(1 + 1/n) of their mean, s² with the variance of a t distribution, (n − 1)/(n − 3) of its scale's square.
 *
 * <p>By hand: of twelve rows that give 0.06 L/s each for 200 s, one is blank: the bar metered 132 L and put down 132 to 144 L.
 */
final class VolumeBounds {
    /** Standard uncertainty of a row's volume against its peers' if too few tell it, as a share: common practice, no source. */
    private static final double PEER_SIGMA = 0.05;

    /** Number of rows in order that tell how rows differ. */
    private static final int MIN_PEERS = 4;

    /** If fewer of the peers deliver, the bar is shutting off and the row is taken as off, too (1). */
    private static final double MIN_PEERS_ON = 1.0 / 3;

    /** A flow of more rounding steps never reads as nothing while the row is on. */
    private static final int FEW_STEPS = 5;

    private final UncertaintyInputs job;
    private final Delivery delivery;
    private final Poses poses;
    private final double[] bandM;
    private final double[] meteredRatio;
    /** By product, the step to which flows are rounded, L/s. */
    private final double[] stepLPerS;

    /** By product, standard uncertainty of a row's volume against its peers', as a share. */
    private final double[] peerSigma;

    private final int rows;
    /** Sums by product, pass and row. */
    private final Sums[][][] sums;

    /** Of one product, pass and row; liters and m². */
    private static final class Sums {
        private double faultL;
        /** What the pass gains if its flow is as late as the log shows it to be. */
        private double lateL;

        private double trailingL;

        private double swappedL;
        private double unknownL;
        private double estimateL;
        private double maybeAppliedM2;
        private double maybeNotAppliedM2;
        /** Of the volumes of faults and of unknown flow, what does not depend on that ground. */
        private double restFaultL;

        private double restUnknownL;
        /** What lies on the ground that may have been applied, and what lacks on the ground that may not. */
        private double withAppliedL;

        private double withNotAppliedL;

        void add(Sums other) {
            faultL += other.faultL;
            lateL += other.lateL;
            trailingL += other.trailingL;
            swappedL += other.swappedL;
            unknownL += other.unknownL;
            estimateL += other.estimateL;
            maybeAppliedM2 += other.maybeAppliedM2;
            maybeNotAppliedM2 += other.maybeNotAppliedM2;
            restFaultL += other.restFaultL;
            restUnknownL += other.restUnknownL;
            withAppliedL += other.withAppliedL;
            withNotAppliedL += other.withNotAppliedL;
        }
    }

    /**
     * What the truth's middle may be off by.
     *
     * @param lowL at most 0, L; NaN if it is not known
     * @param highL at least 0, L; NaN if it is not known
     * @param sigmaL standard uncertainty of either end, L
     */
    record Bias(double lowL, double highL, double sigmaL) {
        static final Bias NONE = new Bias(0, 0, 0);

        /** The bias of the volume times a factor of at least 0. */
        Bias times(double factor) {
            return new Bias(lowL * factor, highL * factor, sigmaL * factor);
        }

        /** The bias of a sum: faults may all lie to one side. */
        Bias plus(Bias other) {
            return new Bias(lowL + other.lowL, highL + other.highL, Math.hypot(sigmaL, other.sigmaL));
        }
    }

    /**
     * What the truth's middle may be off by where it is held against ground: ground that may have been applied has its liquid on
     * it, so that both are there or neither is.
     *
     * @param lowL at most 0, L: what does not depend on such ground
     * @param highL at least 0, L: the same
     * @param withAppliedL on the ground that may have been applied, L
     * @param withNotAppliedL what lacks on the ground that may not have been applied, L; at most 0
     */
    record OnGround(double lowL, double highL, double withAppliedL, double withNotAppliedL) {
        static final OnGround NONE = new OnGround(0, 0, 0, 0);

        OnGround plus(OnGround other) {
            return new OnGround(
                    lowL + other.lowL,
                    highL + other.highL,
                    withAppliedL + other.withAppliedL,
                    withNotAppliedL + other.withNotAppliedL);
        }

        OnGround times(double factor) {
            return new OnGround(lowL * factor, highL * factor, withAppliedL * factor, withNotAppliedL * factor);
        }
    }

    VolumeBounds(UncertaintyInputs job, Rates rates) {
        this.job = job;
        this.delivery = job.delivery();
        this.poses = job.track().poses();
        this.rows = job.strips().rows();
        this.bandM = new double[rows];
        for (int r = 0; r < rows; r++) {
            bandM[r] = job.strips().rightM(r) - job.strips().leftM(r);
        }
        int products = delivery.products();
        this.meteredRatio = new double[products];
        this.peerSigma = new double[products];
        this.stepLPerS = new double[products];
        List<Pass> passes = job.track().passes();
        sums = new Sums[products][passes.size()][rows];
        for (int p = 0; p < products; p++) {
            double ratio = rates.volumeL(p) / rates.meteredTargetL(p);
            meteredRatio[p] = Double.isFinite(ratio) && ratio > 0 ? ratio : 1;
            peerSigma[p] = peerSigma(p, rates);
            stepLPerS[p] = MeterUncertainty.digitLPerS(job.log(), p);
            for (int r = 0; r < rows; r++) {
                List<MeterFault> faults = faults(p, r);
                boolean clean = faults.isEmpty() && delivery.allKnown(p, r) && !coarse(p, r, rates);
                for (int i = 0; i < passes.size(); i++) {
                    sums[p][i][r] = clean ? new Sums() : sum(p, r, passes.get(i), faults);
                    sums[p][i][r].lateL = lateL(p, r, i);
                    sums[p][i][r].trailingL = trailingL(p, r, i);
                }
            }
        }
    }

    private double peerSigma(int p, Rates rates) {
        double own = MeterUncertainty.ownAccuracy(job.rig().products().get(p));
        WeightedMoments flow = new WeightedMoments();
        int n = 0;
        for (int r = 0; r < rows; r++) {
            double onS = MeterUncertainty.onS(job, r, 0, poses.steps());
            double volumeL = rates.rows().get(r).products().get(p).volumeL();
            if (faults(p, r).isEmpty() && delivery.allKnown(p, r) && volumeL > 0 && onS > 0) {
                flow.add(volumeL / (onS * bandM[r]), 1);
                n++;
            }
        }
        if (n < MIN_PEERS) {
            return PEER_SIGMA;
        }
        double spread = flow.sampleDeviation() / flow.mean();
        return Math.sqrt((spread * spread * (n - 1) / (n - 3.0) + own * own) * (1 + 1.0 / n));
    }

    /** True if the row's usual flow is so few rounding steps that a slower one may read as nothing. */
    private boolean coarse(int p, int r, Rates rates) {
        double usualL = FEW_STEPS * stepLPerS[p] * MeterUncertainty.onS(job, r, 0, poses.steps());
        return stepLPerS[p] > 0 && !(rates.rows().get(r).products().get(p).volumeL() > usualL);
    }

    /**
     * True if rounding may have made a zero of the row's flow: its target is below one rounding step, so that less than half a step
     * reads as nothing.
     */
    private boolean roundedAway(int p, int r, int k) {
        double targetLPerS =
                delivery.targetLPerM2(p, r, k) * Math.max(0, job.strips().signedAreaM2(k, r)) / poses.durationS(k);
        boolean commandedOff = poses.record(k) >= 0 && job.log().on(r, poses.record(k)) == 0;
        return delivery.flowLPerS(p, r, k) == 0 && targetLPerS > 0 && targetLPerS < stepLPerS[p] && !commandedOff;
    }

    private List<MeterFault> faults(int p, int r) {
        List<MeterFault> out = new ArrayList<>();
        for (MeterFault fault : job.faults()) {
            if (fault.products().contains(p) && fault.rows().contains(r + 1)) {
                out.add(fault);
            }
        }
        return out;
    }

    private Sums sum(int p, int r, Pass pass, List<MeterFault> faults) {
        Sums s = new Sums();
        for (int k = pass.firstStep(); k < pass.endStep(); k++) {
            boolean known = delivery.known(p, r, k);
            MeterFault fault = covering(faults, r, poses.timeS(k));
            if (known && fault == null) {
                if (roundedAway(p, r, k)) {
                    addRoundedAway(s, p, r, k);
                }
                continue;
            }
            double seconds = poses.durationS(k);
            double meteredL = delivery.flowLPerS(p, r, k) * seconds;
            double areaM2 = Math.max(0, job.strips().signedAreaM2(k, r));
            if (known && fault != null && fault.swapped()) {
                s.swappedL += delivery.flowLPerS(p, fault.other(r + 1) - 1, k) * seconds - meteredL;
                continue;
            }
            double peerL = peerLPerS(p, r, k) * seconds;
            double estimateL = Double.isNaN(peerL) ? delivery.targetLPerM2(p, r, k) * areaM2 * meteredRatio[p] : peerL;
            if (known) {
                s.faultL += estimateL - meteredL;
            } else {
                s.unknownL += estimateL;
            }
            if (fault == null || fault.lasts(poses.timeS(k))) {
                s.estimateL += estimateL;
            }
            double changeL = known ? estimateL - meteredL : estimateL;
            // A NaN estimate may be anything, so the ground may be served.
            boolean maybeOn = !(estimateL <= 0);
            if (!delivery.delivering(r, k) && maybeOn) {
                s.maybeAppliedM2 += areaM2;
                s.withAppliedL += changeL;
            } else if (delivery.delivering(r, k) && !maybeOn) {
                s.maybeNotAppliedM2 += areaM2;
                s.withNotAppliedL += changeL;
            } else if (known) {
                s.restFaultL += changeL;
            } else {
                s.restUnknownL += changeL;
            }
        }
        return s;
    }

    /** Adds up to half a rounding step of flow that reads as nothing. */
    private void addRoundedAway(Sums s, int p, int r, int k) {
        double mostL = stepLPerS[p] / 2 * poses.durationS(k);
        s.faultL += mostL;
        if (delivery.delivering(r, k)) {
            s.restFaultL += mostL;
        } else {
            s.maybeAppliedM2 += Math.max(0, job.strips().signedAreaM2(k, r));
            s.withAppliedL += mostL;
        }
    }

    /**
     * What pass i of row r gains if its flow is late: what was metered after its end for as long, up to the next pass, less what was
     * metered at its start; the other way round if it is early, L.
     */
    private double lateL(int p, int r, int i) {
        double lateS = job.lateS().get(p);
        if (lateS == 0) {
            return 0;
        }
        List<Pass> passes = job.track().passes();
        int first = passes.get(i).firstStep();
        int end = passes.get(i).endStep();
        int before = i == 0 ? 0 : passes.get(i - 1).endStep();
        return lateS > 0
                ? meteredL(p, r, end, nextStart(i), lateS) - meteredL(p, r, first, end, lateS)
                : meteredL(p, r, first - 1, before - 1, -lateS) - meteredL(p, r, end - 1, first - 1, -lateS);
    }

    /**
     * Returns what pass i of row r gains if its flow is late because a reading is the mean over the time before it, L. Half of the flow
     * shows after half of that time, the rest trails for as long again, and nothing at the start comes from before the pass. For example, 1 L/s in
     * means over 5 s look 2.5 s late; 2.5 L stand after the end, where a delay of 2.5 s alone makes 1.875 L less 0.625 L.
     */
    private double trailingL(int p, int r, int i) {
        double lateS = job.lateS().get(p);
        return lateS > 0 ? meteredL(p, r, job.track().passes().get(i).endStep(), nextStart(i), 2 * lateS) : 0;
    }

    /** Returns the first step of the pass after pass i, or the number of steps. */
    private int nextStart(int i) {
        List<Pass> passes = job.track().passes();
        return i + 1 == passes.size() ? poses.steps() : passes.get(i + 1).firstStep();
    }

    /** What row r metered in so many seconds from step k on, up or down, before step limit, L. */
    private double meteredL(int p, int r, int k, int limit, double seconds) {
        double volumeL = 0;
        double leftS = seconds;
        for (int step = k; step != limit && leftS > 0; step += limit > k ? 1 : -1) {
            double inS = Math.min(leftS, poses.durationS(step));
            volumeL += delivery.known(p, r, step) ? delivery.flowLPerS(p, r, step) * inS : 0;
            leftS -= inS;
        }
        return volumeL;
    }

    private static @Nullable MeterFault covering(List<MeterFault> faults, int r, double timeS) {
        for (MeterFault fault : faults) {
            if (fault.covers(r + 1, timeS)) {
                return fault;
            }
        }
        return null;
    }

    /**
     * Returns the flow that the other rows in step k mean for outlet r, band for band, L/s: 0 if most of them are off or the
     * row is commanded off; NaN if no other row's flow is known.
     */
    private double peerLPerS(int p, int r, int k) {
        if (poses.record(k) >= 0 && job.log().on(r, poses.record(k)) == 0) {
            return 0;
        }
        double flowLPerS = 0;
        double onM = 0;
        int on = 0;
        int peers = 0;
        for (int j = 0; j < rows; j++) {
            if (j == r || !delivery.known(p, j, k) || faulty(j, poses.timeS(k))) {
                continue;
            }
            peers++;
            if (delivery.delivering(j, k)) {
                on++;
                flowLPerS += delivery.flowLPerS(p, j, k);
                onM += bandM[j];
            }
        }
        if (peers == 0) {
            return Double.NaN;
        }
        return on == 0 || on < MIN_PEERS_ON * peers ? 0 : flowLPerS / onM * bandM[r];
    }

    private boolean faulty(int r, double timeS) {
        return job.faults().stream().anyMatch(fault -> fault.covers(r + 1, timeS));
    }

    private Sums ofJob(int p, int r) {
        Sums all = new Sums();
        for (Sums[] ofPass : sums[p]) {
            all.add(ofPass[r]);
        }
        return all;
    }

    /** Returns the bias of row r's volume over the job, from 0. */
    Bias ofRow(int p, int r) {
        return bias(ofJob(p, r), true, peerSigma[p]);
    }

    /** Returns the part of it that stems from faults alone: what the flow while it was known may be off by. */
    Bias ofRowWhereKnown(int p, int r) {
        Sums all = ofJob(p, r);
        all.unknownL = 0;
        return bias(all, true, peerSigma[p]);
    }

    /** Returns the bias of the bar's volume over the job; swapped rows leave it as it is. */
    Bias ofBar(int p) {
        Bias bar = Bias.NONE;
        for (int r = 0; r < rows; r++) {
            bar = bar.plus(bias(ofJob(p, r), false, peerSigma[p]));
        }
        return bar;
    }

    /** Returns the bias of the bar's volume over the job where it is held against the ground. */
    OnGround onGround(int p) {
        OnGround bar = OnGround.NONE;
        for (int r = 0; r < rows; r++) {
            Sums all = ofJob(p, r);
            bar = bar.plus(new OnGround(
                    Math.min(0, all.restFaultL) + Math.min(0, all.lateL),
                    Math.max(0, all.restFaultL) + Math.max(all.trailingL, all.lateL) + all.restUnknownL,
                    all.withAppliedL,
                    all.withNotAppliedL));
        }
        return bar;
    }

    /** Returns the bias of the bar's volume in pass i, from 0. */
    Bias ofPass(int p, int i) {
        Bias bar = Bias.NONE;
        for (int r = 0; r < rows; r++) {
            bar = bar.plus(bias(sums[p][i][r], false, peerSigma[p]));
        }
        return bar;
    }

    /** Returns the part of it that stems from faults alone. */
    Bias ofPassWhereKnown(int p, int i) {
        Bias bar = Bias.NONE;
        for (int r = 0; r < rows; r++) {
            Sums known = new Sums();
            known.add(sums[p][i][r]);
            known.unknownL = 0;
            bar = bar.plus(bias(known, false, peerSigma[p]));
        }
        return bar;
    }

    private static Bias bias(Sums s, boolean swaps, double peerSigma) {
        double swappedL = swaps ? s.swappedL : 0;
        return new Bias(
                Math.min(0, s.faultL) + Math.min(0, swappedL) + Math.min(0, s.lateL),
                Math.max(0, s.faultL) + Math.max(0, swappedL) + Math.max(s.trailingL, s.lateL) + s.unknownL,
                peerSigma * s.estimateL);
    }

    /** Returns the area of row r that it may have served although the log shows no flow, m²: the most of its products. */
    double maybeAppliedM2(int r) {
        double most = 0;
        for (int p = 0; p < sums.length; p++) {
            most = Math.max(most, ofJob(p, r).maybeAppliedM2);
        }
        return most;
    }

    /** Returns the area of row r that it may not have served although the log shows flow, m²: the most of its products. */
    double maybeNotAppliedM2(int r) {
        double most = 0;
        for (int p = 0; p < sums.length; p++) {
            most = Math.max(most, ofJob(p, r).maybeNotAppliedM2);
        }
        return most;
    }
}
