package io.rowledger.diagnose.signal;

import io.rowledger.finding.FindingKind;
import io.rowledger.log.LogTable;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.stats.WeightedMoments;
import io.rowledger.strip.Strips;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * What the detectors share: the ratios, what is known already, and quantities that several of them need, each computed
 * once. Detectors are asked in a fixed order; a case found earlier explains what later ones would stumble over.
 */
public final class Evidence {
    /** After a corner a coarse track is left out for so long, s. */
    private static final double COARSE_CORNER_S = 6;

    /** How a row was before something happened to it is read from so long, s. */
    private static final double BEFORE_S = 180;

    /** The total meter is held against the rows' sum in stretches of so long, s; so many at least tell how it scatters. */
    private static final double STRETCH_S = 15;

    private static final int MIN_STRETCHES = 3;

    /** A meter is told from liquid at so many standard errors. */
    private static final double SIGMAS = 2;

    /** Kinds that keep the whole bar from following target and speed. */
    private static final Set<FindingKind> OF_THE_SUPPLY =
            EnumSet.of(FindingKind.SUPPLY_LIMITED, FindingKind.SUPPLY_FAILING, FindingKind.RAN_EMPTY);

    public final LogTable log;
    public final Strips strips;
    public final Delivery delivery;
    public final FlowRatios ratios;
    public final LogLimits limits;
    public final WorkingSamples work;
    public final Bins bins;
    public final List<TurnShares.Block> turns;
    private final float[][] medians;
    private final BitSet touched = new BitSet();
    private final BitSet blurred = new BitSet();
    private final List<Case> cases = new ArrayList<>();
    private final List<List<LevelShifts.Episode>> episodes = new ArrayList<>();
    private @Nullable Edges edges;
    private @Nullable Demand demand;
    private @Nullable Responses barResponses;
    private @Nullable BarShare barShare;

    public Evidence(LogTable log, Strips strips, Delivery delivery, FlowRatios ratios, List<TurnShares.Block> turns) {
        this.bins = new Bins(ratios.work);
        this.medians = ParallelTasks.map(ratios.rows(), ratios.threads, r -> bins.medians(ratios.ratio[r]))
                .toArray(float[][]::new);
        this.log = log;
        this.strips = strips;
        this.delivery = delivery;
        this.ratios = ratios;
        this.limits = ratios.limits;
        this.work = ratios.work;
        this.turns = turns;
    }

    /** The picture as it is before any meter's fault is taken out. */
    public RowTime picture() {
        return bins.picture(medians.clone());
    }

    public int rows() {
        return ratios.rows();
    }

    /** Returns the function's value for every row, in row order, computed on several threads; it must change nothing. */
    public <T> List<T> ofRows(IntFunction<T> function) {
        return ParallelTasks.map(rows(), ratios.threads, function);
    }

    /** True where the log has a ground speed. */
    public boolean speedLogged() {
        return log.records() > 0 && !Double.isNaN(log.speedMps(log.records() / 2));
    }

    /** What was found so far. */
    public List<Case> cases() {
        return cases;
    }

    /** Keeps what a detector found. */
    public void add(List<Case> found) {
        cases.addAll(found);
    }

    /** Marks row r as one that lacks flow in spells too short for means to show what it gave in them. */
    public void markBlurred(int r) {
        blurred.set(r);
    }

    /** True if row r lacks flow in such spells: what then looks like a swing is none. */
    public boolean isBlurred(int r) {
        return blurred.get(r);
    }

    /** The record of the log behind entry j. */
    int record(int j) {
        return strips.poses().record(work.step[j]);
    }

    /** Starts and ends of the rows' flow in passes; computed at the first call, after levels were looked for. */
    public Edges edges() {
        Edges made = edges;
        if (made == null) {
            List<LevelShifts.Episode> comeAndGo = unexplained().stream()
                    .filter(LevelShifts.Episode::comesAndGoes)
                    .toList();
            made = new Edges(ratios, delivery, log, strips.poses(), cases, comeAndGo);
            edges = made;
        }
        return made;
    }

    /** What target and speed ask; computed at the first call. */
    public Demand demand() {
        Demand made = demand;
        if (made == null) {
            made = new Demand(ratios, log, strips.poses(), delivery);
            demand = made;
        }
        return made;
    }

    /** Demand on a row as the other rows' flow shows it; computed at each call. */
    public Demand peerDemand() {
        return Demand.ofPeers(ratios, strips.poses());
    }

    /** Flow of the whole bar against target and speed; computed at the first call. */
    public BarShare barShare() {
        BarShare made = barShare;
        if (made == null) {
            made = new BarShare(this);
            barShare = made;
        }
        return made;
    }

