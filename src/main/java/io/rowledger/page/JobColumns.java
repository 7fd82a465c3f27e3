package io.rowledger.page;

import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.track.Poses;
import java.util.BitSet;

/** The columns of a job: poses, steps and what each row put out in them. */
final class JobColumns {
    /** A hundredth of a second. */
    private static final double TIME_QUANTUM_S = 0.01;
    /** Rounding to this changes the length of a time step of 0.5 m by less than 0.1 %. */
    private static final double PLACE_QUANTUM_M = 2.5e-4;

    private static final double HEADING_QUANTUM_RAD = 2e-4;
    /**
     * Flows are stored in steps of about this share of the mean flow: below a row meter's own scatter of 1 % (common practice, no
     * source).
     */
    private static final double FLOW_SHARE = 1 / 256.0;
    /** A tenth of a liter a hectare. */
    private static final double TARGET_QUANTUM_L_PER_M2 = 1e-5;

    private static final double PRESSURE_QUANTUM_PA = 1000;

    private final ColumnBlock block = new ColumnBlock();
    private final Poses poses;
    private final Delivery delivery;

    private JobColumns(Poses poses, Delivery delivery) {
        this.poses = poses;
        this.delivery = delivery;
    }

    /** The columns of this job. */
    static ColumnBlock of(Rig rig, LogTable log, Poses poses, Delivery delivery) {
        JobColumns columns = new JobColumns(poses, delivery);
        columns.path();
        columns.steps(log);
        for (int p = 0; p < rig.products().size(); p++) {
            columns.product(p, rig.rows());
        }
        return columns.block;
    }

    private void path() {
        int n = poses.poses();
        double start = n == 0 ? 0 : poses.timeS(0);
        block.add("time", n, TIME_QUANTUM_S, 2, i -> poses.timeS(i) - start);
        block.add("east", n, PLACE_QUANTUM_M, 2, poses::dropEastM);
        block.add("north", n, PLACE_QUANTUM_M, 2, poses::dropNorthM);
        double[] heading = unwrapped();
        block.add("heading", n, HEADING_QUANTUM_RAD, 2, i -> heading[i]);
    }

    /** Bar headings without the jump from 2π to 0, rad. */
    private double[] unwrapped() {
        double[] heading = new double[poses.poses()];
        for (int i = 0; i < heading.length; i++) {
            double before = i == 0 ? 0 : heading[i - 1];
            double now = poses.barHeadingRad(i);
            heading[i] = now + 2 * Math.PI * Math.rint((before - now) / (2 * Math.PI));
        }
        return heading;
    }

    private void steps(LogTable log) {
        int steps = poses.steps();
        block.add("pass", steps, 1, 1, k -> poses.working(k) ? poses.pass(k) : 0);
        block.add("duration", steps, TIME_QUANTUM_S / 10, 1, poses::durationS);
        block.add("fix", steps, 1, 1, k -> poses.record(k) < 0 ? Double.NaN : log.fix(poses.record(k)));
        block.add(
                "pressure",
                steps,
                PRESSURE_QUANTUM_PA,
                1,
                k -> poses.record(k) < 0 ? Double.NaN : log.pressurePa(poses.record(k)));
        for (int r = 0; r < delivery.rows(); r++) {
            int[] toggles = toggles(delivery.deliveringSteps(r));
            block.add("delivering." + (r + 1), toggles.length, 1, 1, i -> toggles[i]);
        }
    }

    /** The steps at which a row begins and ends to deliver, in turn. */
    private static int[] toggles(BitSet delivering) {
        int[] toggles = new int[2 * delivering.cardinality()];
        int n = 0;
        for (int k = delivering.nextSetBit(0); k >= 0; k = delivering.nextSetBit(k + 1)) {
            int end = delivering.nextClearBit(k);
            toggles[n++] = k;
            toggles[n++] = end;
            k = end;
        }
        return java.util.Arrays.copyOf(toggles, n);
    }

    private void product(int p, int rows) {
        int steps = poses.steps();
        double step = flowQuantumLPerS(p, rows);
        int targets = delivery.hasPrescription() ? rows : 1;
        for (int r = 0; r < targets; r++) {
            int row = r;
            block.add(
                    "target." + p + "." + (r + 1),
                    steps,
                    TARGET_QUANTUM_L_PER_M2,
                    1,
                    k -> poses.record(k) < 0 ? Double.NaN : delivery.targetLPerM2(p, row, k));
        }
        for (int r = 0; r < rows; r++) {
            int row = r;
            block.add(
                    "flow." + p + "." + (r + 1),
                    steps,
                    step,
                    1,
                    k -> poses.record(k) >= 0 && delivery.known(p, row, k)
                            ? delivery.flowLPerS(p, row, k)
                            : Double.NaN);
        }
    }

    /** A step of the flows, L/s: the power of two nearest to that share of the mean. */
    private double flowQuantumLPerS(int p, int rows) {
        double sum = 0;
        long count = 0;
        for (int r = 0; r < rows; r++) {
            BitSet delivering = delivery.deliveringSteps(r);
            for (int k = delivering.nextSetBit(0); k >= 0; k = delivering.nextSetBit(k + 1)) {
                if (delivery.known(p, r, k)) {
                    sum += delivery.flowLPerS(p, r, k);
                    count++;
                }
            }
        }
        double mean = count == 0 ? 1 : sum / count;
        return StrictMath.pow(2, Math.rint(StrictMath.log(Math.max(mean, 1e-9) * FLOW_SHARE) / StrictMath.log(2)));
    }
}
