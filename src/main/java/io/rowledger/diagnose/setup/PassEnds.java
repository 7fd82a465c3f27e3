package io.rowledger.diagnose.setup;

import io.rowledger.log.LogTable;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Ends of passes that the work state made, and their distances from their neighbors along the same headland. */
final class PassEnds {
    /** Length of the shortest pass that counts, m: shorter ones are maneuvers. */
    private static final double MIN_PASS_M = 20;

    /** Time over which the speed at an end is taken, s. */
    private static final double SPEED_OVER_S = 2;

    /** Sine of the largest angle between the axes of neighboring passes. */
    static final double PARALLEL_SIN = Math.sin(Math.toRadians(15));

    /** Largest distance of a neighbor's end ahead or behind, m: a slanting headland across two bars, or any wrong length. */
    private static final double MAX_ALONG_M = 12;

    /** Smallest distance of a neighboring pass to the side, in bar widths. */
    static final double NEAREST_SHARE = 0.6;

    /** Largest one. */
    static final double MAX_SHARE = 1.45;

    /** Smallest |effect| of a contrast that counts: the error looked for hardly moves others. */
    static final double MIN_EFFECT = 0.5;

    private PassEnds() {}

    /** Returns the ends at which the bar was lowered or lifted; not those at a stop or a gap in the log. */
    static List<PassEnd> of(LogTable log, Track track) {
        Poses poses = track.poses();
        List<PassEnd> ends = new ArrayList<>();
        for (Pass pass : track.passes()) {
            if (pass.lengthM() < MIN_PASS_M) {
                continue;
            }
            int first = pass.firstStep();
            if (first > 0 && changes(log, poses.record(first - 1), poses.record(first))) {
                ends.add(end(log, poses, pass, true));
            }
            int last = pass.endStep();
            if (last < poses.steps() && changes(log, poses.record(last), poses.record(last - 1))) {
                ends.add(end(log, poses, pass, false));
            }
        }
        return ends;
    }

    /** True if two successive records are lifted and lowered. */
    private static boolean changes(LogTable log, int lifted, int lowered) {
        return lifted >= 0
                && lowered >= 0
                && Math.abs(lifted - lowered) == 1
                && !log.breakBefore(Math.max(lifted, lowered))
                && (!log.hasDown() || (log.down(lifted) == 0 && log.down(lowered) == 1));
    }

    private static PassEnd end(LogTable log, Poses poses, Pass pass, boolean start) {
        int at = start ? pass.firstStep() : pass.endStep();
        double betweenS = Math.abs(log.timeS(poses.record(at)) - log.timeS(poses.record(at - 1)));
        int step = start ? 1 : -1;
        int other = at;
        while (Math.abs(poses.timeS(other) - poses.timeS(at)) < SPEED_OVER_S
                && other + step >= pass.firstStep()
                && other + step <= pass.endStep()) {
            other += step;
        }
        double distanceM = Math.hypot(
                poses.dropEastM(other) - poses.dropEastM(at), poses.dropNorthM(other) - poses.dropNorthM(at));
        double timeS = Math.abs(poses.timeS(other) - poses.timeS(at));
        double speedMps = timeS > 0 ? distanceM / timeS : 0;
        return new PassEnd(
                pass.number(),
                start,
                poses.timeS(at),
                poses.dropEastM(at),
                poses.dropNorthM(at),
                poses.barHeadingRad(at),
                speedMps,
                speedMps * betweenS / 2);
    }

    /** Returns the times of the ends, s. */
    static double[] times(List<PassEnd> ends) {
        return ends.stream().mapToDouble(PassEnd::timeS).toArray();
    }

    /** Returns the contrasts that the error looked for moves. */
    static List<Contrast> contrasts(List<PassEnd> ends, double barM) {
        return lines(ends, barM).stream()
                .filter(c -> Math.abs(c.effect()) >= MIN_EFFECT)
                .toList();
    }

    /** Returns every end against the line between its left and right neighbors; positive values lie ahead. */
    static List<Contrast> lines(List<PassEnd> ends, double barM) {
        List<Contrast> contrasts = new ArrayList<>();
        for (int i = 0; i < ends.size(); i++) {
            Near left = nearest(ends, i, -1, barM);
            Near right = nearest(ends, i, 1, barM);
            if (left.index < 0 || right.index < 0) {
                continue;
            }
            PassEnd own = ends.get(i);
            double weight = right.asideM / (right.asideM - left.asideM);
            double lineM = weight * left.aheadM + (1 - weight) * right.aheadM;
            // An end is rebuilt too far back, against the way it was driven; a delay puts it too far ahead.
            double effect = -(1 - weight * left.sign - (1 - weight) * right.sign);
            // Lowering and lifting late moves an end ahead, the way it was driven; a neighbor counts against the own
            // end.
            double before = -weight * left.sign * ends.get(left.index).speedMps();
            double after = -(1 - weight) * right.sign * ends.get(right.index).speedMps();
            double habit = own.speedMps() + before + after;
            double unlike = half(own) * own.speedMps()
                    + half(ends.get(left.index)) * before
                    + half(ends.get(right.index)) * after;
            contrasts.add(
                    new Contrast(i, left.index, right.index, weight, own.headingRad(), -lineM, effect, habit, unlike));
        }
        return contrasts;
    }

    /** 1 for a start, −1 for a stop. */
    private static int half(PassEnd end) {
        return end.start() ? 1 : -1;
    }

    /** A neighbor as seen from an end. */
    private record Near(int index, double asideM, double aheadM, int sign) {}

    private static Near nearest(List<PassEnd> ends, int i, int side, double barM) {
        PassEnd own = ends.get(i);
        double sin = Math.sin(own.headingRad());
        double cos = Math.cos(own.headingRad());
        Near best = new Near(-1, side * MAX_SHARE * barM, 0, 0);
        for (int j = 0; j < ends.size(); j++) {
            PassEnd other = ends.get(j);
            double de = other.eastM() - own.eastM();
            double dn = other.northM() - own.northM();
            double aside = de * cos - dn * sin;
            double ahead = de * sin + dn * cos;
            double turn = other.headingRad() - own.headingRad();
            int sign = Math.cos(turn) > 0 ? 1 : -1;
            boolean sameHeadland = (sign > 0) == (own.start() == other.start());
            if (side * aside >= NEAREST_SHARE * barM
                    && side * aside < side * best.asideM
                    && Math.abs(ahead) < MAX_ALONG_M
                    && Math.abs(Math.sin(turn)) < PARALLEL_SIN
                    && sameHeadland
                    && other.pass() != own.pass()) {
                best = new Near(j, aside, ahead, sign);
            }
        }
        return best;
    }
}
