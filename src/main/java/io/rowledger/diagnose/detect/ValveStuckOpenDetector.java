package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.finding.FindingKind;
import io.rowledger.log.LogTable;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * A row that flows while the bar is lifted, or while it is commanded off, and the other rows don't. Needs a logged work state
 * or commands. What runs out of the hoses in the first seconds is no sign, and neither is a stuck meter, which shows one figure
 * lifted and working.
 */
public final class ValveStuckOpenDetector implements Detector {
    /** Time after a lift or a command in which flow runs out, s. */
    private static final double RUN_OUT_S = 3;

    /** Share of the row's usual flow from which it flows; below it the other rows stand (1). */
    private static final double FLOWS = 0.08;

    private static final double STANDS = 0.03;

    /** A lift counts when the row flowed in it for so long, s. */
    private static final double MIN_IN_A_LIFT_S = 2;

    /** In a log without a work state, at pointed ends a row may flow alone for a few seconds, s. */
    private static final double MIN_WITHOUT_STATE_S = 8;

    private static final int MIN_LIFTS = 2;
    private static final double MIN_TOTAL_S = 10;

    /** A single lift is enough when it lasts this long, s. */
    private static final double MIN_SINGLE_S = 25;

    /** A row that gives less than this share of the median row while working has no flow to stay open with (1). */
    private static final double MIN_USUAL = 0.1;

    /** Rows with these faults show flow while they should stand for another reason. */
    private static final Set<FindingKind> NOT_OWN = EnumSet.of(FindingKind.METER_STUCK, FindingKind.CHANNELS_SWAPPED);

    /** Sums of a row over lifts, or over times commanded off. */
    private static final class Sums {
        private int lifts;
        private double seconds;
        /** Without each first record, which may stand for a moment, s. */
        private double certainS;

        private double litres;
        private double fromS = Double.NaN;
        private double toS = Double.NaN;

        boolean enough() {
            return (lifts >= MIN_LIFTS && certainS >= MIN_TOTAL_S) || (lifts >= 1 && certainS >= MIN_SINGLE_S);
        }
    }

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        double[] usual = e.ofRows(r -> usual(e, r)).stream().mapToDouble(x -> x).toArray();
        List<Sums> ofLifts = e.ofRows(r -> sums(e, r, usual, false));
        for (int r = 0; r < e.rows(); r++) {
            if (otherwiseFaulty(e, r) || !(usual[r] > MIN_USUAL * RobustStatistics.median(usual))) {
                continue;
            }
            Sums lifted = ofLifts.get(r);
            Sums commanded = e.limits.commandLogged() ? sums(e, r, usual, true) : new Sums();
            Case found = lifted.enough()
                    ? caseOf(r, lifted, usual[r], "findings.valve_stuck_open.evidence.lifted")
                    : commanded.enough()
                            ? caseOf(r, commanded, usual[r], "findings.valve_stuck_open.evidence.commanded")
                            : null;
            if (found != null) {
                cases.add(found);
            }
        }
        return cases;
    }

    /** True for a row whose meter is stuck, or that follows another row's command. */
    private static boolean otherwiseFaulty(Evidence e, int r) {
        return e.cases().stream().anyMatch(x -> NOT_OWN.contains(x.kind()) && x.concerns(r));
    }

    /** Median flow of row r while working, L/s. */
    private static double usual(Evidence e, int r) {
        double[] flow = new double[e.work.n];
        for (int j = 0; j < flow.length; j++) {
            flow[j] = e.ratios.flowLPerS[r][j];
        }
        return RobustStatistics.median(flow, flow.length);
    }

    /** Flow of row r in records in which it should stand, beyond the run-out. */
    private static Sums sums(Evidence e, int r, double[] usual, boolean byCommand) {
        LogTable log = e.log;
        int p = e.ratios.product;
        Sums sums = new Sums();
        double sinceS = Double.NaN;
        double inLiftS = 0;
        double limit = Math.max(FLOWS * usual[r], 1.5 * e.limits.quantumLPerS(r));
        double runOutS = RUN_OUT_S + e.limits.smearS();
        double minInALiftS = byCommand || e.log.hasDown() ? MIN_IN_A_LIFT_S : MIN_WITHOUT_STATE_S;
        for (int i = 1; i < log.records(); i++) {
            boolean stands = byCommand ? log.on(r, i) == 0 : standsOrUnknown(e, r, i, usual);
            double step = log.timeS(i) - log.timeS(i - 1);
            if (!stands || log.breakBefore(i) || step > 10 * e.limits.intervalS()) {
                sinceS = Double.NaN;
                inLiftS = 0;
                continue;
            }
            sinceS = Double.isNaN(sinceS) ? log.timeS(i) : sinceS;
            boolean flows = log.timeS(i) - sinceS >= runOutS
                    && log.flowLPerS(p, r, i) > limit
                    && (byCommand || othersStand(e, r, i, usual));
            if (flows) {
                boolean counted = inLiftS >= minInALiftS;
                sums.certainS += inLiftS > 0 ? step : 0;
                inLiftS += step;
                if (!counted && inLiftS >= minInALiftS) {
                    sums.lifts++;
                }
                sums.seconds += step;
                sums.litres += step * log.flowLPerS(p, r, i);
                sums.fromS = Double.isNaN(sums.fromS) ? log.timeS(i) : sums.fromS;
                sums.toS = log.timeS(i);
            }
        }
        return sums;
    }

    /** True with the bar lifted; in a log without a work state, where all other rows, or all but one, stand. */
    private static boolean standsOrUnknown(Evidence e, int r, int i, double[] usual) {
        return e.log.hasDown() ? e.log.down(i) == 0 : standing(e, r, i, usual) >= usual.length - 2;
    }

    private static boolean othersStand(Evidence e, int r, int i, double[] usual) {
        return 2 * standing(e, r, i, usual) > usual.length - 1;
    }

    private static int standing(Evidence e, int r, int i, double[] usual) {
        int stand = 0;
        for (int other = 0; other < usual.length; other++) {
            stand += other != r && e.log.flowLPerS(e.ratios.product, other, i) <= STANDS * usual[other] ? 1 : 0;
        }
        return stand;
    }

    private static Case caseOf(int r, Sums sums, double usual, String evidenceKey) {
        double share = sums.litres / sums.seconds / usual;
        Message evidence = Message.of(
                evidenceKey,
                FindingMessages.rows(List.of(r)),
                Message.value(QuantityKind.VOLUME, sums.litres),
                Message.duration(sums.seconds),
                sums.lifts,
                FindingMessages.percent(share));
        return new Case(
                FindingKind.VALVE_STUCK_OPEN,
                List.of(r),
                sums.fromS,
                sums.toS,
                sums.lifts >= 4 ? 0.97 : sums.lifts >= MIN_LIFTS ? 0.93 : 0.8,
                new Case.Words(
                        evidence,
                        Message.of("findings.valve_stuck_open.alternative"),
                        Message.of("findings.valve_stuck_open.check")),
                List.of(Figure.of("findings.figure.workingShare", share, "1")),
                new Case.Cost(0, sums.litres));
    }
}
