package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Demand;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.FindingMessages;
import io.rowledger.diagnose.signal.LateralTrend;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.FindingKind;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Flow that swings with one period whatever speed and target do.
 *
 * <p>A window's periodogram (A. Schuster, On the investigation of hidden periodicities, Terrestrial Magnetism 3, 1898,
 * 13-41) gives the share of its variance that one period explains.
 */
public final class HuntingDetector implements Detector {
    private static final double WINDOW_S = 60;
    private static final double MIN_WINDOW_S = 25;

    /** Finer than this nothing is needed for periods of 2.5 s, s. */
    private static final double FINEST_S = 0.4;

    private static final double MIN_PERIOD_S = 2.5;
    private static final double MAX_S = 20;
    /** Frequencies are this close, Hz: a third of what a window of a minute can tell apart. */
    private static final double FREQUENCY_STEP_HZ = 1 / (3 * WINDOW_S);

    /** A swing smaller than this, as a fraction of the flow, is nobody's loss. */
    private static final double MIN_SWING = 0.05;

    /** Readings that alternate between two rounding steps swing by 2/π of one; a swing must be larger (1). */
    private static final double ROUNDING = 0.7;

    /** One period must explain this share of a window's variance. */
    private static final double MIN_EXPLAINED = 0.5;

    /** Windows belong together when their periods differ by less. */
    private static final double SAME_PERIOD = 0.12;

    /** Of a window's samples so many must be evaluated. */
    private static final double MIN_EVALUATED = 0.35;

    private static final double MIN_S = 55;

    /** Corners and contours come back as slowly: longer periods must explain more. */
    private static final double SURE_UP_TO_S = 12.5;

    private static final double SURE = 0.65;
    private static final double SETTLED_S = 6;

    /** Rows with these faults don't follow the bar: when it swings, their flow over the other rows' swings too. */
    private static final Set<FindingKind> NOT_SWINGING = EnumSet.of(
            FindingKind.METER_STUCK, FindingKind.METER_DROPOUT, FindingKind.INTERMITTENT, FindingKind.CHANNELS_SWAPPED);

    /** A window of one pass: entries from to end, and the samples' times from its start. */
    private record Window(int from, int end, double[] timeS, int[] sample) {}

    /** A swing seen in a window: mean + sine · sin(2πt/period) + cosine · cos(2πt/period), t from the window's start. */
    private record Swing(Window window, double periodS, double mean, double sine, double cosine, double explained) {
        double amplitude() {
            return Math.hypot(sine, cosine);
        }

        double at(double timeS) {
            double phase = 2 * Math.PI * timeS / periodS;
            return sine * Math.sin(phase) + cosine * Math.cos(phase);
        }
    }

    @Override
    public List<Case> find(Evidence e) {
        double[] periods = periods(e.work.intervalS);
        if (periods.length == 0) {
            return List.of();
        }
        List<Window> windows = windows(e);
        List<Case> cases = new ArrayList<>();
        float[] bar = barSeries(e);
        Case whole = caseOf(e, List.of(), bar, swings(windows, bar, periods));
        if (whole != null) {
            cases.add(whole);
        }
        List<Boolean> swings = e.ofRows(r -> {
            float[] ratio = withoutSlowResponse(e, r, e.ratios.ratio[r]);
            boolean own = !otherwiseFaulty(e, r);
            return own && caseOf(e, List.of(r), ratio, swings(windows, ratio, periods)) != null;
        });
        List<Integer> swinging =
                IntStream.range(0, e.rows()).filter(swings::get).boxed().toList();
        if (!swinging.isEmpty()) {
            LateralTrend across = new LateralTrend(e.ratios);
            for (int r : swinging) {
                float[] own = withoutSlowResponse(e, r, across.detrended(r));
                Case single = caseOf(e, List.of(r), own, swings(windows, own, periods));
                if (single != null && !(whole != null && samePeriod(whole, single))) {
                    cases.add(single);
                }
            }
        }
        return cases;
    }

    /** True if the row has a fault of {@link #NOT_SWINGING}, or one that means blur. */
    private static boolean otherwiseFaulty(Evidence e, int r) {
        return e.isBlurred(r)
                || e.cases().stream()
                        .anyMatch(
                                x -> NOT_SWINGING.contains(x.kind()) && x.rows().contains(r));
    }

    /** True for a row that only swings with the bar: a row that is written late, or stands still, swings against the others. */
    private static boolean samePeriod(Case whole, Case single) {
        double ratio = single.figures().get(0).value() / whole.figures().get(0).value();
        return Math.abs(ratio - 1) < SAME_PERIOD && single.fromS() < whole.toS() && whole.fromS() < single.toS();
    }

