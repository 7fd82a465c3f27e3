package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.signal.LogLimits;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Product;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Flow lag of a product: how late its meters follow the work state or the rows' commands, less the valves' time. */
final class FlowLag {
    /**
     * Time from the switch to half of the flow, s: valves answer after 0.05 to 0.3 s and move with a time constant of 0.05 to 0.2 s; common
     * practice, no source. Opening and closing together are known to {@link #VALVE_SIGMA_S}.
     */
    private static final double OPENING_S = 0.26;

    private static final double CLOSING_S = 0.24;

    private static final double VALVE_SIGMA_S = 0.055;

    /** The same for one kind of edge alone, s. */
    private static final double ONE_VALVE_SIGMA_S = 0.08;

    /** Smallest number of edges of a kind. */
    private static final int MIN_EDGES = 3;

    /** Largest difference between on and off, s: beyond it rows also come on late or go off early. */
    private static final double UNLIKE_S = 1.0;

    /**
     * Beyond this one the rows of a bar that is switched by the work state shut off ahead of the lift, over done ground, and
     * may come on after it has been lowered, s: the earliest starts tell then.
     */
    private static final double SHUT_BEFORE_S = 0.22;

    private static final double EARLY_QUANTILE = 0.35;

    /** Between the earliest starts and a start over ground that is not covered yet, 1 sigma, s. */
    private static final double EARLIEST_SIGMA_S = 0.05;

    /** At coarser records the earliest starts are the luck of the record, s. */
    private static final double COARSE_S = 0.4;

    /**
     * A smaller difference is no contradiction, s: a valve that acts at once makes the lag look {@link #OPENING_S} shorter
     * than it is, one half as quick again as much longer, and edges are known to a record.
     */
    private static final double MIN_S = 0.35;

    /**
     * The same where only the starts tell, because flow stops too early for such a lag, s: flow that a controller brings up
     * with a time constant of up to 0.85 s looks as late (0.85 · ln 2 = 0.59).
     */
    private static final double MIN_BY_STARTS_S = 0.6;

    /** Largest distance of an edge from the median, s: farther ones belong to another switch. */
    private static final double MAX_DEVIATION_S = 1.0;

    private FlowLag() {}

    /** Mean of edges with its standard error. */
    private record Mean(double value, double error, int n) {}

    static SetupMeasurement of(LogTable log, Product product, int p, double intervalS) {
        String key = "products." + product.key() + ".flow_lag";
        if (!log.isTimed()) {
            Message why = Message.of("findings.setup.lag.untimed");
            return SetupMeasurement.undetermined(SetupParameter.FLOW_LAG, p, key, product.flowLagS(), why);
        }
        ValveDelays delays = ValveDelays.of(log, p, intervalS);
        Mean on = mean(delays.on(), intervalS);
        Mean off = mean(delays.off(), intervalS);
        if (on == null && off == null) {
            return SetupMeasurement.undetermined(SetupParameter.FLOW_LAG, p, key, product.flowLagS(), why(log, delays));
        }
        Estimate estimate = estimate(on, off);
        if (on != null && off != null && !delays.byCommand() && shutBefore(on, off)) {
            estimate = byStarts(on, delays.on(), intervalS);
            off = null;
        }
        Message basis = basis(on, off, delays.byCommand());
        if (estimate.differsFrom(product.flowLagS())) {
            double averagingS = LogLimits.of(log, p, log.outlets()).averagingS();
            basis = withAveraging(basis, estimate, product.flowLagS(), averagingS);
        }
        Message alternative = Message.of(
                "findings.setup.lag.alternative", Message.decimal(OPENING_S, 2), Message.decimal(CLOSING_S, 2));
        return SetupMeasurement.of(SetupParameter.FLOW_LAG, p, key, product.flowLagS(), estimate, basis, alternative);
    }

    /** True where off comes too early after on for any valve, but not so much that the whole bar is late or early. */
    private static boolean shutBefore(Mean on, Mean off) {
        double apart = on.value - OPENING_S - (off.value - CLOSING_S);
        double error = Math.hypot(on.error, off.error);
        return apart > SHUT_BEFORE_S + 2 * error && apart <= UNLIKE_S + 3 * error;
    }

