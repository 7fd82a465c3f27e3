package io.rowledger.rate;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Product;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Who says what a row was to give: the log's target column, because that is what the machine was asked; where it is
 * silent the prescription at the place of the strip; where that is silent the rig file.
 */
final class Targets {
    /** Per product a figure for all records or one a record; with a prescription NaN where the log is silent. */
    private final double[][] columnLPerM2;

    private final @Nullable Planned planned;
    /** Per product the rig file's target; read only with a prescription. */
    private final double[] rigLPerM2;

    /** Targets without a prescription: per product one figure for all records, or one a record. */
    Targets(double[][] columnLPerM2) {
        this(columnLPerM2, null, new double[0]);
    }

    private Targets(double[][] columnLPerM2, @Nullable Planned planned, double[] rigLPerM2) {
        this.columnLPerM2 = columnLPerM2;
        this.planned = planned;
        this.rigLPerM2 = rigLPerM2;
    }

    static Targets of(LogTable log, List<Product> products, @Nullable Planned planned) {
        double[][] columns = new double[products.size()][];
        for (int p = 0; p < columns.length; p++) {
            columns[p] = column(log, p, planned == null ? products.get(p).targetLPerM2() : Double.NaN);
        }
        double[] rig = products.stream().mapToDouble(Product::targetLPerM2).toArray();
        return new Targets(columns, planned, rig);
    }

    private static double[] column(LogTable log, int p, double where) {
        if (!log.hasTarget(p)) {
            return new double[] {where};
        }
        double[] column = new double[log.records()];
        for (int i = 0; i < column.length; i++) {
            double logged = log.targetLPerM2(p, i);
            column[i] = Double.isNaN(logged) ? where : logged;
        }
        return column;
    }

    /** Target of outlet r in step k of record i, L/m²; NaN where nobody gave one. */
    double lPerM2(int p, int r, int k, int i) {
        double[] column = columnLPerM2[p];
        double said = column.length == 1 ? column[0] : column[i];
        if (planned == null || !Double.isNaN(said)) {
            return said;
        }
        double rate = planned.rateLPerM2(p, r, k);
        return Double.isNaN(rate) ? rigLPerM2[p] : rate;
    }

    boolean planned() {
        return planned != null;
    }

    /** True where the rows of a bar can have different targets in record i. */
    boolean byRow(int p, int i) {
        double[] column = columnLPerM2[p];
        return planned != null && Double.isNaN(column.length == 1 ? column[0] : column[i]);
    }

    /** True where a step may have no target of product p. */
    boolean mayLack(int p) {
        if (planned != null) {
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
