package io.rowledger.rate;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * Takes the flow lag out of the meters' columns and decides per step which outlets delivered.
 *
 * <p>A meter with lag shows at t + lag what left the outlet at t. Flow is read between records in a straight line;
 * whether it flowed is read from the nearest record, so that an edge falls half-way between two records and is not
 * drawn out by the reading between them.
 */
public final class DeliveryBuilder {
    /** Delivering is flow above this share of what the target asks. */
    static final double DELIVERING_SHARE = 0.05;

    /** An empty flow field is filled from its neighbours when they are no farther apart than this, s. */
    private static final double MAX_FILL_S = 2.0;

    private final LogTable log;
    private final Rig rig;
    private final Strips strips;
    private final Targets targets;

    private DeliveryBuilder(LogTable log, Rig rig, Strips strips, @Nullable Planned planned) {
        this.log = log;
        this.rig = rig;
        this.strips = strips;
        this.targets = Targets.of(log, rig.products(), planned);
    }

    /** Builds the delivery of every product and outlet for the steps of these strips. */
    public static Delivery build(LogTable log, Rig rig, Strips strips) {
        return build(log, rig, strips, null);
    }

    /** The same with what a prescription asks for at the place of each strip, or null for none. */
    public static Delivery build(LogTable log, Rig rig, Strips strips, @Nullable Planned planned) {
        return new DeliveryBuilder(log, rig, strips, planned).build();
    }

    private Delivery build() {
        Poses poses = strips.poses();
        int products = rig.products().size();
        int rows = strips.rows();
        double[][][] flow = new double[products][rows][];
        BitSet[] delivering = new BitSet[rows];
        Arrays.setAll(delivering, r -> new BitSet(poses.steps()));
        double[] barSpeed = barSpeeds(poses);
        for (int p = 0; p < products; p++) {
            Product product = rig.products().get(p);
            boolean untargeted = targets.mayLack(p);
            int[] nearest = product.flowLagS() == 0 ? null : shownAt(product.flowLagS());
            for (int r = 0; r < rows; r++) {
                double[] column = filled(log.flowColumn(p, r));
                flow[p][r] = nearest == null ? column : shifted(column, product.flowLagS());
                double limit = untargeted ? untargetedLimit(column) : Double.NaN;
                markDelivering(column, nearest, p, r, limit, barSpeed, delivering[r]);
            }
        }
        int[] record = new int[poses.steps()];
        Arrays.setAll(record, poses::record);
        return new Delivery(flow, targets, delivering, record);
    }

    /** Mean forward speed of the bar in each working step, m/s; NaN elsewhere. */
    private double[] barSpeeds(Poses poses) {
        double[] speed = new double[poses.steps()];
        double width = 0;
        for (int r = 0; r < strips.rows(); r++) {
            width += strips.rightM(r) - strips.leftM(r);
        }
        for (int k = 0; k < speed.length; k++) {
            speed[k] = Double.NaN;
            if (poses.working(k)) {
                double area = 0;
                for (int r = 0; r < strips.rows(); r++) {
                    area += strips.signedAreaM2(k, r);
                }
                speed[k] = area / width / poses.durationS(k);
            }
        }
        return speed;
    }

    /** Without a target: the share of the flow that nine of ten flowing records stay under, L/s. */
    private static double untargetedLimit(double[] column) {
        double[] positive = Arrays.stream(column).filter(f -> f > 0).sorted().toArray();
        return positive.length == 0
                ? Double.POSITIVE_INFINITY
                : DELIVERING_SHARE * positive[(int) (0.9 * (positive.length - 1))];
    }

    private void markDelivering(
            double[] column,
            int @Nullable [] nearest,
            int p,
            int r,
            double untargetedLimit,
            double[] barSpeed,
            BitSet delivering) {
        Poses poses = strips.poses();
        double width = strips.rightM(r) - strips.leftM(r);
        for (int k = 0; k < barSpeed.length; k++) {
            if (!poses.working(k)) {
                continue;
            }
            int i = poses.record(k);
            double shown = column[nearest == null ? i : nearest[k]];
            double asked = targets.lPerM2(p, r, k, i);
            double limit = Double.isNaN(asked) ? untargetedLimit : DELIVERING_SHARE * asked * width * barSpeed[k];
            if (shown > limit && shown > 0) {
                delivering.set(k);
            }
        }
    }

    /**
     * For every step, the record that showed what left the outlet in its middle: the one nearest in time to that plus the
     * lag. By steps and not by records, for a lag that is no whole number of records would else shift every start and stop
     * by up to half a record, which at one record a second is a metre.
     */
    private int[] shownAt(double lagS) {
        Poses poses = strips.poses();
        int n = log.records();
        int[] nearest = new int[poses.steps()];
        int j = 0;
        for (int k = 0; k < nearest.length; k++) {
            double shown = (poses.timeS(k) + poses.timeS(k + 1)) / 2 + lagS;
            while (j + 1 < n && Math.abs(log.timeS(j + 1) - shown) <= Math.abs(log.timeS(j) - shown)) {
                j++;
            }
            nearest[k] = j;
        }
        return nearest;
    }

    private double[] shifted(double[] column, double lagS) {
        int n = column.length;
        double[] flow = new double[n];
        int j = 0;
        for (int i = 0; i < n; i++) {
            double shown = log.timeS(i) + lagS;
            while (j + 2 < n && log.timeS(j + 1) <= shown) {
                j++;
            }
            if (n == 1) {
                flow[i] = column[0];
                continue;
            }
            double u = (shown - log.timeS(j)) / (log.timeS(j + 1) - log.timeS(j));
            u = Math.max(0, Math.min(1, u));
            flow[i] = column[j] + u * (column[j + 1] - column[j]);
        }
        return flow;
    }

    /** The column without NaN: short holes in a straight line, long ones as no flow. The same array where none. */
    private double[] filled(double[] column) {
        int n = column.length;
        double[] flow = column;
        for (int i = 0; i < n; i++) {
            if (!Double.isNaN(column[i])) {
                continue;
            }
            if (flow == column) {
                flow = column.clone();
            }
            int end = i;
            while (end < n && Double.isNaN(column[end])) {
                end++;
            }
            boolean bridged = i > 0 && end < n && log.timeS(end) - log.timeS(i - 1) <= MAX_FILL_S;
            for (int j = i; j < end; j++) {
                double u = bridged ? (log.timeS(j) - log.timeS(i - 1)) / (log.timeS(end) - log.timeS(i - 1)) : 0;
                flow[j] = bridged ? column[i - 1] + u * (column[end] - column[i - 1]) : 0;
            }
            i = end;
        }
        return flow;
    }
}
