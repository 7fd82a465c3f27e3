package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Flow that follows speed and target seconds late. */
final class SlowResponseDetector implements Detector {
    /** From this time constant on a response is slow, s: the usual is under 1.6. */
    static final double SLOW_S = 2.6;

    /** The error must fall by this share of what is left. */
    private static final double LEAST_EXPLAINED = 0.12;

    /** And by so many variances of a reading, against chance. */
    private static final double LEAST_GAIN = 60;

    /** More for a single row, whose siblings are prompt. */
    private static final double LEAST_OF_ROW = 0.2;

    private static final double MOST_ROWS = 0.6;

    /** A slow row: from pass (inclusive) to pass (exclusive), its time constant, how much of the error it explains. */
    private record Slow(int row, int from, int end, int tau, double explained) {}

    @Override
    public List<Case> find(Evidence e) {
        Responses responses = e.responses();
        List<Slow> slow = new ArrayList<>();
        int judged = 0;
        for (int r = 0; r < e.rows(); r++) {
            Slow of = slow(e, responses, r);
            int n = 0;
            for (int q = 0; q < e.work.passes(); q++) {
                n += responses.count(r, q);
            }
            judged += n > 0 ? 1 : 0;
            if (of != null) {
                slow.add(of);
            }
        }
        List<Case> cases = new ArrayList<>();
        if (e.work.coarse && !e.speedLogged()) {
            return cases;
        }
        if (slow.size() >= Math.max(2, MOST_ROWS * judged)) {
            cases.add(caseOf(e, List.of(), typical(slow)));
        } else {
            double[] all = new double[judged];
            for (int i = 0; i < Math.min(judged, slow.size()); i++) {
                all[i] = slow.get(i).explained;
            }
            // What half of the rows share is the track's or the target's doing.
            double common = Robust.median(all, judged);
            for (Slow of : slow) {
                if (of.explained > Math.max(LEAST_OF_ROW, 2 * common)) {
                    cases.add(caseOf(e, List.of(of.row), of));
                }
            }
        }
        return cases;
    }

    private static @Nullable Slow slow(Evidence e, Responses responses, int r) {
        int passes = e.work.passes();
        int usual = Demand.SLOWEST_USUAL;
        Slow best = null;
        double bestGain = 0;
        for (int t = 0; t < Demand.TAU_S.length; t++) {
            if (Demand.TAU_S[t] < SLOW_S) {
                continue;
            }
            double[] gains = new double[passes];
            for (int q = 0; q < passes; q++) {
                double prompt = responses.error(r, q, usual);
                // What a filter of either direction gains is noise smoothed away, not lag.
                double smoothing = Math.max(0, prompt - responses.errorForeseen(r, q, t));
                gains[q] = prompt - responses.error(r, q, t) - smoothing;
            }
            BestRange range = BestRange.of(gains);
            if (range.sum() > bestGain) {
                double left = 0;
                int n = 0;
                for (int q = range.from(); q < range.end(); q++) {
                    left += responses.error(r, q, t);
                    n += responses.count(r, q);
                }
                bestGain = range.sum();
                boolean clear = range.sum() > LEAST_EXPLAINED * left && range.sum() > LEAST_GAIN * left / Math.max(1, n);
                best = clear ? new Slow(r, range.from(), range.end(), t, range.sum() / (range.sum() + left)) : null;
            }
        }
        return best;
    }

    private static Slow typical(List<Slow> slow) {
        double[] tau = slow.stream().mapToDouble(Slow::tau).toArray();
        double[] from = slow.stream().mapToDouble(Slow::from).toArray();
        double[] end = slow.stream().mapToDouble(Slow::end).toArray();
        double[] explained = slow.stream().mapToDouble(Slow::explained).toArray();
        return new Slow(
                -1,
                (int) Robust.median(from),
                (int) Math.ceil(Robust.median(end)),
                (int) Robust.median(tau),
                Robust.median(explained));
    }

    private static Case caseOf(Evidence e, List<Integer> rows, Slow slow) {
        double tau = Demand.TAU_S[slow.tau];
        double fromS = e.work.timeS[Math.min(e.work.n - 1, e.work.passFrom[slow.from])];
        double toS = e.work.timeS[e.work.passFrom[slow.end] - 1];
        double confidence = slow.explained > 0.5 ? 0.96 : slow.explained > 0.25 ? 0.9 : 0.75;
        String evidence = Said.capital(Said.rows(rows)) + " followed speed and target with a time constant of about "
                + Said.seconds(tau) + (rows.isEmpty() ? "" : ", the siblings faster") + "; that explains "
                + Said.pct(slow.explained) + " of the deviation from a prompt response. Settled within 5 % takes three"
                + " times as long.";
        String rival = rows.isEmpty()
                ? "A late target or speed signal would look alike; a flow lag in the setup would shift the flow, not smear"
                        + " it."
                : "A worn or sticking valve and a controller tuned too soft look alike.";
        String check = "Change the speed by a quarter on a straight and watch how long the rate takes; look at the response"
                + " setting in the controller; with the bar standing, watch the valve's motor run from end to end; then, "
                + Said.SAFE + "see whether the valve turns freely.";
        return new Case(
                FindingKind.SLOW_RESPONSE,
                rows,
                fromS,
                toS,
                confidence,
                new Case.Words(evidence, rival, check),
                List.of(
                        new Figure("time constant", tau, "s"),
                        new Figure("time to settle within 5 %", 3 * tau, "s")));
    }
}
