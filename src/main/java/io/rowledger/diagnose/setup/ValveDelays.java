package io.rowledger.diagnose.setup;

import io.rowledger.log.LogTable;
import io.rowledger.stats.RobustStatistics;
import java.util.Arrays;

/**
 * Delay from lowering or lifting the bar, or a row's command, to the meter: the time at which the flow crosses half of the
 * row's typical flow, less the time of the switch. Both are read halfway between two records, so that the mean over many edges
 * is right at 1 Hz as well.
 */
final class ValveDelays {
    /** Search range for an edge before and after the switch, s. */
    private static final double BEFORE_S = 1.5;

    private static final double AFTER_S = 9;

    /** Time without another switch on either side, s: otherwise the edge may belong to the other one. */
    private static final double STEADY_S = 3;

    /** Share of the typical flow at which an edge is (1). */
    private static final double HALF = 0.5;

    /** Rows that the work state switches follow within this, s. */
    private static final double TOGETHER_S = 0.25;

    /** Or within this share of a record interval (1). */
    private static final double MAX_APART = 0.6;

    /**
     * Correlation of delay and row from which rows come on or go off one after another along the bar (1): they are switched by
     * place, at a sloped end. Two late rows at the end of eight reach 0.76, two halves of a bar, each at a record, 0.87.
     */
    private static final double MIN_ALONG_BAR = 0.8;

    /** Smallest share of the rows that must (1). */
    private static final double TOGETHER_SHARE = 0.6;

    private final LogTable log;
    private final double intervalS;
    private double[] onS = new double[64];
    private double[] offS = new double[64];
    private int ons;
    private int offs;
    private boolean byCommand;

    private ValveDelays(LogTable log, double intervalS) {
        this.log = log;
        this.intervalS = intervalS;
    }

    /** Returns the delays of product p's meters after the rows' commands if they are logged, else after the work state. */
    static ValveDelays of(LogTable log, int p, double intervalS) {
        ValveDelays delays = new ValveDelays(log, intervalS);
        int rows = log.outlets();
        double[] typical = new double[rows];
        boolean commands = false;
        for (int r = 0; r < rows; r++) {
            typical[r] = typical(log.flowColumn(p, r));
            commands |= log.records() > 0 && log.on(r, 0) >= 0;
        }
        if (commands) {
            delays.byCommand = true;
            delays.commands(p, typical);
        } else if (log.hasDown()) {
            delays.workState(p, typical);
        }
        return delays;
    }

    /** Returns the delays when switched on, s. */
    double[] on() {
        return Arrays.copyOf(onS, ons);
    }

    /** Returns the delays when switched off, s. */
    double[] off() {
        return Arrays.copyOf(offS, offs);
    }

    /** Returns true if the delays are after the rows' commands. */
    boolean byCommand() {
        return byCommand;
    }

    private static double typical(double[] flow) {
        int stride = Math.max(1, flow.length / 4000);
        double[] some = new double[flow.length / stride + 1];
        int n = 0;
        for (int i = 0; i < flow.length; i += stride) {
            if (flow[i] > 0) {
                some[n++] = flow[i];
            }
        }
        return RobustStatistics.median(some, n);
    }

    private void commands(int p, double[] typical) {
        for (int i = 1; i < log.records(); i++) {
            double[] on = new double[typical.length];
            double[] off = new double[typical.length];
            int n = 0;
            int m = 0;
            for (int r = 0; r < typical.length; r++) {
                int now = log.on(r, i);
                if (now == log.on(r, i - 1) || now < 0 || log.on(r, i - 1) < 0 || !steady(r, i)) {
                    continue;
                }
                double delay = delay(p, r, typical[r], i, now == 1);
                if (now == 1 && !Double.isNaN(delay)) {
                    on[n++] = delay;
                } else if (now == 0 && !Double.isNaN(delay)) {
                    off[m++] = delay;
                }
            }
            // Rows commanded at one instant share its error: one observation.
            if (n > 0) {
                addOn(RobustStatistics.median(on, n));
            }
            if (m > 0) {
                addOff(RobustStatistics.median(off, m));
            }
        }
    }

