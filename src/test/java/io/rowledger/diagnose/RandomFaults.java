package io.rowledger.diagnose;

import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimFault.Kind;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.Truth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/** Draws when a fault of a {@link RandomJob} begins and ends, how large it is and which rows it hits. */
final class RandomFaults {
    /** A slow response shows only when speed or target change, which takes a few passes. */
    private static final double SLOW_WORK_S = 250;

    private final SplittableRandom random;
    private final LogForm form;
    private final SimRig rig;
    private final double workMps;
    private final double galPerAc;

    RandomFaults(SplittableRandom random, LogForm form, SimRig rig, double workMps, double galPerAc) {
        this.random = random;
        this.form = form;
        this.rig = rig;
        this.workMps = workMps;
        this.galPerAc = galPerAc;
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

    /** A time in the middle of a pass with at least so much work after it. */
    private double onset(List<Truth.Pass> passes, double workAfterS) {
        for (int tries = 0; ; tries++) {
            int q = random.nextInt(Math.max(1, (int) (passes.size() * 0.75)));
            Truth.Pass pass = passes.get(q);
            if (pass.endS() - pass.startS() < 20 && tries < 200) {
                continue;
            }
            // What begins in the first minute is there from the first minute on: another kind.
            double first = Math.max(
                    pass.startS() + 6,
                    Math.min(workBy(passes, 75), passes.get(passes.size() - 1).endS() - 9));
            if (first > pass.endS() - 8 && tries < 200) {
                continue;
            }
            double at = between(first, Math.max(first + 1, pass.endS() - 8));
            double after = pass.endS() - at;
            for (Truth.Pass later : passes.subList(q + 1, passes.size())) {
                after += later.endS() - later.startS();
            }
            if (after >= workAfterS || tries > 400) {
                return at;
            }
        }
    }

    /** The time by which so much work is done. */
    private static double workBy(List<Truth.Pass> passes, double workS) {
        double left = workS;
        for (Truth.Pass pass : passes) {
            if (pass.endS() - pass.startS() >= left) {
                return pass.startS() + left;
            }
            left -= pass.endS() - pass.startS();
        }
        return Double.POSITIVE_INFINITY;
    }

    /** To the end of the job, or after at least so much work. */
    private double end(List<Truth.Pass> passes, double onset, double workS) {
        if (chance(0.6)) {
            return Double.POSITIVE_INFINITY;
        }
        double left = between(workS, 2 * workS);
        double at = onset;
        for (Truth.Pass pass : passes) {
            double from = Math.max(at, pass.startS());
            if (pass.endS() > from) {
                if (pass.endS() - from >= left) {
                    return from + left;
                }
                left -= pass.endS() - from;
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private List<Integer> rows(Kind kind, List<Integer> free) {
        List<Integer> rows = new ArrayList<>();
        rows.add(one(free));
        if (List.of(Kind.PLUGGED, Kind.RESTRICTED, Kind.LEAKING, Kind.LATE_ON, Kind.EARLY_OFF)
                        .contains(kind)
                && chance(0.2)
                && free.contains(rows.get(0) + 1)) {
            rows.add(rows.get(0) + 1);
        }
        return rows;
    }

    SimFault ofRow(Kind kind, List<Integer> free, List<Truth.Pass> passes) {
        List<Integer> rows = rows(kind, free);
        double onset = onset(passes, 125);
        double end = end(passes, onset, 125);
        double period = 0;
        double size = 0;
        switch (kind) {
            case PLUGGED -> size = between(0, 0.04);
            case RESTRICTED -> {
                size = between(0.3, 0.85);
                if (chance(0.4)) {
                    period = between(30, 120);
                    onset = onset(passes, 125 + period);
                    end = Double.POSITIVE_INFINITY;
                }
            }
            case LEAKING -> size = between(1.12, 1.6);
            case METER_DROPOUT -> size = between(0.08, 0.35);
            case METER_STUCK -> period = form != LogForm.IDEAL && chance(0.5) ? 0.002 : 0;
            case INTERMITTENT -> {
                size = between(0.1, 0.4);
                period = between(5, 30);
            }
            case VALVE_STUCK_OPEN -> {
                size = between(0.4, 1);
                end = Double.POSITIVE_INFINITY;
            }
            case METER_SCALE -> {
                size = chance(0.5) ? between(0.6, 0.94) : between(1.06, 1.4);
                onset = 0;
                end = Double.POSITIVE_INFINITY;
            }
            case CHANNELS_SWAPPED -> {
                rows.add(one(free.stream().filter(r -> !r.equals(rows.get(0))).toList()));
                rows.sort(Comparator.naturalOrder());
                onset = 0;
                end = Double.POSITIVE_INFINITY;
            }
            case SLOW_RESPONSE -> {
                size = between(3, 8);
                onset = onset(passes, SLOW_WORK_S);
                end = Double.POSITIVE_INFINITY;
            }
            case HUNTING -> {
                size = between(0.08, 0.3);
                period = between(3, 14);
            }
            case LATE_ON, EARLY_OFF -> {
                size = between(1, 4);
                onset = betweenPasses(passes);
                end = Double.POSITIVE_INFINITY;
            }
            default -> {}
        }
        return new SimFault(kind, rows, onset, end, size, period);
    }

    /** Before a pass with at least four passes left, that one counted. */
    private double betweenPasses(List<Truth.Pass> passes) {
        int q = random.nextInt(Math.max(1, passes.size() - 4));
        return Math.max(0, passes.get(q).startS() - 5);
    }

    SimFault ofBar(Kind kind, List<Truth.Pass> passes) {
        double onset = onset(passes, 125);
        double end = end(passes, onset, 125);
        double size = 0;
        double period = 0;
        switch (kind) {
            case SUPPLY_LIMITED -> {
                double perM2 = galPerAc * SimProduct.L_PER_M2_IN_GAL_PER_AC;
                size = between(0.7, 0.93) * perM2 * rig.widthM() * workMps;
                onset = chance(0.5) ? 0 : onset;
            }
            case SLOW_RESPONSE -> {
                size = between(3, 8);
                onset = chance(0.5) ? 0 : onset(passes, SLOW_WORK_S);
                end = Double.POSITIVE_INFINITY;
            }
            case HUNTING -> {
                size = between(0.08, 0.3);
                period = between(3, 14);
            }
            case LATE_ON, EARLY_OFF -> {
                size = between(1, 4);
                onset = betweenPasses(passes);
                end = Double.POSITIVE_INFINITY;
            }
            case SUPPLY_FAILING -> {
                size = between(0.3, 0.8);
                period = between(60, 200);
                end = Double.POSITIVE_INFINITY;
            }
            case RAN_EMPTY -> end = Double.POSITIVE_INFINITY;
            case OUTSIDE_SHARE -> {
                size = one(List.of(0.5, 1.5, 2.0));
                onset = 0;
                end = Double.POSITIVE_INFINITY;
            }
            case NO_TURN_COMPENSATION -> {
                onset = 0;
                end = Double.POSITIVE_INFINITY;
            }
            default -> {}
        }
        return new SimFault(kind, List.of(), onset, end, size, period);
    }
}
