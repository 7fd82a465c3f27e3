package io.rowledger.rate;

import io.rowledger.log.Metering;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;

/**
 * Sums areas, volumes and turn errors over steps, per row, per pass and per row in a pass. Always sums over sums, never
 * a mean of ratios.
 *
 * <p>Hot kernel: 3.5 million (step, row) pairs for 144,000 records and 24 outlets; {@code RatesBenchmark} measures it.
 */
public final class RatesBuilder {
    /** A row slower than this share of the bar's speed is at the pivot: its rate has no meaning and is not evaluated. */
    static final double PIVOT_SHARE = 0.05;

    /** The largest over and under are taken where a row moves at more than this share of the bar's speed. */
    static final double EXTREME_SHARE = 0.2;

    /**
     * Volume and area are summed over intervals this long before the remaining turn error is computed, s: a meter scatters by
     * about a percent from record to record (common practice, no source), which a mean of absolute values would add up; a
     * turn takes longer.
     */
    static final double SPELL_S = 5.0;

    /**
     * The remaining turn error excludes this long after a row comes on and before it goes off, s: while a valve moves, the
     * flow shows the valve and not the turn. Flow needs about half a second at least to follow (P. Bennur,
     * MS thesis, Oklahoma State University, 2009); two seconds leave room for slower ones.
     */
    static final double VALVE_S = 2.0;

    private final Track track;
    private final Strips strips;
    private final Delivery delivery;
    private final int rows;
    private final int products;
    private final double[] bandM;
    private double sweptM2;
    private double unsettledM2;

    private RatesBuilder(Track track, Strips strips, Delivery delivery) {
        this.track = track;
        this.strips = strips;
        this.delivery = delivery;
        this.rows = strips.rows();
        this.products = delivery.products();
        this.bandM = new double[rows];
        for (int r = 0; r < rows; r++) {
            bandM[r] = strips.rightM(r) - strips.leftM(r);
        }
    }

    /** Sums the whole job. */
    public static Rates build(Track track, Strips strips, Delivery delivery) {
        return new RatesBuilder(track, strips, delivery).build();
    }

    private Rates build() {
        RemainingTurnError remaining = new RemainingTurnError(rows);
        List<RowSums[]> ofPasses = new ArrayList<>();
        for (Pass pass : track.passes()) {
            RowSums[] sums = newSums();
            sumSteps(pass.firstStep(), pass.endStep(), sums, remaining);
            ofPasses.add(sums);
        }
        RowSums[] whole = newSums();
        List<Rates.PassTotals> passes = new ArrayList<>();
        List<List<RowTotals>> passRows = new ArrayList<>();
        for (int i = 0; i < ofPasses.size(); i++) {
            RowSums[] sums = ofPasses.get(i);
            ErrorSums[] left = remaining.ofPass(i, bandM);
            for (int r = 0; r < rows; r++) {
                sums[r].remaining.add(left[r]);
                whole[r].add(sums[r]);
            }
            List<RowTotals> totals = totals(sums);
            passRows.add(totals);
            passes.add(passTotals(track.passes().get(i).number(), totals));
        }
        return new Rates(totals(whole), passes, passRows, sweptM2, unsettledM2);
    }

    private RowSums[] newSums() {
        RowSums[] sums = new RowSums[rows];
        for (int r = 0; r < rows; r++) {
            sums[r] = new RowSums(products);
        }
        return sums;
    }

    private void sumSteps(int first, int end, RowSums[] sums, RemainingTurnError remaining) {
        double[] area = new double[rows];
        double[] volume = new double[rows];
        boolean[] steadily = new boolean[rows];
        SteadyRuns steady = new SteadyRuns(track.poses(), delivery, VALVE_S);
        remaining.beginPass();
        for (int k = first; k < end; k++) {
            double barArea = 0;
            double barBand = 0;
            double seconds = track.poses().durationS(k);
            boolean unsettled = track.poses().unsettled(k);
            for (int r = 0; r < rows; r++) {
                area[r] = strips.signedAreaM2(k, r);
                barArea += area[r];
                barBand += bandM[r];
                volume[r] = addVolumes(k, r, seconds, area[r], sums[r]);
                if (area[r] > 0) {
                    sums[r].sweptM2 += area[r];
                    sweptM2 += area[r];
                    unsettledM2 += unsettled ? area[r] : 0;
                }
                if (delivery.delivering(r, k)) {
                    sums[r].appliedM2 += Math.max(0, area[r]);
                }
            }
            double barAdvance = barArea / barBand;
            for (int r = 0; r < rows; r++) {
                double rowAdvance = area[r] / bandM[r];
                boolean evaluated = rowAdvance > PIVOT_SHARE * barAdvance;
                if (evaluated) {
                    boolean extreme = rowAdvance > EXTREME_SHARE * barAdvance;
                    sums[r].turn.add(RateFormula.turnError(barAdvance, rowAdvance), area[r], extreme);
                }
                steadily[r] = evaluated && known(r, k) && steady.contains(r, k);
            }
            boolean straight = TurnShifts.turn(strips, k) < RemainingTurnError.STRAIGHT;
            remaining.add(steadily, volume, area, barAdvance, seconds, straight, k + 1 == end);
        }
    }