    /** Returns the periods that are tried, s; none if records come too seldom to show the longest. */
    private static double[] periods(double intervalS) {
        double shortest = Math.max(MIN_PERIOD_S, 2.4 * intervalS);
        if (shortest > MAX_S) {
            return new double[0];
        }
        double highest = 1 / shortest;
        int n = (int) ((highest - 1 / MAX_S) / FREQUENCY_STEP_HZ) + 1;
        double[] periods = new double[n];
        Arrays.setAll(periods, i -> 1 / (highest - i * FREQUENCY_STEP_HZ));
        return periods;
    }

    /**
     * Row r's series over what a row as slow as it was found to be would give beside a bar as fast as this one: a slow row swings
     * beside the other rows whenever the speed does, as after stops.
     */
    private static float[] withoutSlowResponse(Evidence e, int r, float[] series) {
        float[] left = series;
        for (Case found : e.cases()) {
            if (found.kind() == FindingKind.SLOW_RESPONSE && found.rows().contains(r)) {
                float[] prompt = e.demand().demandPerM[e.barResponses().best()];
                float[] slow = e.demand()
                        .demandPerM[Demand.nearest(found.figures().get(0).value())];
                left = left.clone();
                for (int j = e.work.entryAt(found.fromS()); j < e.work.entryAt(found.toS()); j++) {
                    left[j] *= prompt[j] / slow[j];
                }
            }
        }
        return left;
    }

    /** The other rows' flux over what a controller as fast as this one in its pass would give; NaN while a new target settles. */
    private static float[] barSeries(Evidence e) {
        int[] tau = new int[e.work.passes()];
        Arrays.setAll(tau, e.barResponses()::best);
        float[] bar = new float[e.work.n];
        for (int j = 0; j < bar.length; j++) {
            float[] asked = e.demand().demandPerM[tau[e.work.pass[j] - 1]];
            boolean settling = e.work.timeS[j] < e.demand().targetChangedS[j] + SETTLED_S;
            bar[j] = settling || e.ratios.unsteady(j) ? Float.NaN : e.ratios.peerFlux[j] / asked[j];
        }
        return bar;
    }

    private static List<Window> windows(Evidence e) {
        List<Window> windows = new ArrayList<>();
        WorkingSamples work = e.work;
        int stride = (int) Math.max(1, Math.floor(FINEST_S / work.intervalS + 1e-6));
        for (int q = 0; q < work.passes(); q++) {
            int from = work.passFrom[q];
            int end = work.passFrom[q + 1];
            while (from < end && work.timeS[end - 1] - work.timeS[from] > MIN_WINDOW_S) {
                int to = from;
                while (to < end && work.timeS[to] < work.timeS[from] + WINDOW_S) {
                    to++;
                }
                boolean last = end - to < 0.4 * (to - from);
                to = last ? end : to;
                windows.add(window(work, from, to, stride));
                from = last ? end : from + (to - from) / 2;
            }
        }
        return windows;
    }

    private static Window window(WorkingSamples work, int from, int to, int stride) {
        int n = (to - from) / stride;
        double[] time = new double[n];
        int[] sample = new int[n];
        for (int i = 0; i < n; i++) {
            sample[i] = from + i * stride;
            time[i] = work.timeS[from + i * stride + stride / 2] - work.timeS[from];
        }
        return new Window(from, to, time, sample);
    }

    private static List<Swing> swings(List<Window> windows, float[] series, double[] periods) {
        List<Swing> swings = new ArrayList<>();
        for (Window window : windows) {
            double[] x = new double[window.sample.length];
            int stride = x.length > 1 ? window.sample[1] - window.sample[0] : 1;
            double sum = 0;
            double squares = 0;
            int n = 0;
            for (int i = 0; i < x.length; i++) {
                double mean = 0;
                for (int j = window.sample[i]; j < window.sample[i] + stride; j++) {
                    mean += series[j];
                }
                x[i] = mean / stride;
                if (!Double.isNaN(x[i])) {
                    sum += x[i];
                    squares += x[i] * x[i];
                    n++;
                }
            }
            double variance = n == 0 ? 0 : squares / n - sum * sum / n / n;
            boolean worth = variance > 0.5 * MIN_SWING * MIN_SWING * MIN_EXPLAINED && n > MIN_EVALUATED * x.length;
            Swing swing = worth && n > 20 ? strongest(window, x, sum / n, variance * n, n, periods) : null;
            if (swing != null) {
                swings.add(swing);
            }
        }
        return swings;
    }