    /** True if row r is commanded off in entry j; false in a log without commands. */
    public boolean offByCommand(int r, int j) {
        return log.on(r, record(j)) == 0;
    }

    /** How fast the bar as a whole follows; computed at the first call, after a limited supply was looked for. */
    public Responses barResponses() {
        Responses made = barResponses;
        if (made == null) {
            float[] flux = ratios.peerFlux.clone();
            for (Case found : cases) {
                if (OF_THE_SUPPLY.contains(found.kind())) {
                    Arrays.fill(flux, work.entryAt(found.fromS()), work.entryAt(found.toS()), Float.NaN);
                }
            }
            double turnedS = Double.NEGATIVE_INFINITY;
            for (int j = 0; j < work.n; j++) {
                turnedS = ratios.unsteady(j) ? work.timeS[j] : turnedS;
                // In a corner the antenna's speed is not the bar's, and a coarse track knows only the antenna's well.
                flux[j] = work.timeS[j] - turnedS <= (work.coarse ? COARSE_CORNER_S : 0) ? Float.NaN : flux[j];
            }
            made = new Responses(work, demand(), flux, null);
            barResponses = made;
        }
        return made;
    }

    /** Stretches of row r beside its other rows; computed at the first call, after meter faults were taken out. */
    public List<LevelShifts.Episode> episodes(int r) {
        if (episodes.isEmpty()) {
            float[][] present = new float[rows()][];
            Arrays.setAll(present, this::medians);
            LevelShifts levels = new LevelShifts(ratios, bins, present);
            ShutOffFlicker flicker = new ShutOffFlicker(ratios);
            episodes.addAll(ofRows(row -> {
                List<LevelShifts.Episode> ofRow = new ArrayList<>(levels.episodes(row));
                ofRow.removeIf(flicker::explains);
                return ofRow;
            }));
        }
        return episodes.get(r);
    }

    /** All episodes still unexplained. */
    public List<LevelShifts.Episode> unexplained() {
        List<LevelShifts.Episode> all = new ArrayList<>();
        for (int r = 0; r < rows(); r++) {
            all.addAll(episodes(r));
        }
        return all;
    }

    /** Takes episodes out of the unexplained ones. */
    public void explain(List<LevelShifts.Episode> explained) {
        for (LevelShifts.Episode episode : explained) {
            episodes(episode.row()).remove(episode);
        }
    }

    /** Takes a stretch of a row out of the evaluation. */
    public void exclude(int r, double fromS, double toS) {
        BitSet entries = new BitSet(work.n);
        entries.set(work.entryAt(fromS), Math.max(work.entryAt(fromS), work.entryAt(toS + 1e-3)));
        exclude(r, entries);
    }

    /** The same for any entries. */
    public void exclude(int r, BitSet entries) {
        ratios.exclude(r, entries);
        touched.set(r);
    }

    /** Median ratios of row r by bin, as the evaluation now stands. */
    float[] medians(int r) {
        if (touched.get(r)) {
            touched.clear(r);
            medians[r] = bins.medians(ratios.ratio[r]);
        }
        return medians[r];
    }

    /**
     * Sum of the row meters less the total meter, over what the other rows imply for row r, as a mean over a stretch: near
     * the row's deviation where its meter errs, near 0 where the liquid really changed. NaN without a total meter.
     */
    public double meterAgainstTotal(int r, double fromS, double toS) {
        return againstTotal(r, fromS, toS).gap;
    }

    /**
     * Sum of the row meters less the total meter over what the other rows imply for a row (1), and its standard error (1): from how it
     * scatters over stretches of {@value #STRETCH_S} s. Infinite for fewer than {@value #MIN_STRETCHES}.
     */
    public record TotalGap(double gap, double error) {
        /** True if meters rather than the liquid are off by this (1): the gap is nearer to it than to 0, and not by chance. */
        public boolean shows(double deviation) {
            return gap / deviation > 0.5 && Math.abs(gap) > SIGMAS * error;
        }

        /** The gap, or NaN where a gap of this and one of 0 can't be told apart. */
        public double toldFrom(double deviation) {
            return 2 * SIGMAS * error < Math.abs(deviation) ? gap : Double.NaN;
        }

        private TotalGap less(TotalGap before) {
            return Double.isNaN(before.gap) ? this : new TotalGap(gap - before.gap, Math.hypot(error, before.error));
        }
    }

    /** Sums over a stretch: of the rows less the total meter, and what the other rows imply for a row, L/s. */
    private static final class Stretch {
        private double gapLPerS;
        private final WeightedMoments implied = new WeightedMoments();

        double impliedLPerS() {
            return implied.weight() * implied.mean();
        }
    }

