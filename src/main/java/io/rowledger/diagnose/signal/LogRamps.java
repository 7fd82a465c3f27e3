package io.rowledger.diagnose.signal;

import io.rowledger.log.LogTable;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.stats.RobustStatistics;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Falls of the flows to zero and rises from zero, which tell how a log averages and whether it writes rows late.
 *
 * <p>Averaging: a mean over W seconds makes a sudden stop a ramp that falls from 80 % to 20 % of where it began in 0.6 W. The
 * fastest fifth of a row's falls tells W, less one record interval; the median over rows is taken. Skew: how much later than the
 * middle of all rows a row passes half of its flow, in the median of the falls and in that of the rises. A console that writes a
 * row late does so in both; a valve or a controller at fault in one of them. Of the two the smaller is taken. At sloped ends rows
 * shut off and come on in turn as well: skews are a console's only if the rows follow changes of the working flow in that order
 * too, or, where that changes too little to tell, if they don't rise from one end of the bar to the other.
 */
final class LogRamps {
    private static final double HIGH = 0.8;
    private static final double HALF = 0.5;
    private static final double LOW = 0.2;

    /** A ramp begins or ends at no less than this share of the usual flow (1). */
    private static final double MIN_TOP = 0.5;

    /** A ramp that takes longer is a driver's or a fault's, s. */
    private static final double MAX_RAMP_S = 12;

    /** Readings that rest for longer end a ramp, s; or one and a half holds. */
    private static final double MAX_REST_S = 1.1;

    private static final int MIN_RAMPS = 4;

    /** Ramps shorter than this are the valve's, s. */
    private static final double MIN_AVERAGING_S = 1.4;

    /** Records farther apart than this are sparse, s: valves then leave few readings between shut and open. */
    static final double SPARSE_S = 2;

    /** Intervals in which a fall from {@value #HIGH} to {@value #LOW} takes longer only with a reading between the two. */
    private static final double MIN_BETWEEN = 0.75;

    /** Ramps of several rows as close as this are one event, s. */
    private static final double ONE_EVENT_S = 3;

    /** Skews smaller than this are the valves', s. */
    private static final double MIN_SKEW_S = 0.15;

    /** Share of the pairs of rows in the same order from which skews are in turn (1): a console that begins anew each second has 0.6. */
    private static final double IN_ORDER = 0.85;

    /** Share of the bar's changes within the skew that rows must follow late (1): a sloped end gives 0, a console 1. */
    private static final double MIN_FOLLOWED = 0.5;

    private static final int APART = 2;

    /** Standard error from which that share is not known (1): two of them are the way from 0 or 1 to the middle. */
    private static final double MAX_SIGMA = 0.25;

    /** A share so many standard errors below 1 is no console's. */
    private static final double FAR_SIGMAS = 2;

    /** Share of the bar's changes that rows follow late, and its standard error. */
    private record Followed(double share, double sigma) {
        static final Followed UNKNOWN = new Followed(0, Double.POSITIVE_INFINITY);
    }

    /** Valves open and close within this time, s. */
    private static final double VALVES_S = 1.5;

    /** Share of its usual flow above which a row works (1). */
    private static final double WORKS = 0.6;

    private final LogTable log;
    private final double[][] columns;
    private final double[] usual;
    private final double intervalS;
    private final double holdS;
    private final double[][] fallAtS;
    private final double[][] riseAtS;
    private final double[][] fallS;
    private final double[][] riseS;

    LogRamps(LogTable log, double[][] columns, double[] usual, double intervalS, double holdS, int threads) {
        this.log = log;
        this.columns = columns;
        this.usual = usual;
        this.intervalS = intervalS;
        this.holdS = holdS;
        int rows = columns.length;
        fallAtS = new double[rows][];
        riseAtS = new double[rows][];
        fallS = new double[rows][];
        riseS = new double[rows][];
        ParallelTasks.map(rows, threads, r -> {
            ramps(r, columns[r]);
            return r;
        });
    }