    private static @Nullable Swing strongest(
            Window window, double[] x, double mean, double squares, int n, double[] periods) {
        Swing best = null;
        // What grows up to the longest period has no maximum among them: it is a drift or a slow response, no period.
        boolean longest = false;
        for (int p = 0; p < periods.length; p++) {
            double a = 0;
            double b = 0;
            for (int i = 0; i < x.length; i++) {
                if (!Double.isNaN(x[i])) {
                    double phase = 2 * Math.PI * window.timeS[i] / periods[p];
                    a += (x[i] - mean) * Math.sin(phase);
                    b += (x[i] - mean) * Math.cos(phase);
                }
            }
            double explained = 2 * (a * a + b * b) / n / squares;
            if (best == null || explained > best.explained) {
                longest = p == periods.length - 1;
                best = new Swing(window, periods[p], mean, 2 * a / n, 2 * b / n, explained);
            }
        }
        return best != null && !longest && best.explained >= MIN_EXPLAINED && best.amplitude() >= MIN_SWING * mean
                ? best
                : null;
    }

    /**
     * The entry where the swing of a window began (forward) or ended, looked for half a window beyond it in the same pass:
     * from there on the deviations from the mean are smaller with the swing taken out than with it left in.
     */
    private static int edge(WorkingSamples work, float[] series, Swing swing, boolean began) {
        Window window = swing.window;
        int q = work.pass[window.from] - 1;
        double startS = work.timeS[window.from];
        int from = began ? Math.max(work.passFrom[q], work.entryAt(startS - WINDOW_S / 2)) : window.from;
        int end = began
                ? window.end
                : Math.min(work.passFrom[q + 1], work.entryAt(work.timeS[window.end - 1] + WINDOW_S / 2));
        double gain = 0;
        double best = 0;
        int edge = began ? window.from : window.end - 1;
        for (int i = 0; i < end - from; i++) {
            int j = began ? end - 1 - i : from + i;
            if (!Float.isNaN(series[j])) {
                double off = series[j] - swing.mean;
                double left = off - swing.at(work.timeS[j] - startS);
                gain += off * off - left * left;
                if (gain > best) {
                    best = gain;
                    edge = j;
                }
            }
        }
        return edge;
    }

    private static double explained(List<Swing> swings) {
        return RobustStatistics.median(
                swings.stream().mapToDouble(Swing::explained).toArray());
    }

    private static @Nullable Case caseOf(Evidence e, List<Integer> rows, float[] series, List<Swing> all) {
        if (all.isEmpty()) {
            return null;
        }
        double[] ofAll = all.stream().mapToDouble(Swing::periodS).toArray();
        double period = RobustStatistics.median(ofAll);
        List<Swing> swings = all.stream()
                .filter(x -> Math.abs(x.periodS / period - 1) < SAME_PERIOD)
                .toList();
        double seconds = 0;
        int upTo = -1;
        for (Swing swing : swings) {
            int from = Math.max(upTo, swing.window.from);
            seconds += e.work.timeS[swing.window.end - 1] - e.work.timeS[Math.min(from, swing.window.end - 1)];
            upTo = swing.window.end;
        }
        if (seconds < MIN_S || (period > SURE_UP_TO_S && explained(swings) < SURE)) {
            return null;
        }
        double[] amplitudes = swings.stream().mapToDouble(Swing::amplitude).toArray();
        double amplitude = RobustStatistics.median(amplitudes);
        double rounding = rows.isEmpty() ? e.limits.resolution() : e.limits.resolution(rows.get(0));
        if (amplitude < ROUNDING * rounding) {
            return null;
        }
        double explained = explained(swings);
        double confidence = explained > 0.75 && swings.size() >= 3 ? 0.97 : explained > 0.65 ? 0.92 : 0.75;
        Message evidence = Message.of(
                "findings.hunting.evidence",
                FindingMessages.rows(rows),
                FindingMessages.percent(amplitude),
                Message.decimal(period, 1),
                Message.duration(seconds),
                FindingMessages.percent(explained));
        Message alternative = Message.of("findings.hunting.alternative");
        Message check = Message.of("findings.hunting.check");
        return new Case(
                FindingKind.HUNTING,
                rows,
                e.work.timeS[edge(e.work, series, swings.get(0), true)],
                e.work.timeS[edge(e.work, series, swings.get(swings.size() - 1), false)],
                confidence,
                new Case.Words(evidence, alternative, check),
                List.of(
                        Figure.of("findings.figure.period", period, "s"),
                        Figure.of("findings.figure.swing", amplitude, "1")));
    }
}
