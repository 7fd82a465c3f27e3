package io.rowledger.setback;

import io.rowledger.field.KeepOut;
import io.rowledger.field.KeepOutReader;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was applied within the setback of a place. Volumes are metered while working; if a strip lies partly inside, its
 * volume is divided by area. Ground within two setbacks counts in both.
 *
 * @param keepOut the place and its setback
 * @param volumeL volume applied inside, per product in rig order, L
 * @param nitrogenKg nitrogen in that volume, per product, kg; NaN if there is a volume and its density or analysis is
 *     unknown
 * @param coveredM2 area inside on which outlets delivered, each place once, m²
 * @param firstS start of the first step that applied inside, s since the epoch; NaN if there is none
 * @param lastS end of the last one, s since the epoch; NaN if there is none
 * @param passes passes that applied inside, ascending
 * @param rows rows that applied inside, ascending
 * @param worst the pass that applied most inside; null if nothing was applied inside
 * @param closestM smallest distance from the place to any delivering strip, m: 0 if one lay on it, NaN if no outlet
 *     ever delivered. Where a row begins or ends beside the place, its uncertainty is half the distance between two
 *     records.
 */
public record Setback(
        KeepOut keepOut,
        double[] volumeL,
        double[] nitrogenKg,
        double coveredM2,
        double firstS,
        double lastS,
        List<Integer> passes,
        List<Integer> rows,
        @Nullable Worst worst,
        double closestM) {
    /** Copies the lists. */
    public Setback {
        passes = List.copyOf(passes);
        rows = List.copyOf(rows);
    }

    /** Returns true if anything was applied inside. */
    public boolean anythingInside() {
        return worst != null;
    }

    /** Returns true if no strip came within {@link KeepOutReader#MAX_AWAY_M}: the place belongs to another field. */
    public boolean notReached() {
        return !(closestM <= KeepOutReader.MAX_AWAY_M);
    }

    /** Returns the volume of all products, L. */
    public double totalVolumeL() {
        double sum = 0;
        for (double one : volumeL) {
            sum += one;
        }
        return sum;
    }

    /** Returns the nitrogen of all products, kg; NaN if that of one is unknown. */
    public double totalNitrogenKg() {
        double sum = 0;
        for (double one : nitrogenKg) {
            sum += one;
        }
        return sum;
    }

    /**
     * The pass that applied most inside, and its middle step there: half of the pass's volume inside lies before it.
     *
     * @param pass from 1
     * @param row the row that applied most there, from 1
     * @param timeS start of the step, s since the epoch
     * @param volumeL volume of that pass inside, all products, L
     * @param eastM east of the middle of that row's ground inside, m in the job's plane
     * @param northM north of the middle of that row's ground inside, m
     */
    public record Worst(int pass, int row, double timeS, double volumeL, double eastM, double northM) {}
}