    /** Finds where row r passes LOW, and follows each ramp up from there. */
    private void ramps(int r, double[] flow) {
        double[] falls = new double[16];
        double[] lasted = new double[16];
        double[] rises = new double[16];
        double[] rose = new double[16];
        int nFalls = 0;
        int nRises = 0;
        double low = LOW * usual[r];
        for (int i = 1; i < flow.length && usual[r] > 0; i++) {
            if (log.breakBefore(i)) {
                continue;
            }
            if (flow[i - 1] >= low && flow[i] < low) {
                int top = top(flow, i - 1, -1);
                if (flow[top] >= MIN_TOP * usual[r]) {
                    falls = grown(falls, nFalls);
                    lasted = grown(lasted, nFalls);
                    lasted[nFalls] = crossing(flow, top, i, LOW * flow[top]) - crossing(flow, top, i, HIGH * flow[top]);
                    falls[nFalls++] = crossing(flow, top, i, HALF * flow[top]);
                }
            } else if (flow[i - 1] < low && flow[i] >= low) {
                int top = top(flow, i, 1);
                if (flow[top] >= MIN_TOP * usual[r]) {
                    rises = grown(rises, nRises);
                    rose = grown(rose, nRises);
                    rose[nRises] =
                            crossing(flow, i - 1, top, HIGH * flow[top]) - crossing(flow, i - 1, top, LOW * flow[top]);
                    rises[nRises++] = crossing(flow, i - 1, top, HALF * flow[top]);
                }
            }
        }
        fallAtS[r] = Arrays.copyOf(falls, nFalls);
        fallS[r] = Arrays.copyOf(lasted, nFalls);
        riseAtS[r] = Arrays.copyOf(rises, nRises);
        riseS[r] = Arrays.copyOf(rose, nRises);
    }

    private static double[] grown(double[] values, int n) {
        return n == values.length ? Arrays.copyOf(values, 2 * n) : values;
    }

    /** The record at the top of the ramp that passes record i, seen in this direction: the next readings are no higher, or rest. */
    private int top(double[] flow, int i, int direction) {
        int top = i;
        double restS = Math.max(MAX_REST_S, 1.5 * holdS);
        for (int k = i + direction; k >= 0 && k < flow.length; k += direction) {
            double away = Math.abs(log.timeS(k) - log.timeS(top));
            if (!(flow[k] >= flow[top])
                    || away > restS
                    || Math.abs(log.timeS(k) - log.timeS(i)) > MAX_RAMP_S
                    || log.breakBefore(direction < 0 ? k + 1 : k)) {
                break;
            }
            top = flow[k] > flow[top] ? k : top;
        }
        return top;
    }

    /** Time at which the flow passes a level between two records, s; the first such time. */
    private double crossing(double[] flow, int from, int to, double level) {
        for (int i = from + 1; i <= to; i++) {
            boolean passes = (flow[i - 1] - level) * (flow[i] - level) <= 0 && flow[i] != flow[i - 1];
            if (passes) {
                double u = (flow[i - 1] - level) / (flow[i - 1] - flow[i]);
                return log.timeS(i - 1) + u * (log.timeS(i) - log.timeS(i - 1));
            }
        }
        return log.timeS(to);
    }

    /** Time over which readings are averaged, s; 0 if they are not. */
    double averagingS() {
        double[] ofRow = new double[fallS.length];
        int seen = 0;
        for (double[] falls : fallS) {
            if (falls.length >= MIN_RAMPS) {
                double[] sorted = falls.clone();
                Arrays.sort(sorted);
                ofRow[seen++] = sorted[sorted.length / 5];
            }
        }
        if (seen == 0) {
            return 0;
        }
        // A held reading falls in up to two steps.
        double stepS = holdS > 1.5 * intervalS ? 2 * holdS : intervalS;
        double ramp = RobustStatistics.median(ofRow, seen) / (HIGH - LOW) - stepS;
        return ramp < Math.max(MIN_AVERAGING_S, intervalS) ? 0 : ramp;
    }