    private void workState(int p, double[] typical) {
        double[] delays = new double[typical.length];
        double[] rows = new double[typical.length];
        for (int i = 1; i < log.records(); i++) {
            int now = log.down(i);
            if (now < 0 || log.down(i - 1) < 0 || now == log.down(i - 1) || !steady(-1, i)) {
                continue;
            }
            int n = 0;
            for (int r = 0; r < typical.length; r++) {
                double delay = delay(p, r, typical[r], i, now == 1);
                if (!Double.isNaN(delay)) {
                    rows[n] = r;
                    delays[n++] = delay;
                }
            }
            // First, because the median reorders the delays.
            boolean byPlace = alongBar(rows, delays, n);
            double together = together(delays, n, typical.length);
            if (byPlace || Double.isNaN(together)) {
                continue;
            }
            if (now == 1) {
                addOn(together);
            } else {
                addOff(together);
            }
        }
    }

    /** Returns the mean of the rows that go together; NaN if too few do, because each was switched by itself. */
    private double together(double[] delays, int n, int rows) {
        double middle = RobustStatistics.median(delays, n);
        double near = Math.max(TOGETHER_S, MAX_APART * intervalS);
        double sum = 0;
        int m = 0;
        for (int k = 0; k < n; k++) {
            if (Math.abs(delays[k] - middle) <= near) {
                sum += delays[k];
                m++;
            }
        }
        return m > 0 && m >= TOGETHER_SHARE * rows ? sum / m : Double.NaN;
    }

    /** Returns true if n rows came on or went off one after another along the bar, farther apart than rows that go together. */
    private boolean alongBar(double[] rows, double[] delays, int n) {
        double meanRow = Arrays.stream(rows, 0, n).average().orElse(0);
        double meanDelay = Arrays.stream(delays, 0, n).average().orElse(0);
        double both = 0;
        double ofRows = 0;
        double ofDelays = 0;
        double earliest = Double.POSITIVE_INFINITY;
        double latest = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < n; k++) {
            both += (rows[k] - meanRow) * (delays[k] - meanDelay);
            ofRows += (rows[k] - meanRow) * (rows[k] - meanRow);
            ofDelays += (delays[k] - meanDelay) * (delays[k] - meanDelay);
            earliest = Math.min(earliest, delays[k]);
            latest = Math.max(latest, delays[k]);
        }
        return latest - earliest > Math.max(TOGETHER_S, MAX_APART * intervalS)
                && Math.abs(both) >= MIN_ALONG_BAR * Math.sqrt(ofRows * ofDelays);
    }

    private void addOn(double delay) {
        onS = ons == onS.length ? Arrays.copyOf(onS, 2 * ons) : onS;
        onS[ons++] = delay;
    }

    private void addOff(double delay) {
        offS = offs == offS.length ? Arrays.copyOf(offS, 2 * offs) : offS;
        offS[offs++] = delay;
    }

    private int state(int r, int i) {
        return r < 0 ? log.down(i) : log.on(r, i);
    }

    /** No other switch nearby and no hole in the log. */
    private boolean steady(int r, int at) {
        if (log.breakBefore(at)) {
            return false;
        }
        int i = at;
        while (i + 1 < log.records() && log.timeS(i) - log.timeS(at) < STEADY_S) {
            i++;
            if (log.breakBefore(i) || state(r, i) != state(r, at)) {
                return false;
            }
        }
        i = at - 1;
        while (i > 0 && log.timeS(at) - log.timeS(i) < STEADY_S) {
            if (log.breakBefore(i) || state(r, i - 1) != state(r, at - 1)) {
                return false;
            }
            i--;
        }
        return true;
    }

    /** Returns when row r's flow crosses half of its typical flow, s after the switch before record at; NaN if it does not. */
    private double delay(int p, int r, double typical, int at, boolean on) {
        if (!(typical > 0)) {
            return Double.NaN;
        }
        double switched = (log.timeS(at - 1) + log.timeS(at)) / 2;
        double[] flow = log.flowColumn(p, r);
        double half = HALF * typical;
        // From the record before the switch on at least: in a sparse log most edges lie between these two.
        int i = at - 1;
        while (i > 0 && switched - log.timeS(i - 1) < BEFORE_S) {
            i--;
        }
        if (on == flow[i] >= half) {
            return Double.NaN;
        }
        while (i + 1 < log.records() && log.timeS(i + 1) - switched < AFTER_S) {
            i++;
            if (log.breakBefore(i) || Double.isNaN(flow[i])) {
                return Double.NaN;
            }
            if (on == flow[i] >= half) {
                // Interpolated between the two records.
                double share = (half - flow[i - 1]) / (flow[i] - flow[i - 1]);
                return log.timeS(i - 1) + share * (log.timeS(i) - log.timeS(i - 1)) - switched;
            }
        }
        return Double.NaN;
    }
}