    private static Estimate byStarts(Mean on, double[] delays, double intervalS) {
        double[] sorted = delays.clone();
        Arrays.sort(sorted);
        double early = intervalS > COARSE_S ? on.value : sorted[(int) Math.floor(EARLY_QUANTILE * (sorted.length - 1))];
        double valve = Math.hypot(ONE_VALVE_SIGMA_S, EARLIEST_SIGMA_S);
        return new Estimate(early - OPENING_S, Math.hypot(on.error, valve), MIN_BY_STARTS_S);
    }

    private static Estimate estimate(@Nullable Mean on, @Nullable Mean off) {
        if (on == null || off == null) {
            Mean one = on == null ? off : on;
            double value = (one == null ? 0 : one.value) - (on == null ? CLOSING_S : OPENING_S);
            return new Estimate(value, Math.hypot(one == null ? 1 : one.error, ONE_VALVE_SIGMA_S), MIN_S);
        }
        double late = on.value - OPENING_S;
        double trailing = off.value - CLOSING_S;
        double error = Math.hypot(on.error, off.error);
        if (Math.abs(late - trailing) > UNLIKE_S + 3 * error) {
            // A row can come on late or go off early, but no meter runs ahead of the liquid: late on leaves the off
            // edges alone, early off the on edges.
            boolean byOff = late > trailing;
            double value = byOff ? trailing : late;
            return new Estimate(value, Math.hypot(byOff ? off.error : on.error, ONE_VALVE_SIGMA_S), MIN_S);
        }
        double wOn = 1 / (on.error * on.error + ONE_VALVE_SIGMA_S * ONE_VALVE_SIGMA_S);
        double wOff = 1 / (off.error * off.error + ONE_VALVE_SIGMA_S * ONE_VALVE_SIGMA_S);
        double share = wOn / (wOn + wOff);
        double sampling = Math.hypot(share * on.error, (1 - share) * off.error);
        double valve = VALVE_SIGMA_S + (ONE_VALVE_SIGMA_S - VALVE_SIGMA_S) * Math.abs(2 * share - 1);
        return new Estimate(share * late + (1 - share) * trailing, Math.hypot(sampling, valve), MIN_S);
    }

    private static @Nullable Mean mean(double[] delays, double intervalS) {
        if (delays.length < MIN_EDGES) {
            return null;
        }
        double middle = RobustStatistics.median(delays);
        double maxS = Math.max(MAX_DEVIATION_S, 1.6 * intervalS);
        double sum = 0;
        double squares = 0;
        int n = 0;
        for (double delay : delays) {
            if (Math.abs(delay - middle) <= maxS) {
                sum += delay;
                squares += delay * delay;
                n++;
            }
        }
        if (n < MIN_EDGES) {
            return null;
        }
        double mean = sum / n;
        double variance = Math.max(0, squares / n - mean * mean) * n / (n - 1.0);
        // Edges known to a record: where all of them fall on one value, the spread says nothing of that.
        return new Mean(mean, Math.sqrt((variance + intervalS * intervalS / 12) / n), n);
    }

    private static Message basis(@Nullable Mean on, @Nullable Mean off, boolean byCommand) {
        Message after =
                byCommand ? Message.of("findings.setup.lag.command") : Message.of("findings.setup.lag.workstate");
        if (on != null && off != null) {
            return Message.of(
                    "findings.setup.lag.basis.both", on.n, seconds(on.value), after, off.n, seconds(off.value));
        }
        return on != null
                ? Message.of("findings.setup.lag.basis.on", on.n, seconds(on.value), after)
                : Message.of(
                        "findings.setup.lag.basis.off",
                        off == null ? 0 : off.n,
                        seconds(off == null ? Double.NaN : off.value),
                        after);
    }

    /** Adds that averaging explains the difference, where it does: a mean over W seconds passes half of a step W/2 after it. */
    private static Message withAveraging(Message basis, Estimate estimate, double givenS, double averagingS) {
        double halfS = averagingS / 2;
        return averagingS > 0 && !estimate.differsFrom(givenS + halfS)
                ? Message.of("findings.setup.lag.averaged", basis, Message.decimal(averagingS, 1), seconds(halfS))
                : basis;
    }

    private static Message why(LogTable log, ValveDelays delays) {
        return !log.hasDown() && !delays.byCommand()
                ? Message.of("findings.setup.lag.unlogged")
                : Message.of("findings.setup.lag.few", MIN_EDGES);
    }

    /** Seconds with two decimals; rounded first, so that a hundredth of nothing has no sign. */
    static Argument seconds(double s) {
        return Message.decimal(Math.round(s * 100) / 100.0, 2);
    }
}