    /**
     * Time over which the readings of a sparse log are means, up to its interval, and the standard error of that. A stop at any moment
     * between two records leaves a reading between {@value #LOW} and {@value #HIGH} of what went before in a share (HIGH − LOW) · W/T of
     * all stops where readings are means over W, and in none where they are of the instant; starts likewise. With one more event of
     * either kind than was seen (Laplace): none seen in a few says little.
     */
    Sparse sparse() {
        if (intervalS <= SPARSE_S || columns.length == 0) {
            return new Sparse(0, 0);
        }
        double between = 0;
        double all = 0;
        for (int r = 0; r < columns.length; r++) {
            for (double[] lasted : List.of(fallS[r], riseS[r])) {
                all += lasted.length;
                between += Arrays.stream(lasted)
                        .filter(s -> s > MIN_BETWEEN * intervalS)
                        .count();
            }
        }
        // The rows stop and start together: an event of the bar counts once.
        double share = (between / columns.length + 1) / (all / columns.length + 2);
        double sigma = Math.sqrt(share * (1 - share) / (all / columns.length + 3));
        double seconds = Math.min(intervalS, between / Math.max(1, all) / (HIGH - LOW) * intervalS);
        return new Sparse(seconds, Math.min(1, sigma / (HIGH - LOW)) * intervalS);
    }

    /** Time over which a sparse log's readings are means, and its standard error, s. */
    record Sparse(double meanS, double errorS) {}

    /** How much later than the middle row each row is written, s. */
    double[] skewS() {
        double[] falls = lateS(fallAtS);
        double[] rises = lateS(riseAtS);
        double[] skew = new double[falls.length];
        for (int r = 0; r < skew.length; r++) {
            double smaller = Math.abs(falls[r]) < Math.abs(rises[r]) ? falls[r] : rises[r];
            skew[r] = falls[r] * rises[r] > 0 && Math.abs(smaller) > MIN_SKEW_S ? smaller : 0;
        }
        Followed followed = Arrays.stream(skew).anyMatch(s -> s != 0) ? followed(skew) : Followed.UNKNOWN;
        boolean apart = 1 - followed.share > FAR_SIGMAS * followed.sigma;
        boolean known = followed.sigma < MAX_SIGMA || apart;
        boolean console = known ? !apart && followed.share > MIN_FOLLOWED : !isInTurn(skew);
        return console ? skew : new double[skew.length];
    }

    /** True for skews that rise, or fall, from one end of the bar to the other, as far as they are known: so do those of a sloped end. */
    private static boolean isInTurn(double[] skew) {
        int[] known = IntStream.range(0, skew.length).filter(r -> skew[r] != 0).toArray();
        int up = 0;
        int down = 0;
        for (int a = 0; a < known.length; a++) {
            for (int b = a + 1; b < known.length; b++) {
                up += skew[known[b]] > skew[known[a]] ? 1 : 0;
                down += skew[known[b]] < skew[known[a]] ? 1 : 0;
            }
        }
        return Math.max(up, down) > IN_ORDER * (up + down);
    }

