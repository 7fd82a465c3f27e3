package io.rowledger.rate;

import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
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

    /**
     * Liquid the meters counted while the bar was lifted, standing or backing, per product, L: it is in no row's figures.
     */
    public static double[] volumeOutsideWorkL(Track track, Delivery delivery) {
        Poses poses = track.poses();
        double[] volume = new double[delivery.products()];
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.record(k) >= 0 && !poses.working(k)) {
                for (int p = 0; p < volume.length; p++) {
                    for (int r = 0; r < delivery.rows(); r++) {
                        volume[p] += delivery.flowLPerS(p, r, k) * poses.durationS(k);
                    }
                }
            }
        }
        return volume;
    }

    private Rates build() {
        RowSums[] whole = newSums();
        List<Rates.PassTotals> passes = new ArrayList<>();
        List<List<RowTotals>> passRows = new ArrayList<>();
        for (Pass pass : track.passes()) {
            RowSums[] sums = newSums();
            sumSteps(pass.firstStep(), pass.endStep(), sums);
            passes.add(passTotals(pass.number(), sums));
            passRows.add(totals(sums));
            for (int r = 0; r < rows; r++) {
                whole[r].add(sums[r]);
            }
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

    private void sumSteps(int first, int end, RowSums[] sums) {
        double[] area = new double[rows];
        double[] volume = new double[rows];
        SteadyRuns steady = new SteadyRuns(track.poses(), delivery, VALVE_S);
        Spell spell = new Spell(rows);
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
                if (rowAdvance > PIVOT_SHARE * barAdvance) {
                    sums[r].turn.add(RateFormula.turnError(barAdvance, rowAdvance), area[r]);
                    if (steady.contains(r, k)) {
                        spell.add(r, volume[r], area[r]);
                    }
                }
            }
            spell.lastS += seconds;
            if (spell.lastS >= SPELL_S || k + 1 == end) {
                spell.evaluate(sums);
            }
        }
    }

    /** Volume and ground of each row over a few seconds of steady delivering. */
    private static final class Spell {
        private final double[] volumeL;
        private final double[] areaM2;
        private double lastS;

        Spell(int rows) {
            volumeL = new double[rows];
            areaM2 = new double[rows];
        }

        void add(int r, double volume, double area) {
            volumeL[r] += volume;
            areaM2[r] += area;
        }

        /** Adds each row's rate against the mean of the rows that delivered, and begins the next spell. */
        void evaluate(RowSums[] sums) {
            double volume = Arrays.stream(volumeL).sum();
            double area = Arrays.stream(areaM2).sum();
            for (int r = 0; r < sums.length; r++) {
                if (areaM2[r] > 0 && volume > 0) {
                    sums[r].remaining.add(volumeL[r] / areaM2[r] / (volume / area) - 1, areaM2[r]);
                }
            }
            Arrays.fill(volumeL, 0);
            Arrays.fill(areaM2, 0);
            lastS = 0;
        }
    }

    /** Adds what row r metered in step k; returns the sum over products, L. */
    private double addVolumes(int k, int r, double seconds, double areaM2, RowSums sums) {
        double all = 0;
        for (int p = 0; p < products; p++) {
            double volume = delivery.flowLPerS(p, r, k) * seconds;
            sums.volumeL[p] += volume;
            sums.targetL[p] += delivery.targetLPerM2(p, r, k) * Math.max(0, areaM2);
            all += volume;
        }
        return all;
    }

    private Rates.PassTotals passTotals(int number, RowSums[] sums) {
        double swept = 0;
        double[] volume = new double[products];
        double[] target = new double[products];
        for (RowSums row : sums) {
            swept += row.sweptM2;
            for (int p = 0; p < products; p++) {
                volume[p] += row.volumeL[p];
                target[p] += row.targetL[p];
            }
        }
        return new Rates.PassTotals(number, swept, volume, target);
    }

    private List<RowTotals> totals(RowSums[] sums) {
        List<RowTotals> list = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            RowSums s = sums[r];
            List<RowTotals.ProductTotals> perProduct = new ArrayList<>();
            for (int p = 0; p < products; p++) {
                perProduct.add(new RowTotals.ProductTotals(s.volumeL[p], s.targetL[p]));
            }
            list.add(new RowTotals(r + 1, s.sweptM2, s.appliedM2, s.turn.error(), s.remaining.error(), perProduct));
        }
        return list;
    }

    /** Running sums of one row. */
    private static final class RowSums {
        private double sweptM2;
        private double appliedM2;
        private final double[] volumeL;
        private final double[] targetL;
        private final ErrorSums turn = new ErrorSums();
        private final ErrorSums remaining = new ErrorSums();

        RowSums(int products) {
            volumeL = new double[products];
            targetL = new double[products];
        }

        void add(RowSums other) {
            sweptM2 += other.sweptM2;
            appliedM2 += other.appliedM2;
            for (int p = 0; p < volumeL.length; p++) {
                volumeL[p] += other.volumeL[p];
                targetL[p] += other.targetL[p];
            }
            turn.add(other.turn);
            remaining.add(other.remaining);
        }
    }
}
