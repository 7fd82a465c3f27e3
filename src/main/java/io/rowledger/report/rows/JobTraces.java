package io.rowledger.report.rows;

import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.Arrays;
import java.util.List;

/**
 * One product's rows over the whole job in slices of working time that print apart; no slice crosses the end of a pass. Row r
 * from 0 at the left, slice s from 0 in time order. Steps in which a row's flow is unknown or the row is commanded off are left
 * out of its sums; a slice is NaN for a row if less than half of it is left.
 *
 * <p>Applied rate of a slice: Σ flow·Δt ÷ Σ swept area. By hand: 0.5 L/s for 10 s on 100 m² are 0.05 L/m², and on a target of
 * 0.04 L/m² a deviation of 25 %.
 */
final class JobTraces {
    /** A row is compared with others only if it gives at least this share of the slice's highest rate (1). */
    private static final double MIN_PEER_SHARE = 0.12;
    /** Flow in the first seconds after a pass may be the log's own lag, s; common practice, no source. */
    private static final double SETTLING_S = 5;

    final double[] startS;
    final double[] endS;
    final int[] pass;
    final double[] speedMps;
    /** Mean supply pressure, Pa; NaN where none is logged. */
    final double[] pressurePa;
    /** Mean flow by row and slice, L/s. */
    final double[][] flowLPerS;
    /** Applied rate by row and slice, L/m². */
    final double[][] rateLPerM2;
    /** Target rate by row and slice, L/m². */
    final double[][] targetLPerM2;
    /** Lowest rate of any record by row and slice, L/m². */
    final double[][] minRateLPerM2;
    /** Mean pressure at the row, Pa; NaN where none is logged. */
    final double[][] rowPressurePa;
    /** Mean flow of each row while the bar is lifted, L/s; NaN where the log has no such time. */
    final double[] liftedLPerS;

    private final int slices;

    private JobTraces(int rows, List<Pass> passes) {
        double workingS = 0;
        for (Pass each : passes) {
            workingS += each.endS() - each.startS();
        }
        double sliceS = Math.max(1, workingS / RowPicture.MAX_COLUMNS);
        int[] counts = new int[passes.size()];
        int n = 0;
        for (int i = 0; i < counts.length; i++) {
            Pass each = passes.get(i);
            counts[i] = (int) Math.max(1, Math.floor((each.endS() - each.startS()) / sliceS));
            n += counts[i];
        }
        slices = n;
        startS = new double[n];
        endS = new double[n];
        pass = new int[n];
        speedMps = new double[n];
        pressurePa = new double[n];
        flowLPerS = new double[rows][n];
        rateLPerM2 = new double[rows][n];
        targetLPerM2 = new double[rows][n];
        minRateLPerM2 = new double[rows][n];
        rowPressurePa = new double[rows][n];
        liftedLPerS = new double[rows];
        int s = 0;
        for (int i = 0; i < counts.length; i++) {
            Pass each = passes.get(i);
            double lengthS = (each.endS() - each.startS()) / counts[i];
            for (int j = 0; j < counts[i]; j++) {
                startS[s] = each.startS() + j * lengthS;
                endS[s] = j + 1 == counts[i] ? each.endS() : startS[s] + lengthS;
                pass[s++] = each.number();
            }
        }
    }

    /** The traces of product p. */
    static JobTraces of(LogTable log, Track track, Strips strips, Delivery delivery, int p) {
        JobTraces traces = new JobTraces(strips.rows(), track.passes());
        Poses poses = track.poses();
        int s = 0;
        for (Pass each : track.passes()) {
            int end = each.firstStep();
            for (; s < traces.slices && traces.pass[s] == each.number(); s++) {
                int from = end;
                while (end < each.endStep() && poses.timeS(end) < traces.endS[s] - 1e-6) {
                    end++;
                }
                traces.slice(s, from, end, new Source(log, poses, strips, delivery, p));
            }
        }
        traces.lifted(log, poses, delivery, p);
        return traces;
    }

    private record Source(LogTable log, Poses poses, Strips strips, Delivery delivery, int product) {}

    private void slice(int s, int from, int end, Source in) {
        double lengthS = 0;
        double distanceM = 0;
        double pressure = 0;
        for (int k = from; k < end; k++) {
            double dt = in.poses.durationS(k);
            lengthS += dt;
            distanceM += Math.hypot(
                    in.poses.dropEastM(k + 1) - in.poses.dropEastM(k),
                    in.poses.dropNorthM(k + 1) - in.poses.dropNorthM(k));
            pressure += in.poses.record(k) < 0 ? Double.NaN : in.log.pressurePa(in.poses.record(k)) * dt;
        }
        speedMps[s] = distanceM / lengthS;
        pressurePa[s] = pressure / lengthS;
        for (int r = 0; r < flowLPerS.length; r++) {
            row(r, s, from, end, lengthS, in);
        }
    }