    private TotalGap againstTotal(int r, double fromS, double toS) {
        List<Stretch> stretches = stretches(r, fromS, toS);
        double gap = 0;
        double implied = 0;
        double records = 0;
        double squaresWithin = 0;
        for (Stretch stretch : stretches) {
            gap += stretch.gapLPerS;
            implied += stretch.impliedLPerS();
            records += stretch.implied.weight();
            double sigma = stretch.implied.populationDeviation();
            squaresWithin += stretch.implied.weight() * sigma * sigma;
        }
        int n = stretches.size();
        if (n < MIN_STRETCHES) {
            return new TotalGap(n == 0 ? Double.NaN : gap / implied, Double.POSITIVE_INFINITY);
        }
        double squares = 0;
        for (Stretch stretch : stretches) {
            double off = stretch.gapLPerS - gap / implied * stretch.impliedLPerS();
            squares += off * off;
        }
        double scatter = Math.sqrt(squares * n / (n - 1)) / implied;
        // Rounding moves the means of all rows alike, by up to this where the flow hardly varies within a stretch.
        double rounding = rows() * limits.resolutionOfMean(r, Math.sqrt(squaresWithin / records)) / SIGMAS;
        return new TotalGap(gap / implied, Math.hypot(scatter, rounding));
    }

    private List<Stretch> stretches(int r, double fromS, double toS) {
        List<Stretch> stretches = new ArrayList<>();
        List<Case> stuck =
                cases.stream().filter(x -> x.kind() == FindingKind.METER_STUCK).toList();
        double begunS = Double.NEGATIVE_INFINITY;
        int to = work.entryAt(toS);
        for (int j = work.entryAt(fromS); j < to; j++) {
            double total = log.totalLPerS(ratios.product, record(j));
            double own = ratios.impliedLPerS(r, j);
            if (Double.isNaN(total) || !(own > 0) || switching(j)) {
                continue;
            }
            if (work.timeS[j] - begunS > STRETCH_S) {
                begunS = work.timeS[j];
                stretches.add(new Stretch());
            }
            double sum = -total;
            for (int i = 0; i < rows(); i++) {
                sum += rests(stuck, i, j) ? ratios.impliedLPerS(i, j) : ratios.flowLPerS[i][j];
            }
            Stretch last = stretches.get(stretches.size() - 1);
            last.gapLPerS += sum;
            last.implied.add(own, 1);
        }
        return stretches;
    }

    /** True if row i's reading rests in entry j by one of these cases. */
    private boolean rests(List<Case> stuck, int i, int j) {
        for (Case x : stuck) {
            if (x.rows().contains(i) && x.fromS() <= work.timeS[j] && work.timeS[j] <= x.toS()) {
                return true;
            }
        }
        return false;
    }

    /** True while rows may come on or go off one after another, and the total meter at another time. */
    private boolean switching(int j) {
        int q = work.pass[j] - 1;
        double sinceS = work.timeS[j] - work.timeS[work.passFrom[q]];
        double leftS = work.timeS[work.passFrom[q + 1] - 1] - work.timeS[j];
        return Math.min(sinceS, leftS) < EvaluationMask.VALVE_S + limits.smearS() + limits.skewS();
    }

    /**
     * meterAgainstTotal minus its value over the preceding 180 s, which removes the constant calibration offset between
     * row meters and total meter; minus 0 if there is no earlier data.
     */
    public double meterLeftTotal(int r, double fromS, double toS) {
        return leftTotal(r, fromS, toS).gap;
    }

    /** The same with its standard error. */
    public TotalGap leftTotal(int r, double fromS, double toS) {
        return againstTotal(r, fromS, toS).less(againstTotal(r, fromS - BEFORE_S, fromS));
    }

    /** Mean pressure at row r over the median of all rows' in a stretch; NaN where none is logged. */
    public double pressureAgainstPeers(int r, double fromS, double toS) {
        int to = work.entryAt(toS);
        int from = work.entryAt(fromS);
        int stride = Math.max(1, (to - from) / 200);
        double sum = 0;
        int count = 0;
        double[] all = new double[rows()];
        for (int j = from; j < to; j += stride) {
            int n = 0;
            for (int i = 0; i < rows(); i++) {
                double p = log.rowPressurePa(i, record(j));
                if (!Double.isNaN(p)) {
                    all[n++] = p;
                }
            }
            double own = log.rowPressurePa(r, record(j));
            if (n >= FlowRatios.MIN_PEERS && !Double.isNaN(own)) {
                sum += own / RobustStatistics.median(all, n);
                count++;
            }
        }
        return count == 0 ? Double.NaN : sum / count;
    }
}
