package io.rowledger.rate;

import io.rowledger.log.LogTable;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.BitSet;

/**
 * Divides the flow of a meter that feeds several rows among them: in proportion to the area that each row sweeps in the step,
 * band · row speed, for the rows that are on. That is one rate over the meter's whole width; nothing more is known. Where no
 * row that is on moves forward, by band width among those that are on; where all are off, by band width among all, so that
 * no metered volume is lost.
 */
final class MeterShares {
    private final Strips strips;
    private final LogTable log;
    private final int[] record;
    private final int[] meterOf;
    private final double[][] weight;
    private final BitSet[] byWidth;
    private final BitSet[] allOff;

    /**
     * Sums the weights of each meter and step.
     *
     * @param meterRows rows (from 0) of each meter
     */
    MeterShares(LogTable log, Strips strips, int[][] meterRows, int[] record) {
        this.strips = strips;
        this.log = log;
        this.record = record;
        this.meterOf = new int[strips.rows()];
        this.weight = new double[meterRows.length][record.length];
        this.byWidth = new BitSet[meterRows.length];
        this.allOff = new BitSet[meterRows.length];
        Poses poses = strips.poses();
        Arrays.fill(meterOf, -1);
        for (int m = 0; m < meterRows.length; m++) {
            byWidth[m] = new BitSet(record.length);
            allOff[m] = new BitSet();
            for (int r : meterRows[m]) {
                meterOf[r] = m;
            }
            for (int k = 0; k < record.length; k++) {
                sum(m, meterRows[m], k, poses.working(k));
            }
        }
    }

    private void sum(int m, int[] rows, int k, boolean working) {
        double areaM2 = 0;
        double onM = 0;
        double allM = 0;
        for (int r : rows) {
            allM += widthM(r);
            if (isOn(r, k)) {
                onM += widthM(r);
                areaM2 += working ? Math.max(0, strips.signedAreaM2(k, r)) : 0;
            }
        }
        byWidth[m].set(k, !(areaM2 > 0));
        allOff[m].set(k, !(onM > 0));
        weight[m][k] = areaM2 > 0 ? areaM2 : onM > 0 ? onM : allM;
    }

    /** Returns the meter (from 0) of row r; -1 if none feeds it. */
    int meterOf(int r) {
        return meterOf[r];
    }

    /** Returns the part of its meter's flow that row r has in step k, 0 to 1. */
    double share(int r, int k) {
        int m = meterOf[r];
        if (m < 0 || (!allOff[m].get(k) && !isOn(r, k))) {
            return 0;
        }
        double own = byWidth[m].get(k) ? widthM(r) : Math.max(0, strips.signedAreaM2(k, r));
        return own / weight[m][k];
    }

    /** Returns false if row r was commanded off in step k. */
    boolean isOn(int r, int k) {
        return record[k] < 0 || log.on(r, record[k]) != 0;
    }

    private double widthM(int r) {
        return strips.rightM(r) - strips.leftM(r);
    }
}
