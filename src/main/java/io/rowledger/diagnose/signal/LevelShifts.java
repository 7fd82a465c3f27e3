package io.rowledger.diagnose.signal;

import io.rowledger.stats.ChangePoints;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.stats.WeightedMoments;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Levels of a row's flow ratio over time, and the episodes in which it differed from 1. */
public final class LevelShifts {
    /** |ratio - 1| up to which meters usually differ (1); common practice, no source. */
    static final double MAX_METER_DIFFERENCE = 0.04;

    /** Shortest episode that is reported, s of evaluated work. */
    public static final double MIN_S = 40;

    /** An episode that starts within this much evaluated work of the row's first starts with the log, s. */
    static final double FIRST_MINUTE_S = 60;

    /** Share of a quantum by which rounding moves a level at steady flow (1): half a quantum of the row and half of its peers'. */
    private static final double ROUNDING = 1;

    /** From this resolution on levels are ratios of sums (1). */
    private static final double COARSE = 0.03;

    /** What dithering leaves at least of a rounding step's error (1). */
    private static final double MIN_ROUNDING_LEFT = 0.15;

    private static final double SIGMAS = 6;
    private static final double MIN_JUMP = 0.025;
    private static final int MIN_BINS = 3;
    private static final double CLIP = 3;

    /** Excursions shorter than this between two equal levels are merged into them: turns make them. */
    private static final int BRIEF_BINS = 12;

    private static final int BRIEF_END_BINS = 8;
    private static final double SAME_LEVEL = 0.035;

    /** Two levels of one constant ratio differ by less than this plus a share of the deviation. */
    private static final double STEADY = 0.03;

    private static final double STEADY_OF_DEVIATION = 0.12;
    private static final double STEADY_SHARE = 0.85;

    /** Smallest |level - 1| of an episode (1). */
    private static final double MIN_DEVIATION = 0.075;

    /** Episodes of a smaller |level - 1| must last {@link #LASTING_S}: turns leave deviations as large, but shorter. */
    private static final double CLEAR_DEVIATION = 0.2;

    private static final double CLEAR_IF_COARSE = 0.35;

    private static final double LASTING_S = 90;

    /** Smallest |level - 1| of a segment that still belongs to an episode as its beginning or end. */
    private static final double MIN_SHOULDER = 0.03;

    /** Share of the largest deviation from which an episode has begun (1). */
    private static final double BEGUN = 0.12;

    /** Share of the final deviation at which a slide has arrived (1). */
    private static final double SLID = 0.85;

    /** Returns to the level before from which a row comes and goes, as many as a meter's dropouts. */
    private static final int MIN_RETURNS = 3;

    private final FlowRatios s;
    private final Bins bins;
    private final Series[] series;

    /** Median over the rows of the σ of a bin: no single row's fault is in it (1). */
    private final double meterNoise;

    /** Time that a bin stands for, s: in a log of long intervals a record fills more than a bin. */
    private final double binS;

    /** The evaluated bins of a row: which they are, and their ratios. */
    private record Series(int[] at, double[] value) {
        static Series of(float[] medians) {
            int[] at = new int[medians.length];
            double[] value = new double[medians.length];
            int n = 0;
            for (int b = 0; b < medians.length; b++) {
                if (!Float.isNaN(medians[b])) {
                    at[n] = b;
                    value[n++] = Math.min(CLIP, medians[b]);
                }
            }
            return new Series(Arrays.copyOf(at, n), Arrays.copyOf(value, n));
        }

        int bins() {
            return value.length;
        }
    }

    /** Segment of one level: bins from (inclusive) to end (exclusive) of the row's evaluated bins. */
    private record Segment(int from, int end, double level) {}

    /**
     * A time in which a row's ratio to the other rows differed from 1.
     *
     * @param row from 0
     * @param fromS first sign
     * @param toS last sign
     * @param level ratio to the other rows it came to: median over the stretch, of its last part where it slid
     * @param before ratio before, 1 where it began with the log
     * @param fromStart true from the first minute on
     * @param toEnd true until the last evaluated minute
     * @param evaluatedS evaluated time in it
     * @param slideS time over which it slid to its level; 0 for a step
     * @param spread robust σ of the bins about their levels
     * @param steady true where it kept one level throughout
     * @param returns number of times that it was back at the level before and left it again
     */
    public record Episode(
            int row,
            double fromS,
            double toS,
            double level,
            double before,
            boolean fromStart,
            boolean toEnd,
            double evaluatedS,
            double slideS,
            double spread,
            boolean steady,
            int returns) {
        /** Change against the level before. */
        public double deviation() {
            return level - before;
        }

        /** True where the row kept no level but came and went: its median is between those it had. */
        public boolean comesAndGoes() {
            return returns >= MIN_RETURNS;
        }
    }