    /**
     * Share β of the bar's changes within the skew that rows follow late, while the bar works: f(t) − m(t) =
     * β · (m(t − skew) − m(t)), with f the row's flow over its usual one and m the working rows' median of that. Noise of m stands on both
     * sides and would give 1/2, so β comes from the change between two other times as instrument, {@value #APART} records farther
     * apart on either side, with the standard error of such an estimate.
     */
    private Followed followed(double[] skew) {
        double[] bar = new double[log.records()];
        double[] some = new double[columns.length];
        for (int i = 0; i < bar.length; i++) {
            int n = 0;
            for (int r = 0; r < some.length; r++) {
                if (columns[r][i] > WORKS * usual[r]) {
                    some[n++] = columns[r][i] / usual[r];
                }
            }
            bar[i] = n >= FlowRatios.MIN_PEERS && 2 * n >= some.length ? RobustStatistics.median(some, n) : 0;
        }
        double rows = 0;
        double ofBar = 0;
        // Squares of own · z, own · change · z² and change · z, with z the instrument: for the error at any β.
        double ownSquares = 0;
        double products = 0;
        double changeSquares = 0;
        for (int r = 0; r < skew.length; r++) {
            double apartS = Math.signum(skew[r]) * APART * intervalS;
            for (int i = 0; i < bar.length && skew[r] != 0 && usual[r] > 0; i++) {
                double own = columns[r][i] / usual[r];
                double change = workedAt(bar, i, -skew[r]) - bar[i];
                double instrument = workedAt(bar, i, -skew[r] - apartS) - workedAt(bar, i, apartS);
                // Near a start or stop a skewed row's flow differs from the bar's whatever the cause of the skew is.
                if (own > WORKS && settled(bar, i, skew[r]) && !Double.isNaN(change * instrument)) {
                    double ownOff = (own - bar[i]) * instrument;
                    double barOff = change * instrument;
                    rows += ownOff;
                    ofBar += barOff;
                    ownSquares += ownOff * ownOff;
                    products += ownOff * barOff;
                    changeSquares += barOff * barOff;
                }
            }
        }
        if (!(ofBar > 0)) {
            return Followed.UNKNOWN;
        }
        double share = rows / ofBar;
        double squares = ownSquares - 2 * share * products + share * share * changeSquares;
        return new Followed(share, Math.sqrt(Math.max(0, squares)) / ofBar);
    }

    /** True if the bar worked on either side of record i for so long, and until valves that open or close so late are at rest. */
    private boolean settled(double[] bar, int i, double skewS) {
        double clearS = Math.abs(skewS) + VALVES_S;
        return workedAt(bar, i, clearS) > WORKS && workedAt(bar, i, -clearS) > WORKS;
    }

    /** The bar's share of its usual flow so many seconds after (or before) record i; NaN if it did not work all the time between. */
    private double workedAt(double[] bar, int i, double afterS) {
        int direction = afterS < 0 ? -1 : 1;
        double atS = log.timeS(i) + afterS;
        int k = i;
        while (direction * (atS - log.timeS(k)) > 0) {
            int next = k + direction;
            if (next < 0 || next >= bar.length || log.breakBefore(Math.max(k, next)) || !(bar[next] > WORKS)) {
                return Double.NaN;
            }
            k = next;
        }
        if (k == i) {
            return bar[i];
        }
        int before = k - direction;
        double u = (atS - log.timeS(before)) / (log.timeS(k) - log.timeS(before));
        return bar[before] + u * (bar[k] - bar[before]);
    }

    /** Median over events of a row's time less the median row's, s; 0 if the row was seen in too few. */
    private static double[] lateS(double[][] atS) {
        int rows = atS.length;
        double[] late = new double[rows];
        for (int r = 0; r < rows; r++) {
            double[] off = new double[atS[r].length];
            int n = 0;
            double[] others = new double[rows];
            for (double when : atS[r]) {
                int seen = 0;
                for (int other = 0; other < rows; other++) {
                    double near = nearest(atS[other], when);
                    if (Math.abs(near - when) < ONE_EVENT_S) {
                        others[seen++] = near;
                    }
                }
                if (2 * seen > rows && seen >= FlowRatios.MIN_PEERS) {
                    off[n++] = when - RobustStatistics.median(others, seen);
                }
            }
            late[r] = n < MIN_RAMPS ? 0 : RobustStatistics.median(off, n);
        }
        return late;
    }

    /** The value nearest to a time in rising times; NaN for none. */
    private static double nearest(double[] sorted, double whenS) {
        int at = Arrays.binarySearch(sorted, whenS);
        at = at >= 0 ? at : -at - 1;
        double after = at < sorted.length ? sorted[at] : Double.NaN;
        double before = at > 0 ? sorted[at - 1] : Double.NaN;
        return Double.isNaN(before) || after - whenS < whenS - before ? after : before;
    }
}
