package io.rowledger.rate;

import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * Removes the flow lag from the flow columns and marks the delivering steps of each outlet.
 *
 * <p>A meter with lag shows at t + lag what left the outlet at t. The flow is interpolated linearly between records; whether
 * an outlet delivers is read from the nearest record, so that an edge falls halfway between two records.
 */
public final class DeliveryBuilder {
    /** An outlet delivers if its flow is above this share of the flow at target (1). */
    static final double DELIVERING_SHARE = 0.05;
    /** Unknown readings are interpolated if the readings beside them are no farther apart than this, s. */
    private static final double MAX_FILL_S = 2.0;

    private final LogTable log;
    private final Rig rig;
    private final Strips strips;
    private final Targets targets;

    private DeliveryBuilder(LogTable log, Rig rig, Strips strips, @Nullable PrescribedRates prescribed) {
        this.log = log;
        this.rig = rig;
        this.strips = strips;
        this.targets = Targets.of(log, rig.products(), prescribed);
    }

    /** Builds the delivery of every product and outlet for the steps of these strips. */
    public static Delivery build(LogTable log, Rig rig, Strips strips) {
        return build(log, rig, strips, null);
    }

    /** The same with a prescription's rates, or null without one. */
    public static Delivery build(LogTable log, Rig rig, Strips strips, @Nullable PrescribedRates prescribed) {
        return new DeliveryBuilder(log, rig, strips, prescribed).build();
    }

    private Delivery build() {
        Poses poses = strips.poses();
        int products = rig.products().size();
        int rows = strips.rows();
        double[][][] flow = new double[products][rows][];
        BitSet[] delivering = new BitSet[rows];
        Arrays.setAll(delivering, r -> new BitSet(poses.steps()));
        double[] barSpeed = barSpeeds(poses);
        int[] record = new int[poses.steps()];
        Arrays.setAll(record, poses::record);
        @Nullable MeterShares[] shares = new MeterShares[products];
        for (int p = 0; p < products; p++) {
            Product product = rig.products().get(p);
            boolean untargeted = targets.mayLack(p);
            int[] nearest = product.flowLagS() == 0 ? null : shownAt(product.flowLagS());
            if (log.metering(p) != Metering.PER_ROW) {
                shares[p] = new MeterShares(log, strips, log.meterRows(p), record);
                flow[p] = shared(p, shares[p], nearest, barSpeed, delivering);
                continue;
            }
            for (int r = 0; r < rows; r++) {
                double[] column = filled(log.flowColumn(p, r));
                flow[p][r] = nearest == null ? column : shifted(column, product.flowLagS());
                double limit = untargeted || log.isOffScale() ? untargetedLimit(column) : Double.NaN;
                markDelivering(column, nearest, p, r, limit, barSpeed, delivering[r]);
            }
        }
        return new Delivery(flow, shares, log.metering(), targets, delivering, record);
    }

    /** Returns the flow of each meter and marks the delivering steps of the rows that are on. */
    private double[][] shared(
            int p, MeterShares shares, int @Nullable [] nearest, double[] barSpeed, BitSet[] delivering) {
        int[][] meterRows = log.meterRows(p);
        double[][] flow = new double[meterRows.length][];
        for (int m = 0; m < meterRows.length; m++) {
            double[] column = filled(log.meterColumn(p, m));
            flow[m] = nearest == null
                    ? column
                    : shifted(column, rig.products().get(p).flowLagS());
            double limit = untargetedLimit(column);
            for (int k = 0; k < barSpeed.length; k++) {
                int i = strips.poses().record(k);
                if (!strips.poses().working(k)) {
                    continue;
                }
                double shown = column[nearest == null ? i : nearest[k]];
                for (int r : meterRows[m]) {
                    if (shares.isOn(r, k) && isDelivering(shown, limit, p, r, k, barSpeed[k], meterRows[m])) {
                        delivering[r].set(k);
                    }
                }
            }
        }
        return flow;
    }

    /**
     * A meter's flow is held against the target of all its rows that are on, so that each of them delivers or none; against
     * its own usual flow without a target, or where the controller's totals show that the flows are on another scale.
     */
    private boolean isDelivering(
            double shown, double untargetedLimit, int p, int r, int k, double barSpeedMps, int[] rows) {
        int i = strips.poses().record(k);
        double targetLPerM2 = targets.lPerM2(p, r, k, i);
        double widthM = 0;
        for (int other : rows) {
            widthM += log.on(other, i) == 0 ? 0 : strips.rightM(other) - strips.leftM(other);
        }
        double targetLimit = DELIVERING_SHARE * targetLPerM2 * widthM * barSpeedMps;
        double limit = Double.isNaN(targetLPerM2) || log.isOffScale() ? untargetedLimit : targetLimit;
        return shown > limit && shown > 0;
    }

    /** Returns the mean forward speed of the bar in each working step, m/s; NaN in other steps. */
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

    /** Threshold without a target: {@link #DELIVERING_SHARE} of the 90th percentile of the positive flows, L/s. */
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
            double targetLPerM2 = targets.lPerM2(p, r, k, i);
            double limit = Double.isNaN(targetLPerM2) || log.isOffScale()
                    ? untargetedLimit
                    : DELIVERING_SHARE * targetLPerM2 * width * barSpeed[k];
            if (shown > limit && shown > 0) {
                delivering.set(k);
            }
        }
    }

    /**
     * Returns per step the record nearest in time to the step's middle plus the lag: the record that shows what left the
     * outlet then. Looked up per step, not per record: a lag that is not a whole number of records would otherwise shift
     * every start and stop by up to half a record.
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

    /** The column read at t + lag, in a straight line between records; NaN next to an unknown reading. */
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
            if (u <= 0 || u >= 1) {
                flow[i] = column[u <= 0 ? j : j + 1];
            } else {
                flow[i] = column[j] + u * (column[j + 1] - column[j]);
            }
        }
        return flow;
    }

    /** Returns the column with short runs of NaN filled in a straight line; the same array if there are none. */
    private double[] filled(double[] column) {
        int n = column.length;
        double[] flow = column;
        for (int i = 0; i < n; i++) {
            if (!Double.isNaN(column[i])) {
                continue;
            }
            int end = i;
            while (end < n && Double.isNaN(column[end])) {
                end++;
            }
            boolean bridged = i > 0 && end < n && log.timeS(end) - log.timeS(i - 1) <= MAX_FILL_S;
            if (bridged && flow == column) {
                flow = column.clone();
            }
            for (int j = i; bridged && j < end; j++) {
                double u = (log.timeS(j) - log.timeS(i - 1)) / (log.timeS(end) - log.timeS(i - 1));
                flow[j] = column[i - 1] + u * (column[end] - column[i - 1]);
            }
            i = end;
        }
        return flow;
    }
}
