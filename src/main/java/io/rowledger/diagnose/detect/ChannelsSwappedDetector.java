package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.ShutOffPlaces;
import io.rowledger.diagnose.signal.TurnShares;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.MaxSumRange;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Two rows whose channels are exchanged: each shows the speed response and band width, or the shut-offs, of the other's position. */
public final class ChannelsSwappedDetector implements Detector {
    /** Swapping the two rows' positions must remove at least this share of each row's squared error (1). */
    private static final double MIN_SHARE_EXPLAINED = 0.45;

    /** Bands that differ by more than this are unequal. */
    private static final double UNEQUAL = 0.1;

    /** A constant level already fits rows near the middle well, so the swap's error must be below this share of its error (1). */
    private static final double MAX_ERROR_OF_FLAT_FIT = 0.8;

    /** And the gain must be this many times the variance of a reading. */
    private static final double MIN_GAIN = 60;

    /** Readings beyond these say nothing of a place: a valve is shut, or shut with the other row's. */
    private static final double MAX_RATIO = 3.2;

    private static final double MIN_RATIO = 0.15;

    /** Sums of a row over the turning entries of a pass: z is the flux over the other rows', k the curvature taken out. */
    private static final class Sums {
        private int n;
        private double z;
        private double zz;
        private double k;
        private double kk;
        private double zk;

        /** Squared error against the flux a(1 − y·k). */
        double error(double a, double y) {
            return zz - 2 * a * (z - y * zk) + a * a * (n - 2 * y * k + y * y * kk);
        }

        /** The same with the level that fits best. */
        double leastError(double y) {
            double own = n - 2 * y * k + y * y * kk;
            double cross = z - y * zk;
            return own > 0 ? zz - cross * cross / own : zz;
        }
    }

    /** All of a row's passes in a range. */
    private static Sums together(Sums[] ofRow, MaxSumRange range) {
        Sums all = new Sums();
        for (int q = range.from(); q < range.end(); q++) {
            all.n += ofRow[q].n;
            all.z += ofRow[q].z;
            all.zz += ofRow[q].zz;
            all.k += ofRow[q].k;
            all.kk += ofRow[q].kk;
            all.zk += ofRow[q].zk;
        }
        return all;
    }

    /** A candidate. */
    private record Pair(int a, int b, MaxSumRange passes, double gain) {}

    @Override
    public List<Case> find(Evidence e) {
        List<Case> cases = new ArrayList<>();
        Set<Integer> taken = new TreeSet<>();
        if (!e.turns.isEmpty()) {
            bySpeed(e, cases, taken);
        }
        byShutOff(e, cases, taken);
        return cases;
    }

    private static void byShutOff(Evidence e, List<Case> cases, Set<Integer> taken) {
        ShutOffPlaces places = new ShutOffPlaces(e);
        while (true) {
            ShutOffPlaces.Crossed best = null;
            for (int a = 0; a < e.rows(); a++) {
                for (int b = a + 1; b < e.rows(); b++) {
                    ShutOffPlaces.Crossed pair = taken.contains(a) || taken.contains(b) ? null : places.crossed(a, b);
                    best = pair != null && (best == null || surer(pair, best)) ? pair : best;
                }
            }
            if (best == null) {
                return;
            }
            taken.add(best.a());
            taken.add(best.b());
            cases.add(caseOf(e, best));
        }
    }

    private static boolean surer(ShutOffPlaces.Crossed pair, ShutOffPlaces.Crossed than) {
        return pair.crossedS() - pair.otherwiseS() > than.crossedS() - than.otherwiseS();
    }

    private static void bySpeed(Evidence e, List<Case> cases, Set<Integer> taken) {
        Sums[][] sums = sums(e);
        double variance = variance(e, sums);
        while (true) {
            Pair best = null;
            for (int a = 0; a < e.rows(); a++) {
                for (int b = a + 1; b < e.rows(); b++) {
                    if (!taken.contains(a) && !taken.contains(b)) {
                        Pair pair = pair(e, sums, a, b, variance);
                        best = pair != null && (best == null || pair.gain > best.gain) ? pair : best;
                    }
                }
            }
            if (best == null) {
                return;
            }
            taken.add(best.a);
            taken.add(best.b);
            cases.add(caseOf(e, sums, best));
        }
    }

    private static Sums[][] sums(Evidence e) {
        FlowRatios s = e.ratios;
        Sums[][] sums = new Sums[e.rows()][e.work.passes()];
        for (int r = 0; r < e.rows(); r++) {
            for (int q = 0; q < e.work.passes(); q++) {
                Sums of = new Sums();
                sums[r][q] = of;
                for (int j = e.work.passFrom[q]; j < e.work.passFrom[q + 1]; j++) {
                    double z = s.relativeFlux(r, j);
                    double k = e.work.curvaturePerM[j];
                    if (Double.isNaN(z) || Math.abs(k) * e.work.halfWidthM < TurnShares.MIN_TURN) {
                        continue;
                    }
                    if (z < MAX_RATIO && z > MIN_RATIO) {
                        of.n++;
                        of.z += z;
                        of.zz += z * z;
                        of.k += k;
                        of.kk += k * k;
                        of.zk += z * k;
                    }
                }
            }
        }
        return sums;
    }

