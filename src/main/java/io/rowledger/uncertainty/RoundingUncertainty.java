package io.rowledger.uncertainty;

import io.rowledger.rate.RowTotals;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.List;

/**
 * What the rounding of one product's flows to a step q does to its volumes.
 *
 * <p>A reading is off by up to q/2 either way, and how far depends only on where the flow lies between two steps: the error is a
 * sawtooth of the flow (W. Bennett, Bell System Technical Journal 27 (1948) 446-472; from memory). A flow that stands still has
 * the same error all day, u = q/√12; one that varies by several steps has every error in turn, and their mean is near 0. So the
 * sawtooth is averaged over the flow's course, with all positions of the steps against it equally likely: the mean square of that
 * average over {@value #PHASES} positions is u². The course is target times ground speed, as far as the readings follow it.
 *
 * <p>Rows that should give the same are at the same place between two steps, so that their errors add up and do not cancel. They
 * are parted by their meters' own errors: those of two rows, s each, leave ρ = exp(−4π²s²/q²) of the correlation (the sawtooth's
 * first harmonic, averaged over a normal difference of √2·s).
 *
 * <p>By hand: twelve rows that stand at 0.06 L/s in a log with steps of 0.02 L/s: 0.02/√12/0.06 = 9.6225 % of each row and, with
 * meters of 2 % (s = 0.06·2 %/√6 = 0.00049 L/s, ρ = 0.97659), √(0.97659 + 0.02341/12) of it, 9.5187 %, of the bar. Were the rows' errors
 * independent, the bar's would be 2.7778 %.
 */
final class RoundingUncertainty {
    /** Positions of the steps against the flow. */
    private static final int PHASES = 16;

    /** At most so many strips of a pass are averaged. */
    private static final int MAX_SAMPLES = 200;

    /** Meters whose bands differ by less than this share should give the same. */
    private static final double SAME_BAND = 0.01;

    private final UncertaintyInputs job;
    private final int p;
    private final double stepLPerS;
    private final double ownAccuracy;
    private final List<Channel> channels = new ArrayList<>();
    /** Meters that should give the same. */
    private final List<List<Channel>> groups = new ArrayList<>();

    /** What one meter feeds: a row, several, or the bar. */
    private static final class Channel {
        private final int[] rows;
        private final double volumeL;
        private final double bandM;
        /** The strips that are averaged, by pass. */
        private final Samples[] samples;
        /** By pass and phase: how far rounding moves the volume, in rounding steps times seconds. */
        private final double[][] errorS;

        private double onS;
        /** Mean flow of the meters that should give the same, L/s. */
        private double usualLPerS;

        Channel(int[] rows, double volumeL, double bandM, Samples[] samples) {
            this.rows = rows;
            this.volumeL = volumeL;
            this.bandM = bandM;
            this.samples = samples;
            this.errorS = new double[samples.length][PHASES];
            for (Samples ofPass : samples) {
                onS += ofPass.onS;
            }
        }
    }

    /**
     * Strips of one meter in a pass, spread over it.
     *
     * @param onS how long the meter delivered in the pass, s
     * @param weightS time that each strip stands for, s
     * @param demand target times area per second
     * @param readingLPerS flow in the log
     */
    private record Samples(double onS, double[] weightS, double[] demand, double[] readingLPerS) {}

    /**
     * @param stepLPerS to which the flows are rounded, L/s; 0 if they are not
     * @param ownAccuracy relative standard uncertainty of a meter's own error
     */
    RoundingUncertainty(UncertaintyInputs job, List<RowTotals> totals, int p, double stepLPerS, double ownAccuracy) {
        this.job = job;
        this.p = p;
        this.stepLPerS = stepLPerS;
        this.ownAccuracy = ownAccuracy;
        if (!(stepLPerS > 0)) {
            return;
        }
        for (int[] rows : MeterUncertainty.meters(job.log(), p, totals.size())) {
            Channel channel = channel(rows, totals);
            if (channel.onS > 0 && channel.volumeL > 0) {
                channels.add(channel);
                group(channel);
            }
        }
        groups.forEach(RoundingUncertainty::shareFlow);
        double elasticity = elasticity();
        channels.forEach(channel -> average(channel, elasticity));
    }

    private Channel channel(int[] rows, List<RowTotals> totals) {
        double volumeL = 0;
        double bandM = 0;
        for (int r : rows) {
            double ofRowL = totals.get(r).products().get(p).volumeL();
            volumeL += ofRowL > 0 ? ofRowL : 0;
            bandM += job.strips().rightM(r) - job.strips().leftM(r);
        }
        Samples[] samples =
                job.track().passes().stream().map(pass -> samples(rows, pass)).toArray(Samples[]::new);
        return new Channel(rows, volumeL, bandM, samples);
    }

