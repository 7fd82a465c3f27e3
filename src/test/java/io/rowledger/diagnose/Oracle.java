package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import io.rowledger.sim.Console;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Decides whether a fault could be told from what the console wrote: the same job is simulated again without the fault, from the same
 * seed and with the same noise, and only the figures of the two logs are compared. It never sees what a detector finds.
 *
 * <p>A reading tells a fault when it is off by more than three times the meters' noise (99.7 % of a normal noise lies within), by
 * more than 2 %, the accuracy of a flow meter on a bar (common practice, no source), and by more than one and a half rounding steps,
 * since each of the two readings is rounded by half a step. It must do so for a minute of the job in all, half of the shortest
 * stretch in which a fault of a row is to be found; what shows only beside the work, for 15 s.
 *
 * <p>Beyond that the figures must tell the kind: what also another fault, or none, would write is not asked for.
 * <ul>
 * <li>intermittent: three spells of two seconds or two of eight with readings below a third of what they should be;
 * <li>meter dropout: zeros for a second or two, which averages, holds and intervals longer than that don't show, unless a total
 *     meter is logged;
 * <li>meter stuck: ten seconds of work with readings that are off; lifted alone a valve that stays open writes the same. A meter
 *     stuck at zero writes what a plugged row writes, or beside a total meter what a dead meter writes;
 * <li>late on, early off: for long enough in the mean over the passes that nine in ten lie two standard errors beyond what valves usually
 *     take (2 + 1.28 standard errors). The error of a pass: a delay between two columns of one log is a whole number of intervals T, so
 *     that a delay d shows as one more of them with probability p = d/T less its whole part, and scatters by T·√(p(1 − p)), at most
 *     for d and what valves take beside it; a hold blurs the flow alone, by H/√12. The delay that counts is the one put in or, where slopes and covered ground hide a part of it, what
 *     the readings show of it in the mean. For the whole bar only with a logged work state;
 * <li>ran empty: only with a logged work state: a bar without flow that drives on writes what a lifted one writes;
 * <li>slow response: records and averages no longer than the time constant's half;
 * <li>slow response and a failing supply of the whole bar: where the target varies only with the target logged, since a rate that is
 *     raised slowly, or lowered and left low, writes the same;
 * <li>hunting: two and a half records in a period (Nyquist, and a half for noise).
 * </ul>
 */
final class Oracle {
    private static final double METER_ERROR = 0.02;
    private static final double NOISE_SIGMAS = 3;
    private static final double QUANTA = 1.5;
    /** A test at two standard errors finds nine in ten of what lies so many beyond: 2 + 1.28, the normal quantile of 0.9. */
    private static final double FOUND_SIGMAS = 3.28;

    private static final double SHOWN_S = 60;
    private static final double BESIDE_WORK_S = 15;
    private static final double LITERS_PER_GALLON = 3.785411784;
    private static final Set<SimFault.Kind> AT_ENDS = Set.of(SimFault.Kind.LATE_ON, SimFault.Kind.EARLY_OFF);

    private final SimResult result;
    private final int rows;
    private final double minShare;
    private final double quantumLPerS;
    private final Console console;
    private final double intervalS;
    private final List<Truth.Pass> passes;
    private final boolean targetKnown;

    /** The verdict; where a fault can't be told, other kinds that the figures say as well. */
    record Verdict(boolean tellable, List<FindingKind> readsAs) {
        static final Verdict YES = new Verdict(true, List.of());
        static final Verdict NO = new Verdict(false, List.of());
    }

    /**
     * Of a log.
     *
     * @param targetVaries true if the target is not the same all over the field
     */
    Oracle(
            SimResult result,
            int rows,
            MeteringModel metering,
            Console console,
            List<Truth.Pass> passes,
            boolean targetVaries) {
        this.result = result;
        targetKnown = !targetVaries || result.logs(LogFormat.Column.TARGET);
        this.rows = rows;
        this.console = console;
        this.passes = List.copyOf(passes);
        minShare = Math.max(METER_ERROR, NOISE_SIGMAS * metering.meterNoisePct() / 100);
        quantumLPerS = console.quantumPerMin() * LITERS_PER_GALLON / 60;
        double[] steps = new double[Math.max(1, result.records() - 1)];
        for (int i = 0; i + 1 < result.records(); i++) {
            steps[i] = result.timeS(i + 1) - result.timeS(i);
        }
        java.util.Arrays.sort(steps);
        intervalS = steps[steps.length / 2];
    }