    private void row(int r, int s, int from, int end, double spanS, Source in) {
        double volumeL = 0;
        double areaM2 = 0;
        double targetL = 0;
        double knownS = 0;
        double pressure = 0;
        double lowest = Double.POSITIVE_INFINITY;
        for (int k = from; k < end; k++) {
            int record = in.poses.record(k);
            if (record < 0 || !in.delivery.known(in.product, r, k) || in.log.on(r, record) == 0) {
                continue;
            }
            double dt = in.poses.durationS(k);
            double area = Math.max(0, in.strips.signedAreaM2(k, r));
            double flow = in.delivery.flowLPerS(in.product, r, k);
            knownS += dt;
            volumeL += flow * dt;
            areaM2 += area;
            targetL += in.delivery.targetLPerM2(in.product, r, k) * area;
            pressure += in.log.rowPressurePa(r, record) * dt;
            lowest = area > 0 ? Math.min(lowest, flow * dt / area) : lowest;
        }
        boolean enough = knownS >= spanS / 2 && areaM2 > 0;
        flowLPerS[r][s] = enough ? volumeL / knownS : Double.NaN;
        rateLPerM2[r][s] = enough ? volumeL / areaM2 : Double.NaN;
        targetLPerM2[r][s] = enough ? targetL / areaM2 : Double.NaN;
        minRateLPerM2[r][s] = enough ? lowest : Double.NaN;
        rowPressurePa[r][s] = enough ? pressure / knownS : Double.NaN;
    }

    private void lifted(LogTable log, Poses poses, Delivery delivery, int p) {
        double[] volumeL = new double[liftedLPerS.length];
        double[] timeS = new double[liftedLPerS.length];
        double raisedS = 0;
        for (int k = 0; k < poses.steps(); k++) {
            double dt = poses.durationS(k);
            raisedS = poses.lowered(k) || poses.record(k) < 0 ? 0 : raisedS + dt;
            if (raisedS <= SETTLING_S || !log.hasDown()) {
                continue;
            }
            for (int r = 0; r < volumeL.length; r++) {
                if (delivery.known(p, r, k)) {
                    volumeL[r] += delivery.flowLPerS(p, r, k) * dt;
                    timeS[r] += dt;
                }
            }
        }
        Arrays.setAll(liftedLPerS, r -> timeS[r] > 0 ? volumeL[r] / timeS[r] : Double.NaN);
    }

    int rows() {
        return flowLPerS.length;
    }

    int slices() {
        return slices;
    }

    /** Median rate of the other rows that deliver, L/m² by slice; NaN with fewer than three. Row −1 stands for the bar. */
    double[] peersLPerM2(int row) {
        double[] medians = new double[slices];
        double[] rates = new double[rows()];
        for (int s = 0; s < slices; s++) {
            double most = 0;
            for (int r = 0; r < rows(); r++) {
                most = Math.max(most, Double.isNaN(rateLPerM2[r][s]) ? 0 : rateLPerM2[r][s]);
            }
            int n = 0;
            for (int r = 0; r < rows(); r++) {
                if (r != row && rateLPerM2[r][s] > MIN_PEER_SHARE * most) {
                    rates[n++] = rateLPerM2[r][s];
                }
            }
            medians[s] = n < 3 ? Double.NaN : RobustStatistics.median(rates, n);
        }
        return medians;
    }

    /** Mean rate of the rows that are known, L/m² by slice. */
    double[] barRateLPerM2() {
        double[] means = new double[slices];
        for (int s = 0; s < slices; s++) {
            double sum = 0;
            int n = 0;
            for (double[] row : rateLPerM2) {
                if (!Double.isNaN(row[s])) {
                    sum += row[s];
                    n++;
                }
            }
            means[s] = n == 0 ? Double.NaN : sum / n;
        }
        return means;
    }

    /**
     * Deviation of every row from its target in the columns of a picture; NaN without a target, and where a row alone could not be
     * held against the others: then it was shut off or switching. Where no row could, the whole bar may have run empty, which shows.
     */
    RowPicture againstTarget(RowTime peers) {
        float[][] deviation = new float[rows()][slices];
        int[] evaluated = new int[rows()];
        int bin = 0;
        for (int s = 0; s < slices; s++) {
            Arrays.fill(evaluated, 0);
            int bins = 0;
            int most = 0;
            for (; bin < peers.bins() && peers.endS(bin) <= startS[s]; bin++) {}
            for (int b = bin; b < peers.bins() && peers.startS(b) < endS[s]; b++) {
                bins++;
                for (int r = 0; r < evaluated.length; r++) {
                    evaluated[r] += Double.isNaN(peers.deviation(r, b)) ? 0 : 1;
                    most = Math.max(most, evaluated[r]);
                }
            }
            for (int r = 0; r < evaluated.length; r++) {
                double target = targetLPerM2[r][s];
                boolean alone = 2 * evaluated[r] < bins && 2 * most >= bins;
                deviation[r][s] = target > 0 && !alone ? (float) (rateLPerM2[r][s] / target - 1) : Float.NaN;
            }
        }
        return new RowPicture(startS, endS, pass, deviation);
    }

    /** True if some slice has a target. */
    boolean hasTarget() {
        return any(targetLPerM2);
    }

    /** True if some slice has a pressure at row r. */
    boolean hasRowPressure(int r) {
        return any(new double[][] {rowPressurePa[r]});
    }

    /** True if some slice has a supply pressure. */
    boolean hasPressure() {
        return any(new double[][] {pressurePa});
    }

    private static boolean any(double[][] columns) {
        for (double[] column : columns) {
            for (double value : column) {
                if (Double.isFinite(value)) {
                    return true;
                }
            }
        }
        return false;
    }
}
