package io.rowledger.rate;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Product;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Target rate of an outlet in a step: the log's target column, because the machine worked to it; if that is blank, the
 * prescription at the place of the strip; if that has none, the rig file's target.
 */
final class Targets {
    /** Per product one value for all records, or one per record, L/m²; with a prescription NaN where the log has none. */
    private final double[][] columnLPerM2;

    private final @Nullable PrescribedRates prescribed;
    /** Per product the rig file's target, L/m²; used only with a prescription. */
    private final double[] rigLPerM2;

    /** Targets without a prescription: per product one value for all records, or one per record, L/m². */
    Targets(double[][] columnLPerM2) {
        this(columnLPerM2, null, new double[0]);
    }

    private Targets(double[][] columnLPerM2, @Nullable PrescribedRates prescribed, double[] rigLPerM2) {
        this.columnLPerM2 = columnLPerM2;
        this.prescribed = prescribed;
        this.rigLPerM2 = rigLPerM2;
    }

    static Targets of(LogTable log, List<Product> products, @Nullable PrescribedRates prescribed) {
        double[][] columns = new double[products.size()][];
        for (int p = 0; p < columns.length; p++) {
            columns[p] = column(log, p, prescribed == null ? products.get(p).targetLPerM2() : Double.NaN);
        }
        double[] rig = products.stream().mapToDouble(Product::targetLPerM2).toArray();
        return new Targets(columns, prescribed, rig);
    }

    private static double[] column(LogTable log, int p, double otherwise) {
        if (!log.hasTarget(p)) {
            return new double[] {otherwise};
        }
        double[] column = new double[log.records()];
        for (int i = 0; i < column.length; i++) {
            double logged = log.targetLPerM2(p, i);
            column[i] = Double.isNaN(logged) ? otherwise : logged;
        }
        return column;
    }

    /** Returns the target of outlet r in step k of record i, L/m²; NaN if there is none. */
    double lPerM2(int p, int r, int k, int i) {
        double[] column = columnLPerM2[p];
        double logged = column.length == 1 ? column[0] : column[i];
        if (prescribed == null || !Double.isNaN(logged)) {
            return logged;
        }
        double rate = prescribed.rateLPerM2(p, r, k);
        return Double.isNaN(rate) ? rigLPerM2[p] : rate;
    }

    boolean hasPrescription() {
        return prescribed != null;
    }

    /** Returns true if the outlets can have different targets in record i. */
    boolean byRow(int p, int i) {
        double[] column = columnLPerM2[p];
        return prescribed != null && Double.isNaN(column.length == 1 ? column[0] : column[i]);
    }

    /** Returns true if a step may have no target of product p. */
    boolean mayLack(int p) {
        if (prescribed != null) {
            return Double.isNaN(rigLPerM2[p]);
        }
        for (double target : columnLPerM2[p]) {
            if (Double.isNaN(target)) {
                return true;
            }
        }
        return false;
    }
}
