package io.rowledger.setback;

import io.rowledger.field.KeepOut;
import io.rowledger.field.KeepOutReader;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was applied closer to a place than its setback. Volumes are metered while working; where a strip lies only partly
 * inside, its volume is shared by area. Ground within two setbacks counts in both.
 *
 * @param keepOut the place and its setback
 * @param volumeL put down inside per product, in rig order, L
 * @param nitrogenKg in that volume, per product, kg; NaN where density or analysis is unknown and there is a volume
 * @param coveredM2 ground inside on which outlets delivered, each place once, m²
 * @param firstS start of the first step that put something down inside, epoch seconds; NaN for none
 * @param lastS end of the last one
 * @param passes that put something down inside, ascending
 * @param rows the same for outlets
 * @param worst where most of it lies; null where nothing was put down inside
 * @param closestM least distance from the place to any delivering strip, m; 0 where one lay on it, NaN where no outlet
 *     ever delivered. Where a row begins or ends beside the place it is known to half the way between two records.
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

    /** True where anything was put down inside. */
    public boolean anythingInside() {
        return worst != null;
    }

    /** True where the log never came within {@link KeepOutReader#MAX_AWAY_M}: the place belongs to another field. */
    public boolean notReached() {
        return !(closestM <= KeepOutReader.MAX_AWAY_M);
    }

    /** Of all products, L. */
    public double totalVolumeL() {
        double sum = 0;
        for (double one : volumeL) {
            sum += one;
        }
        return sum;
    }

    /** Of all products, kg; NaN where that of one isn't known. */
    public double totalNitrogenKg() {
        double sum = 0;
        for (double one : nitrogenKg) {
            sum += one;
        }
        return sum;
    }

    /**
     * The pass that put down most inside, and the step in its middle: half of the pass's volume inside lies before it.
     *
     * @param pass from 1
     * @param row the outlet that put down most there, from 1
     * @param timeS start of the step, epoch seconds
     * @param volumeL by that pass, all products, L
     * @param eastM the middle of that outlet's ground inside, in the job's plane
     * @param northM the middle of that outlet's ground inside, in the job's plane
     */
    public record Worst(int pass, int row, double timeS, double volumeL, double eastM, double northM) {}
}
