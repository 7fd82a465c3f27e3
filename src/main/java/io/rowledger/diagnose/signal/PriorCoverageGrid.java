package io.rowledger.diagnose.signal;

import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;

/**
 * Whether a row runs over ground that had been covered before: then being off is right. A grid of half a meter keeps when
 * each cell was first delivered to; coarser than the polygons of {@code coverage}, and enough to tell a shut-off from a
 * plugged row.
 */
final class PriorCoverageGrid {
    private static final double CELL_M = 0.5;

    /** Fields too large for half meters get larger cells: 32 MB at most. */
    private static final double MAX_CELLS = 8e6;

    /** Coverage younger than this is the pass's own and does not count, s. */
    private static final double OWN_PASS_S = 5;

    private static final double[] ACROSS = {0.25, 0.75};

    private final Poses poses;
    private final Strips strips;
    private final double cellM;
    private final double eastM;
    private final double northM;
    private final int columns;
    private final double startS;
    private final float[] firstS;

    PriorCoverageGrid(Strips strips, Delivery delivery, WorkingSamples work) {
        this.poses = strips.poses();
        this.strips = strips;
        double[] box = box();
        double area = Math.max(1, (box[2] - box[0]) * (box[3] - box[1]));
        cellM = Math.max(CELL_M, Math.sqrt(area / MAX_CELLS));
        eastM = box[0];
        northM = box[1];
        columns = (int) ((box[2] - box[0]) / cellM) + 1;
        firstS = new float[columns * ((int) ((box[3] - box[1]) / cellM) + 1)];
        Arrays.fill(firstS, Float.POSITIVE_INFINITY);
        startS = poses.poses() == 0 ? 0 : poses.timeS(0);
        for (int j = 0; j < work.n; j++) {
            float now = (float) (work.timeS[j] - startS);
            for (int k = work.step[j]; k < work.endStep[j]; k++) {
                for (int r = 0; r < strips.rows(); r++) {
                    if (delivery.delivering(r, k)) {
                        mark(k, r, now);
                    }
                }
            }
        }
    }

    private double[] box() {
        double margin = 1;
        for (int r = 0; r < strips.rows(); r++) {
            margin = Math.max(margin, 1 + Math.max(Math.abs(strips.leftM(r)), Math.abs(strips.rightM(r))));
        }
        double[] box = {
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
        };
        for (int i = 0; i < poses.poses(); i++) {
            box[0] = Math.min(box[0], poses.dropEastM(i) - margin);
            box[1] = Math.min(box[1], poses.dropNorthM(i) - margin);
            box[2] = Math.max(box[2], poses.dropEastM(i) + margin);
            box[3] = Math.max(box[3], poses.dropNorthM(i) + margin);
        }
        return poses.poses() == 0 ? new double[] {0, 0, 1, 1} : box;
    }

    private int cell(int k, int r, double across) {
        double y = strips.leftM(r) + across * (strips.rightM(r) - strips.leftM(r));
        double e = (poses.eastM(k, y) + poses.eastM(k + 1, y)) / 2;
        double n = (poses.northM(k, y) + poses.northM(k + 1, y)) / 2;
        int line = (int) ((n - northM) / cellM);
        int column = (int) ((e - eastM) / cellM);
        return line * columns + column;
    }

    private void mark(int k, int r, float now) {
        for (double across : ACROSS) {
            int cell = cell(k, r, across);
            firstS[cell] = Math.min(firstS[cell], now);
        }
    }

    /** Share of row r's ground in steps from first (inclusive) to end (exclusive) that had been covered before. */
    double share(int r, int first, int end) {
        int covered = 0;
        int probes = 0;
        for (int k = first; k < end; k++) {
            double now = poses.timeS(k) - startS;
            for (double across : ACROSS) {
                probes++;
                covered += firstS[cell(k, r, across)] < now - OWN_PASS_S ? 1 : 0;
            }
        }
        return probes == 0 ? 0 : (double) covered / probes;
    }
}