    private Samples samples(int[] rows, Pass pass) {
        Poses poses = job.track().poses();
        int[] on = new int[pass.endStep() - pass.firstStep()];
        int count = 0;
        double onS = 0;
        for (int k = pass.firstStep(); k < pass.endStep(); k++) {
            if (on(rows, k)) {
                on[count++] = k;
                onS += poses.durationS(k);
            }
        }
        int n = Math.min(count, MAX_SAMPLES);
        double[] weightS = new double[n];
        double[] demand = new double[n];
        double[] readingLPerS = new double[n];
        double weightsS = 0;
        for (int i = 0; i < n; i++) {
            int k = on[(int) ((2L * i + 1) * count / (2L * n))];
            weightS[i] = poses.durationS(k);
            weightsS += weightS[i];
            for (int r : rows) {
                double targetLPerM2 = job.delivery().targetLPerM2(p, r, k);
                double areaM2 = job.delivery().delivering(r, k)
                        ? Math.max(0, job.strips().signedAreaM2(k, r))
                        : 0;
                demand[i] += areaM2 * (targetLPerM2 > 0 ? targetLPerM2 : 1) / weightS[i];
                readingLPerS[i] += job.delivery().flowLPerS(p, r, k);
            }
        }
        for (int i = 0; i < n; i++) {
            weightS[i] *= onS / weightsS;
        }
        return new Samples(onS, weightS, demand, readingLPerS);
    }

    private boolean on(int[] rows, int k) {
        for (int r : rows) {
            if (job.delivery().delivering(r, k)) {
                return true;
            }
        }
        return false;
    }

    private void group(Channel channel) {
        for (List<Channel> group : groups) {
            if (Math.abs(group.get(0).bandM / channel.bandM - 1) < SAME_BAND) {
                group.add(channel);
                return;
            }
        }
        groups.add(new ArrayList<>(List.of(channel)));
    }

    private static void shareFlow(List<Channel> group) {
        double volumeL = group.stream().mapToDouble(channel -> channel.volumeL).sum();
        double onS = group.stream().mapToDouble(channel -> channel.onS).sum();
        group.forEach(channel -> channel.usualLPerS = volumeL / onS);
    }

    /**
     * Returns the share by which the readings follow target and speed: the slope of relative flow over relative demand, from 0 to
     * 1. A flow that does not follow stands still, whatever the speed.
     */
    private double elasticity() {
        double covariance = 0;
        double variance = 0;
        for (Channel channel : channels) {
            double usualDemand = usualDemand(channel);
            for (Samples ofPass : channel.samples) {
                for (int i = 0; i < ofPass.weightS.length; i++) {
                    double demand = ofPass.demand[i] / usualDemand - 1;
                    covariance += ofPass.weightS[i] * demand * (ofPass.readingLPerS[i] / channel.usualLPerS - 1);
                    variance += ofPass.weightS[i] * demand * demand;
                }
            }
        }
        return variance > 0 ? Math.max(0, Math.min(1, covariance / variance)) : 0;
    }

    private static double usualDemand(Channel channel) {
        double sum = 0;
        for (Samples ofPass : channel.samples) {
            for (int i = 0; i < ofPass.weightS.length; i++) {
                sum += ofPass.weightS[i] * ofPass.demand[i];
            }
        }
        return sum / channel.onS;
    }

    /** Averages the sawtooth over the flow's course in every pass, for every position of the steps. */
    private void average(Channel channel, double elasticity) {
        double usualDemand = usualDemand(channel);
        for (int pass = 0; pass < channel.samples.length; pass++) {
            Samples ofPass = channel.samples[pass];
            for (int i = 0; i < ofPass.weightS.length; i++) {
                double demand = ofPass.demand[i] / usualDemand - 1;
                double steps = channel.usualLPerS / stepLPerS * (1 + elasticity * demand);
                for (int phase = 0; phase < PHASES; phase++) {
                    double at = steps + (phase + 0.5) / PHASES;
                    channel.errorS[pass][phase] += ofPass.weightS[i] * (0.5 - (at - Math.floor(at)));
                }
            }
        }
    }

    /** Returns the relative standard uncertainty of row r's volume: that of its meter's. */
    double ofRow(int r) {
        for (Channel channel : channels) {
            for (int row : channel.rows) {
                if (row == r) {
                    double[] all = sum(channel, 0, channel.errorS.length);
                    return stepLPerS * Math.sqrt(meanSquare(all)) / channel.volumeL;
                }
            }
        }
        return 0;
    }

    /** Returns the standard uncertainty of the bar's volume over all passes, L. */
    double ofBarL() {
        return ofBarL(0, job.track().passes().size());
    }

    /** Returns the standard uncertainty of the bar's volume in the passes [from, to), from 0, L. */
    double ofBarL(int from, int to) {
        double square = 0;
        for (List<Channel> group : groups) {
            double[] together = new double[PHASES];
            double independent = 0;
            for (Channel channel : group) {
                double[] own = sum(channel, from, to);
                independent += meanSquare(own);
                for (int phase = 0; phase < PHASES; phase++) {
                    together[phase] += own[phase];
                }
            }
            double correlation = correlation(group.get(0).usualLPerS);
            square += correlation * meanSquare(together) + (1 - correlation) * independent;
        }
        return stepLPerS * Math.sqrt(square);
    }

    /** Correlation of the rounding errors of two meters at the same flow. */
    private double correlation(double flowLPerS) {
        double ownSteps = ownAccuracy * flowLPerS / stepLPerS;
        return Math.exp(-4 * Math.PI * Math.PI * ownSteps * ownSteps);
    }

    private static double[] sum(Channel channel, int from, int to) {
        double[] sum = new double[PHASES];
        for (int pass = from; pass < to; pass++) {
            for (int phase = 0; phase < PHASES; phase++) {
                sum[phase] += channel.errorS[pass][phase];
            }
        }
        return sum;
    }

    private static double meanSquare(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return sum / values.length;
    }
}