    /** True if the flow of every product at outlet r is known in step k. */
    private boolean known(int r, int k) {
        for (int p = 0; p < products; p++) {
            if (!delivery.known(p, r, k)) {
                return false;
            }
        }
        return true;
    }

    /** Adds what row r metered in step k; returns the sum over products, L. */
    private double addVolumes(int k, int r, double seconds, double areaM2, RowSums sums) {
        double all = 0;
        double forwardM2 = Math.max(0, areaM2);
        for (int p = 0; p < products; p++) {
            double targetL = delivery.targetLPerM2(p, r, k) * forwardM2;
            sums.targetL[p] += targetL;
            if (delivery.known(p, r, k)) {
                double volume = delivery.flowLPerS(p, r, k) * seconds;
                sums.volumeL[p] += volume;
                sums.meteredTargetL[p] += targetL;
                sums.meteredS[p] += seconds;
                all += volume;
            } else {
                sums.unknownM2[p] += forwardM2;
                sums.unknownS[p] += seconds;
            }
        }
        return all;
    }

    private Rates.PassTotals passTotals(int number, List<RowTotals> totals) {
        double swept = 0;
        for (RowTotals row : totals) {
            swept += row.sweptAreaM2();
        }
        double[] volume = new double[products];
        double[] target = new double[products];
        double[] meteredTarget = new double[products];
        for (int p = 0; p < products; p++) {
            volume[p] = Rates.sumOfKnown(totals, p, RowTotals.ProductTotals::volumeL);
            for (RowTotals row : totals) {
                target[p] += row.products().get(p).targetVolumeL();
                meteredTarget[p] += row.products().get(p).meteredTargetL();
            }
        }
        return new Rates.PassTotals(number, swept, volume, target, meteredTarget);
    }

    private List<RowTotals> totals(RowSums[] sums) {
        List<RowTotals> list = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            RowSums s = sums[r];
            List<RowTotals.ProductTotals> perProduct = new ArrayList<>();
            for (int p = 0; p < products; p++) {
                perProduct.add(s.product(p));
            }
            // A shared meter does not show what a turn did to its rows.
            RowTotals.TurnError remaining =
                    delivery.metering() == Metering.PER_ROW ? s.remaining.error() : RowTotals.TurnError.UNKNOWN;
            list.add(new RowTotals(r + 1, s.sweptM2, s.appliedM2, s.turn.error(), remaining, perProduct));
        }
        return list;
    }

    /** Running sums of one row. */
    private static final class RowSums {
        private double sweptM2;
        private double appliedM2;
        private final double[] volumeL;
        private final double[] targetL;
        private final double[] meteredTargetL;
        private final double[] meteredS;
        private final double[] unknownM2;
        private final double[] unknownS;
        private final ErrorSums turn = new ErrorSums();
        private final ErrorSums remaining = new ErrorSums();

        RowSums(int products) {
            volumeL = new double[products];
            targetL = new double[products];
            meteredTargetL = new double[products];
            meteredS = new double[products];
            unknownM2 = new double[products];
            unknownS = new double[products];
        }

        RowTotals.ProductTotals product(int p) {
            boolean unknown = unknownS[p] > 0 && meteredS[p] == 0;
            return new RowTotals.ProductTotals(
                    unknown ? Double.NaN : volumeL[p], targetL[p], meteredTargetL[p], unknownM2[p]);
        }

        void add(RowSums other) {
            sweptM2 += other.sweptM2;
            appliedM2 += other.appliedM2;
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += other.volumeL[p];
                targetL[p] += other.targetL[p];
                meteredTargetL[p] += other.meteredTargetL[p];
                meteredS[p] += other.meteredS[p];
                unknownM2[p] += other.unknownM2[p];
                unknownS[p] += other.unknownS[p];
            }
            turn.add(other.turn);
            remaining.add(other.remaining);
        }
    }
}
