package io.rowledger.setback;

import io.rowledger.coverage.strips.RowRuns;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.locationtech.jts.geom.Envelope;

/**
 * Bounding boxes of blocks of successive steps, so that a small place need not be compared with every step of the log.
 */
final class StepBlocks {
    /** Steps per block, at most 32 m: a place of a few meters meets one or two blocks of each pass near it. */
    static final int STEPS = 64;

    private final Poses poses;
    private final double leftM;
    private final double rightM;
    private final Envelope[] boxes;

    StepBlocks(Strips strips) {
        this.poses = strips.poses();
        this.leftM = RowRuns.leftmost(strips);
        this.rightM = RowRuns.rightmost(strips);
        this.boxes = new Envelope[(poses.steps() + STEPS - 1) / STEPS];
        for (int b = 0; b < boxes.length; b++) {
            boxes[b] = new Envelope();
            for (int k = first(b); k < end(b); k++) {
                if (poses.working(k)) {
                    boxes[b].expandToInclude(box(k));
                }
            }
        }
    }

    int count() {
        return boxes.length;
    }

    int first(int block) {
        return block * STEPS;
    }

    int end(int block) {
        return Math.min(poses.steps(), (block + 1) * STEPS);
    }

    /** Returns the bounding box of the whole bar in the block's working steps; a null envelope if there is none. */
    Envelope of(int block) {
        return boxes[block];
    }

    /** Returns the bounding box of the whole bar in step k. */
    Envelope box(int k) {
        Envelope box = new Envelope();
        for (int i = k; i <= k + 1; i++) {
            box.expandToInclude(poses.eastM(i, leftM), poses.northM(i, leftM));
            box.expandToInclude(poses.eastM(i, rightM), poses.northM(i, rightM));
        }
        return box;
    }

    /** Returns the distance of every block by this measure of its box, m; infinite for blocks without working steps. */
    double[] awayM(ToDoubleFunction<Envelope> measure) {
        double[] awayM = new double[boxes.length];
        for (int b = 0; b < boxes.length; b++) {
            awayM[b] = boxes[b].isNull() ? Double.POSITIVE_INFINITY : measure.applyAsDouble(boxes[b]);
        }
        return awayM;
    }

    /** Returns the blocks with working steps, nearest first. */
    static int[] byDistance(double[] awayM) {
        Integer[] order = new Integer[awayM.length];
        for (int b = 0; b < order.length; b++) {
            order[b] = b;
        }
        Arrays.sort(order, (a, b) -> awayM[a] == awayM[b] ? a.compareTo(b) : Double.compare(awayM[a], awayM[b]));
        return Arrays.stream(order)
                .mapToInt(Integer::intValue)
                .filter(b -> awayM[b] < Double.POSITIVE_INFINITY)
                .toArray();
    }
}