    /** Variance of a reading about its own place: the median over rows. */
    private static double variance(Evidence e, Sums[][] sums) {
        double[] ofRow = new double[e.rows()];
        int count = 0;
        for (int r = 0; r < e.rows(); r++) {
            double error = 0;
            int n = 0;
            for (Sums of : sums[r]) {
                error += of.error(1, e.work.atM[r]);
                n += of.n;
            }
            if (n > 0) {
                ofRow[count++] = error / n;
            }
        }
        return count == 0 ? Double.NaN : Math.max(1e-6, RobustStatistics.median(ofRow, count));
    }

    private static double own(Evidence e, Sums of, int r) {
        return of.error(1, e.work.atM[r]);
    }

    private static double as(Evidence e, Sums of, int r, int other) {
        return of.error(e.work.bandM[other] / e.work.bandM[r], e.work.atM[other]);
    }

    private static @Nullable Pair pair(Evidence e, Sums[][] sums, int a, int b, double variance) {
        double[] gains = new double[e.work.passes()];
        for (int q = 0; q < gains.length; q++) {
            gains[q] =
                    own(e, sums[a][q], a) - as(e, sums[a][q], a, b) + own(e, sums[b][q], b) - as(e, sums[b][q], b, a);
        }
        MaxSumRange range = MaxSumRange.of(gains).widened(gains, MIN_GAIN / 3 * variance);
        if (range.isEmpty() || !(range.sum() > MIN_GAIN * variance)) {
            return null;
        }
        return explained(e, sums, a, b, range) > MIN_SHARE_EXPLAINED
                        && explained(e, sums, b, a, range) > MIN_SHARE_EXPLAINED
                        && beatsLevels(e, sums, a, b, range)
                ? new Pair(a, b, range, range.sum())
                : null;
    }

    /** Share of row r's squared error about its own place that taking it for the other explains. */
    private static double explained(Evidence e, Sums[][] sums, int r, int other, MaxSumRange range) {
        Sums all = together(sums[r], range);
        double own = own(e, all, r);
        return own > 0 ? 1 - as(e, all, r, other) / own : 0;
    }

    /**
     * True where no simpler story fits the pair as well: rows at levels of their own, following their own places or no
     * turn at all. Rows of unequal bands swap levels as well, and are told by that.
     */
    private static boolean beatsLevels(Evidence e, Sums[][] sums, int a, int b, MaxSumRange range) {
        if (Math.abs(e.work.bandM[a] / e.work.bandM[b] - 1) > UNEQUAL) {
            return true;
        }
        Sums ofA = together(sums[a], range);
        Sums ofB = together(sums[b], range);
        double crossed = as(e, ofA, a, b) + as(e, ofB, b, a);
        double placed = ofA.leastError(e.work.atM[a]) + ofB.leastError(e.work.atM[b]);
        double flat = ofA.leastError(0) + ofB.leastError(0);
        return crossed < (1 - MIN_SHARE_EXPLAINED) * placed && crossed < MAX_ERROR_OF_FLAT_FIT * flat;
    }

    private static Case caseOf(Evidence e, Sums[][] sums, Pair pair) {
        double a = explained(e, sums, pair.a, pair.b, pair.passes);
        double b = explained(e, sums, pair.b, pair.a, pair.passes);
        double worst = Math.min(a, b);
        double confidence = worst > 0.8 ? 0.96 : worst > 0.6 ? 0.9 : 0.7;
        List<Integer> rows = List.of(pair.a, pair.b);
        Message evidence = Message.of(
                "findings.channels_swapped.evidence.turns",
                FindingMessages.rows(rows),
                FindingMessages.percent(a),
                FindingMessages.percent(b),
                where(e, pair.passes));
        Message alternative = Message.of("findings.channels_swapped.alternative.turns");
        return caseOf(e, rows, pair.passes, confidence, evidence, alternative);
    }

    private static Case caseOf(Evidence e, ShutOffPlaces.Crossed pair) {
        List<Integer> rows = List.of(pair.a(), pair.b());
        double right = pair.crossedS() / (pair.crossedS() + pair.otherwiseS());
        double confidence = right > 0.9 && pair.crossedS() > 30 ? 0.96 : right > 0.85 ? 0.92 : 0.75;
        Message evidence = Message.of(
                "findings.channels_swapped.evidence.shut_off",
                FindingMessages.rows(rows),
                Message.duration(pair.crossedS()),
                Message.duration(pair.otherwiseS()),
                where(e, pair.passes()));
        Message alternative = Message.of("findings.channels_swapped.alternative.shut_off");
        return caseOf(e, rows, pair.passes(), confidence, evidence, alternative);
    }

    private static Message where(Evidence e, MaxSumRange passes) {
        boolean throughout = passes.from() == 0 && passes.end() == e.work.passes();
        return Message.of(throughout ? "findings.throughout" : "findings.partly");
    }

    private static Case caseOf(
            Evidence e,
            List<Integer> rows,
            MaxSumRange passes,
            double confidence,
            Message evidence,
            Message alternative) {
        Message check = Message.of("findings.channels_swapped.check");
        return new Case(
                FindingKind.CHANNELS_SWAPPED,
                rows,
                e.work.timeS[e.work.passFrom[passes.from()]],
                e.work.timeS[e.work.passFrom[passes.end()] - 1],
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of());
    }
}