    /**
     * Prepares the rows.
     *
     * @param medians of every row's ratios by bin, see {@link Bins#medians}
     */
    LevelShifts(FlowRatios s, Bins bins, float[][] medians) {
        this.s = s;
        this.bins = bins;
        this.binS = Math.max(Bins.BIN_S, s.work.intervalS);
        series = Arrays.stream(medians).map(Series::of).toArray(Series[]::new);
        double[] noises = Arrays.stream(series)
                .filter(row -> row.bins() >= 2 * MIN_BINS)
                .mapToDouble(this::noise)
                .toArray();
        meterNoise = noises.length == 0 ? 0 : RobustStatistics.median(noises, noises.length);
    }

    /** The episodes of row r in time order. */
    List<Episode> episodes(int r) {
        double[] value = series[r].value;
        int n = value.length;
        if (n < 2 * MIN_BINS) {
            return List.of();
        }
        double noise = noise(series[r]);
        int[] starts = new ChangePoints(Math.max(SIGMAS * noise, 0.02), MIN_JUMP, MIN_BINS).starts(value, n);
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i < starts.length; i++) {
            int end = i + 1 < starts.length ? starts[i + 1] : n;
            segments.add(new Segment(starts[i], end, median(value, starts[i], end)));
        }
        smoothOver(segments);
        List<Episode> episodes = new ArrayList<>();
        int i = 0;
        while (i < segments.size()) {
            int end = runEnd(segments, i);
            if (end > i) {
                Episode episode = episode(r, segments, runStart(segments, i, end), end, noise);
                if (episode != null) {
                    episodes.add(episode);
                }
                i = end;
            } else {
                i++;
            }
        }
        return episodes;
    }

    /** Merges short excursions, such as a corner's, into the level that holds before and after them. */
    private static void smoothOver(List<Segment> segments) {
        for (int i = 0; i < segments.size(); i++) {
            Segment own = segments.get(i);
            boolean first = i == 0;
            boolean last = i == segments.size() - 1;
            boolean brief = own.end - own.from < (first || last ? BRIEF_END_BINS : BRIEF_BINS);
            if (!brief || segments.size() == 1) {
                continue;
            }
            Segment before = first ? segments.get(1) : segments.get(i - 1);
            Segment after = last ? before : segments.get(i + 1);
            if (Math.abs(before.level - after.level) > SAME_LEVEL) {
                continue;
            }
            Segment longer = before.end - before.from >= after.end - after.from ? before : after;
            int from = first ? own.from : before.from;
            int end = last ? own.end : after.end;
            segments.subList(first ? 0 : i - 1, (last ? i : i + 1) + 1).clear();
            segments.add(first ? 0 : i - 1, new Segment(from, end, longer.level));
            i = -1;
        }
    }

    /** One past the last segment of the episode that begins at segment i, or i if none does. */
    private static int runEnd(List<Segment> segments, int i) {
        double sign = Math.signum(segments.get(i).level - 1);
        int end = i;
        boolean far = false;
        while (end < segments.size() && sign * (segments.get(end).level - 1) > MIN_SHOULDER) {
            far |= sign * (segments.get(end).level - 1) > MAX_METER_DIFFERENCE;
            end++;
        }
        return far ? end : i;
    }

    /** The segment at which a run from i to end begins to be off: what is next to nothing of where it comes to is how meters differ. */
    private static int runStart(List<Segment> segments, int i, int end) {
        double most = segments.subList(i, end).stream()
                .mapToDouble(segment -> Math.abs(segment.level - 1))
                .max()
                .orElse(0);
        int start = i;
        while (Math.abs(segments.get(start).level - 1) < BEGUN * most) {
            start++;
        }
        return start;
    }

    private @Nullable Episode episode(int r, List<Segment> all, int first, int end, double noise) {
        int[] at = series[r].at;
        int from = all.get(first).from;
        int to = all.get(end - 1).end;
        Segment longest = all.get(first);
        Segment extreme = all.get(first);
        for (Segment segment : all.subList(first, end)) {
            longest = segment.end - segment.from > longest.end - longest.from ? segment : longest;
            boolean farther = Math.abs(segment.level - 1) > Math.abs(extreme.level - 1);
            extreme = farther && segment.end - segment.from >= 2 * MIN_BINS ? segment : extreme;
        }
        double evaluatedS = (to - from) * binS;
        boolean fromStart = from * binS <= FIRST_MINUTE_S && first == 0;
        boolean toEnd = end == all.size();
        boolean steady = steady(all.subList(first, end), longest, s.limits.resolution(r));
        double level = steady ? longest.level : extreme.level;
        double rounding = ROUNDING * s.limits.resolution(r) * Math.max(1, level);
        if (steady && s.limits.resolution(r) > COARSE) {
            // Sums dither where medians of rounded readings step.
            Dithered sums = dithered(r, bins.from[at[longest.from]], bins.from[at[longest.end - 1] + 1]);
            level = sums.level;
            rounding *= sums.left;
        }
        double resolved = Math.abs(level - 1) - rounding;
        if (evaluatedS < (resolved < (s.work.coarse ? CLEAR_IF_COARSE : CLEAR_DEVIATION) ? LASTING_S : MIN_S)
                || resolved < (fromStart && toEnd && steady ? MAX_METER_DIFFERENCE : MIN_DEVIATION)) {
            return null;
        }
        double before = first == 0 ? 1 : all.get(first - 1).level;
        int onset = first == 0
                ? bins.from[at[from]]
                : onset(r, at[Math.max(0, from - 3)], at[Math.min(to - 1, from + 3)], before, all.get(first).level);
        double fromS = s.work.timeS[onset];
        double toS = bins.endS(at[to - 1]);
        double slideS = first == 0 ? 0 : slide(all, first, end, level, at);
        return new Episode(
                r,
                fromS,
                Math.max(fromS, toS),
                level,
                before,
                fromStart,
                toEnd,
                evaluatedS,
                slideS,
                noise,
                steady,
                returns(r, from, to, level, before));
    }

    /**
     * Number of times that row r's bins came back from a level to the one before, each to within 1 − {@link #SLID} of the way; 0 for a
     * way that the meters' noise or the rounding could make.
     */
    private int returns(int r, int from, int end, double level, double before) {
        double way = level - before;
        if (SLID * Math.abs(way) <= SIGMAS * meterNoise + s.limits.resolution(r) * Math.max(1, level)) {
            return 0;
        }
        int returns = 0;
        boolean away = false;
        for (int i = from; i < end; i++) {
            double gone = (series[r].value[i] - before) / way;
            returns += away && gone <= 1 - SLID ? 1 : 0;
            away = gone >= SLID || (away && gone > 1 - SLID);
        }
        return returns;
    }

    /** Ratio of sums over a stretch, and the share of a rounding step's error that the variation of the flow leaves in it (1). */
    private record Dithered(double level, double left) {}

    /** See {@link LogLimits#resolutionOfMean(int)} for what dithering leaves of the error. */
    private Dithered dithered(int r, int from, int end) {
        double own = 0;
        WeightedMoments implied = new WeightedMoments();
        for (int j = from; j < end; j++) {
            if (!Float.isNaN(s.ratio[r][j])) {
                own += s.flowLPerS[r][j];
                implied.add(s.impliedLPerS(r, j), 1);
            }
        }
        double sigma = implied.weight() > 0 ? implied.populationDeviation() / s.limits.quantumLPerS(r) : 0;
        double left = Math.max(MIN_ROUNDING_LEFT, Math.exp(-2 * Math.PI * Math.PI * sigma * sigma));
        return new Dithered(own / (implied.weight() * implied.mean()), left);
    }

    /** True if segments at the longest one's level make up more than STEADY_SHARE of the episode. */
    private static boolean steady(List<Segment> segments, Segment longest, double resolution) {
        double wide = STEADY + STEADY_OF_DEVIATION * Math.abs(longest.level - 1) + resolution / 2;
        int same = 0;
        int all = 0;
        for (Segment segment : segments) {
            same += Math.abs(segment.level - longest.level) < wide ? segment.end - segment.from : 0;
            all += segment.end - segment.from;
        }
        return same > STEADY_SHARE * all;
    }

    /** Time from the first segment to the first that reaches SLID of the final deviation, s; 0 if that is the first. */
    private double slide(List<Segment> all, int first, int end, double level, int[] at) {
        for (int i = first; i < end; i++) {
            if (Math.abs(all.get(i).level - 1) >= SLID * Math.abs(level - 1)) {
                return i == first ? 0 : bins.startS(at[all.get(i).from]) - bins.startS(at[all.get(first).from]);
            }
        }
        return 0;
    }

    /** The entry between two bins at which the ratio goes from one level to the other, by least squares. */
    private int onset(int r, int firstBin, int lastBin, double before, double after) {
        float[] ratio = s.ratio[r];
        int from = bins.from[firstBin];
        int end = bins.from[lastBin + 1];
        double gain = 0;
        double best = 0;
        int at = from;
        for (int j = from; j < end; j++) {
            if (!Float.isNaN(ratio[j])) {
                double x = Math.min(CLIP, ratio[j]);
                gain += (x - after) * (x - after) - (x - before) * (x - before);
                if (gain > best) {
                    best = gain;
                    at = j + 1;
                }
            }
        }
        int onset = Math.min(at, s.work.n - 1);
        while (onset < end - 1 && Float.isNaN(ratio[onset])) {
            onset++;
        }
        return onset;
    }

    /**
     * σ of a bin, from the differences of bins this far apart, which steps and slides hardly move. Averaged readings are
     * alike in neighboring bins and unlike only beyond the averaging time.
     */
    private double noise(Series row) {
        double[] value = row.value;
        int n = value.length;
        int lag = 1 + (int) Math.ceil(s.limits.smearS() / Bins.BIN_S);
        double[] change = new double[Math.max(0, n - lag)];
        for (int i = 0; i + lag < n; i++) {
            change[i] = Math.abs(value[i + lag] - value[i]);
        }
        return change.length == 0
                ? 0
                : RobustStatistics.MAD_TO_SIGMA * RobustStatistics.median(change, change.length) / Math.sqrt(2);
    }

    private static double median(double[] value, int from, int end) {
        double[] part = Arrays.copyOfRange(value, from, end);
        return RobustStatistics.median(part, part.length);
    }
}