    /** Whether the fault can be told, given the same job without it. */
    Verdict tells(SimFault fault, SimResult without) {
        List<Integer> shown = rowsOf(fault);
        double everywhereS = shownS(without, shown, false);
        double workingS = shownS(without, shown, true);
        double smearS = console.averagingS() + console.holdS() + intervalS;
        boolean down = result.logs(LogFormat.Column.DOWN);
        boolean enough = everywhereS >= SHOWN_S;
        boolean tellable =
                switch (fault.kind()) {
                    case INTERMITTENT -> enough && spells(without, shown.get(0));
                    case METER_DROPOUT -> enough && (smearS <= 2.5 || result.logs(LogFormat.Column.TOTAL));
                    case METER_STUCK -> enough && workingS >= 10;
                    case VALVE_STUCK_OPEN -> everywhereS >= BESIDE_WORK_S;
                    case RAN_EMPTY -> everywhereS >= BESIDE_WORK_S && down;
                    case LATE_ON, EARLY_OFF ->
                        beyondUsual(fault, everywhereS, without)
                                && (down || !fault.rows().isEmpty());
                    case SLOW_RESPONSE ->
                        enough
                                && Math.max(intervalS, console.averagingS()) <= fault.size() / 2
                                && (targetKnown || !fault.rows().isEmpty());
                    case SUPPLY_FAILING -> enough && targetKnown;
                    case HUNTING -> enough && fault.periodS() >= 2.5 * Math.max(intervalS, console.holdS());
                    default -> enough;
                };
        if (fault.kind() == SimFault.Kind.METER_STUCK && stuckAtZero(fault)) {
            return new Verdict(false, List.of(FindingKind.PLUGGED, FindingKind.METER_DROPOUT));
        }
        return tellable ? Verdict.YES : Verdict.NO;
    }

    private List<Integer> rowsOf(SimFault fault) {
        return switch (fault.kind()) {
            case OUTSIDE_SHARE, NO_TURN_COMPENSATION -> List.of(1, rows);
            default -> fault.rows().isEmpty() ? List.of((rows + 1) / 2) : fault.rows();
        };
    }

    private boolean shows(double is, double was) {
        return Math.abs(is - was) > Math.max(minShare * Math.max(is, was), QUANTA * quantumLPerS);
    }

    private double stepS(int record) {
        return Math.min(result.timeS(record + 1) - result.timeS(record), 10);
    }

    /** Time in which the readings of each row show the fault, s; the row that shows less counts. */
    private double shownS(SimResult without, List<Integer> shown, boolean working) {
        double least = Double.POSITIVE_INFINITY;
        int records = Math.min(result.records(), without.records());
        for (int row : shown) {
            double sumS = 0;
            for (int i = 0; i + 1 < records; i++) {
                boolean counts = !working || result.working(i);
                boolean told = counts && shows(result.flowLPerS(i, 0, row), without.flowLPerS(i, 0, row));
                sumS += told ? stepS(i) : 0;
            }
            least = Math.min(least, sumS);
        }
        return least;
    }

    /** True if readings below a third of what they should be make three spells of two seconds, or two of eight. */
    private boolean spells(SimResult without, int row) {
        List<Double> lengths = new ArrayList<>();
        double lowS = 0;
        int records = Math.min(result.records(), without.records());
        for (int i = 0; i + 1 < records; i++) {
            double was = without.flowLPerS(i, 0, row);
            boolean low = result.working(i) && was > QUANTA * quantumLPerS && 3 * result.flowLPerS(i, 0, row) < was;
            if (low) {
                lowS += stepS(i);
            } else if (result.working(i) && was > QUANTA * quantumLPerS) {
                lengths.add(lowS);
                lowS = 0;
            }
        }
        lengths.add(lowS);
        return lengths.stream().filter(x -> x >= 2).count() >= 3
                || lengths.stream().filter(x -> x >= 8).count() >= 2;
    }

    private boolean stuckAtZero(SimFault fault) {
        int row = fault.rows().get(0);
        for (int i = 0; i < result.records(); i++) {
            double at = result.timeS(i);
            if (at > fault.startS() + console.averagingS() + console.holdS() && at < fault.endS()) {
                return result.flowLPerS(i, 0, row) < 1e-9;
            }
        }
        return false;
    }

    private boolean beyondUsual(SimFault fault, double shownS, SimResult without) {
        boolean on = fault.kind() == SimFault.Kind.LATE_ON;
        int seen = (int) passes.stream()
                .filter(pass -> pass.endS() > fault.startS() && pass.startS() < fault.endS())
                .filter(pass -> delivers(without, rowsOf(fault).get(0), pass))
                .count();
        double usualS = on ? 0.75 : 0.8;
        double delayS = Math.min(fault.size(), shownS / Math.max(1, seen));
        double blurS = (Math.max(0, console.holdS() - intervalS) + console.averagingS() / 4) / Math.sqrt(12);
        double errorS = Math.hypot(intervalS * scatter(delayS, usualS), blurS);
        return AT_ENDS.contains(fault.kind())
                && seen >= 3
                && delayS >= usualS + FOUND_SIGMAS * errorS / Math.sqrt(seen);
    }

    /** √(p(1 − p)), at its largest for a delay and up to what is usual beside it (1). */
    private double scatter(double delayS, double besideS) {
        double most = 0;
        for (int i = 0; i <= 10; i++) {
            double intervals = (delayS + i * besideS / 10) / intervalS;
            double part = intervals - Math.floor(intervals);
            most = Math.max(most, Math.sqrt(part * (1 - part)));
        }
        return most;
    }

    /** True if row r reads half of its usual flow or more somewhere in a pass. */
    private static boolean delivers(SimResult log, int row, Truth.Pass pass) {
        double most = 0;
        double inPass = 0;
        for (int i = 0; i < log.records(); i++) {
            double flow = log.flowLPerS(i, 0, row);
            most = Math.max(most, flow);
            inPass = log.timeS(i) >= pass.startS() && log.timeS(i) <= pass.endS() ? Math.max(inPass, flow) : inPass;
        }
        return 2 * inPass >= most;
    }
}
