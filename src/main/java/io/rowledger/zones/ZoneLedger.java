package io.rowledger.zones;

import io.rowledger.coverage.grid.AreaAccumulator;
import io.rowledger.coverage.grid.GroundDeposit;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedStatisticsBuilder;
import io.rowledger.coverage.grid.StripDeposit.Frame;
import io.rowledger.field.Prescription;
import io.rowledger.field.Prescription.Zone;
import io.rowledger.geo.Jts;
import io.rowledger.rate.DeviationLimits;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * Sums the received grid by zone. A cell on a zone line is divided by exact area, as if its rate were uniform; the
 * fractions within some percent of plan use only cells that lie wholly in the zone.
 */
final class ZoneLedger {
    /** Fraction of a cell from which it lies wholly in the zone. */
    private static final double WHOLLY = 1 - 1e-6;

    private final ReceivedGrid grid;
    private final boolean[] hasTarget;

    /**
     * Sums of a grid.
     *
     * @param hasTarget per product, whether the log has a target
     */
    ZoneLedger(ReceivedGrid grid, boolean[] hasTarget) {
        this.grid = grid;
        this.hasTarget = hasTarget;
    }

    List<ZoneSums> sums(Prescription prescription) {
        List<ZoneSums> out = new ArrayList<>();
        for (Zone zone : prescription.zones()) {
            out.add(new Sum(zone).read());
        }
        return out;
    }

    /** Running sums of one zone. */
    private final class Sum {
        private final Zone zone;
        private final int products = grid.volumeL().length;
        private final double[] receivedL = new double[products];
        private final double[] targetL = new double[products];
        private final double[] targetM2 = new double[products];
        private final double[][] withinM2 = new double[3][products];
        private final double[] evaluatedM2 = new double[products];
        private double coveredM2;

        Sum(Zone zone) {
            this.zone = zone;
        }

        ZoneSums read() {
            double cell = grid.cellM();
            Envelope whole = new Envelope(
                    grid.east0M(),
                    grid.east0M() + grid.cols() * cell,
                    grid.north0M(),
                    grid.north0M() + grid.rows() * cell);
            Geometry inGrid = Jts.intersection(zone.area(), Jts.FACTORY.toGeometry(whole));
            if (!inGrid.isEmpty()) {
                cells(inGrid);
            }
            double areaM2 = zone.area().getArea();
            List<ZoneProduct> list = new ArrayList<>();
            for (int p = 0; p < products; p++) {
                list.add(product(p, areaM2));
            }
            return new ZoneSums(zone, areaM2, coveredM2, list);
        }

        private void cells(Geometry inGrid) {
            double cell = grid.cellM();
            Envelope box = inGrid.getEnvelopeInternal();
            int col0 = Math.max(0, (int) Math.floor((box.getMinX() - grid.east0M()) / cell));
            int row0 = Math.max(0, (int) Math.floor((box.getMinY() - grid.north0M()) / cell));
            int cols = (int) Math.floor((box.getMaxX() - grid.east0M()) / cell) - col0 + 1;
            int rows = (int) Math.floor((box.getMaxY() - grid.north0M()) / cell) - row0 + 1;
            Frame frame = new Frame(grid.east0M() + col0 * cell, grid.north0M() + row0 * cell, cell);
            // One column and row to spare for an edge on the grid's own rim.
            AreaAccumulator share = new AreaAccumulator(cols + 1, rows + 1);
            GroundDeposit.add(inGrid, frame, share);
            double[] line = new double[cols + 1];
            for (int row = 0; row < rows && row0 + row < grid.rows(); row++) {
                share.readRow(row, line);
                int first = (row0 + row) * grid.cols() + col0;
                for (int col = 0; col < cols && col0 + col < grid.cols(); col++) {
                    if (line[col] > 0) {
                        add(first + col, Math.min(1, line[col] / (cell * cell)));
                    }
                }
            }
        }

        private void add(int i, double share) {
            double c = grid.coveredM2()[i];
            coveredM2 += share * c;
            boolean evaluate =
                    share >= WHOLLY && c >= ReceivedStatisticsBuilder.MIN_COVERED_SHARE * grid.cellM() * grid.cellM();
            for (int p = 0; p < products; p++) {
                double v = grid.volumeL()[p][i];
                receivedL[p] += share * v;
                double target = grid.targetL()[p][i];
                if (!Double.isNaN(target)) {
                    targetL[p] += share * target;
                    targetM2[p] += share * c;
                }
                if (evaluate && zone.rateLPerM2()[p] > 0) {
                    evaluatedM2[p] += c;
                    double off = Math.abs(v / c / zone.rateLPerM2()[p] - 1) - ReceivedStatisticsBuilder.FLOAT_SLACK;
                    withinM2[0][p] += off <= DeviationLimits.WATCH ? c : 0;
                    withinM2[1][p] += off <= DeviationLimits.ACT ? c : 0;
                    withinM2[2][p] += off <= 0.20 ? c : 0;
                }
            }
        }

        private ZoneProduct product(int p, double areaM2) {
            double plan = zone.rateLPerM2()[p];
            return new ZoneProduct(
                    plan,
                    plan * coveredM2,
                    plan * areaM2,
                    hasTarget[p] && targetM2[p] > 0 ? targetL[p] / targetM2[p] * coveredM2 : Double.NaN,
                    receivedL[p],
                    coveredM2 > 0 ? receivedL[p] / coveredM2 : Double.NaN,
                    100 * withinM2[0][p] / evaluatedM2[p],
                    100 * withinM2[1][p] / evaluatedM2[p],
                    100 * withinM2[2][p] / evaluatedM2[p]);
        }
    }
}
