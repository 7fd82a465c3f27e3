package io.rowledger.coverage;

import io.rowledger.field.Boundary;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryForTests;
import io.rowledger.rig.Band;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A bar driven by hand: poses, passes and flows for tests, without any log. */
public final class Drive {
    static final double SPEED_MPS = 2;

    private final List<Band> bands = new ArrayList<>();
    private final List<double[]> poses = new ArrayList<>();
    private final List<Integer> passOfStep = new ArrayList<>();
    private final List<double[]> flows = new ArrayList<>();
    private final List<Double> targets = new ArrayList<>();
    private final List<boolean[]> on = new ArrayList<>();
    private int pass;
    private boolean lowered;
    private boolean[] rowOn;
    private double rateLPerM2 = 0.02;
    private double targetLPerM2 = 0.02;
    private double secondShare;
    private double turnRad;
    private double offEastM;
    private double offNorthM;

    /** A bar with bands of one width, centred. */
    public Drive(int rows, double widthM) {
        this(evenEdges(rows, widthM));
    }

    /** A bar with bands between these edges. */
    public Drive(double... edgesM) {
        for (int r = 0; r + 1 < edgesM.length; r++) {
            bands.add(new Band(r + 1, (edgesM[r] + edgesM[r + 1]) / 2, edgesM[r], edgesM[r + 1], 1, null));
        }
        rowOn = new boolean[bands.size()];
        java.util.Arrays.fill(rowOn, true);
    }

    /** A bar with bands of any left and right edge. */
    public Drive(List<double[]> bandsM) {
        for (double[] b : bandsM) {
            bands.add(new Band(bands.size() + 1, (b[0] + b[1]) / 2, b[0], b[1], 1, null));
        }
        rowOn = new boolean[bands.size()];
        java.util.Arrays.fill(rowOn, true);
    }

    private static double[] evenEdges(int rows, double widthM) {
        double[] edges = new double[rows + 1];
        for (int i = 0; i <= rows; i++) {
            edges[i] = (i - rows / 2.0) * widthM;
        }
        return edges;
    }

    /** Turns and shifts everything that is driven from here on, as a whole. */
    Drive frame(double turnRad, double eastM, double northM) {
        this.turnRad = turnRad;
        this.offEastM = eastM;
        this.offNorthM = northM;
        return this;
    }

    /** Carries the lifted bar to a place. */
    public Drive lift(double eastM, double northM, double headingRad) {
        lowered = false;
        pose(eastM, northM, headingRad);
        return this;
    }

    /** Lowers the bar: a new pass starts. */
    public Drive lower() {
        lowered = true;
        pass++;
        return this;
    }

    public Drive rows(boolean state, int... rows) {
        rowOn = rowOn.clone();
        for (int r : rows) {
            rowOn[r - 1] = state;
        }
        return this;
    }

    public Drive rate(double litresPerM2) {
        rateLPerM2 = litresPerM2;
        return this;
    }

    /** A second product: so much of the first one's flow. */
    Drive second(double shareOfFirst) {
        secondShare = shareOfFirst;
        return this;
    }

    public Drive target(double litresPerM2) {
        targetLPerM2 = litresPerM2;
        return this;
    }

    public Drive ahead(double lengthM) {
        return arc(lengthM, 0);
    }

    /** Drives a length while turning clockwise by an angle, in steps of at most 0.5 m and 3 degrees. */
    public Drive arc(double lengthM, double angleRad) {
        int steps = (int) Math.ceil(Math.max(lengthM / 0.5, Math.abs(angleRad) / Math.toRadians(3)));
        for (int i = 0; i < steps; i++) {
            double[] p = poses.get(poses.size() - 1);
            double d = angleRad / steps;
            double chord = lengthM / steps * (d == 0 ? 1 : Math.sin(d / 2) / (d / 2));
            pose(p[0] + chord * Math.sin(p[2] + d / 2), p[1] + chord * Math.cos(p[2] + d / 2), p[2] + d);
        }
        return this;
    }

    /** One pose more, with the step that leads to it. */
    Drive pose(double eastM, double northM, double headingRad) {
        if (!poses.isEmpty()) {
            double[] p = poses.get(poses.size() - 1);
            passOfStep.add(lowered ? pass : 0);
            on.add(rowOn);
            targets.add(targetLPerM2);
            double[] flow = new double[bands.size()];
            double wayM = Math.hypot(eastM - p[0], northM - p[1]);
            double lastS = p[3];
            double durationS = Math.max(0.05, wayM / SPEED_MPS);
            for (Band b : bands) {
                flow[b.row() - 1] = rowOn[b.row() - 1] ? rateLPerM2 * b.widthM() * SPEED_MPS : 0;
            }
            flows.add(flow);
            poses.add(new double[] {eastM, northM, headingRad, lastS + durationS});
        } else {
            poses.add(new double[] {eastM, northM, headingRad, 0});
        }
        return this;
    }

    public Poses poses() {
        int n = poses.size();
        PoseColumns c = new PoseColumns();
        c.timeS = new double[n];
        c.barHeadingRad = new double[n];
        c.barSin = new double[n];
        c.barCos = new double[n];
        c.dropEastM = new double[n];
        c.dropNorthM = new double[n];
        for (int i = 0; i < n; i++) {
            double[] p = poses.get(i);
            double heading = p[2] + turnRad;
            c.timeS[i] = p[3];
            c.barHeadingRad[i] = Math.IEEEremainder(heading, 2 * Math.PI);
            c.barSin[i] = Math.sin(heading);
            c.barCos[i] = Math.cos(heading);
            c.dropEastM[i] = p[0] * Math.cos(turnRad) + p[1] * Math.sin(turnRad) + offEastM;
            c.dropNorthM[i] = p[1] * Math.cos(turnRad) - p[0] * Math.sin(turnRad) + offNorthM;
        }
        c.headingRad = c.barHeadingRad;
        c.antennaEastM = c.dropEastM;
        c.antennaNorthM = c.dropNorthM;
        c.hitchEastM = c.dropEastM;
        c.hitchNorthM = c.dropNorthM;
        c.record = new int[Math.max(0, n - 1)];
        for (int k = 0; k + 1 < n; k++) {
            c.record[k] = k;
        }
        c.pass = passOfStep.stream().mapToInt(Integer::intValue).toArray();
        c.unsettled = new boolean[Math.max(0, n - 1)];
        c.backing = new boolean[Math.max(0, n - 1)];
        return new Poses(c);
    }

    public Track track(Poses poses) {
        List<Pass> passes = new ArrayList<>();
        int k = 0;
        while (k < poses.steps()) {
            int start = k;
            int p = poses.pass(k);
            double lengthM = 0;
            while (k < poses.steps() && poses.pass(k) == p) {
                lengthM += Math.hypot(
                        poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k));
                k++;
            }
            if (p > 0) {
                passes.add(new Pass(p, start, k, poses.timeS(start), poses.timeS(k), lengthM, 0));
            }
        }
        TrackQuality quality = new TrackQuality(0.1, 0, 0, false, new double[9], new int[10]);
        return new Track(new LocalPlane(45, -93), poses, passes, quality);
    }

    public Strips strips(Poses poses) {
        return new Strips(poses, bands);
    }

    public Delivery delivery() {
        int steps = flows.size();
        double[][] flow = new double[bands.size()][steps];
        BitSet[] delivering = new BitSet[bands.size()];
        int[] record = new int[steps];
        double[] target = new double[steps];
        for (int r = 0; r < bands.size(); r++) {
            delivering[r] = new BitSet();
            for (int k = 0; k < steps; k++) {
                record[k] = k;
                target[k] = targets.get(k);
                boolean working = passOfStep.get(k) > 0;
                flow[r][k] = working ? flows.get(k)[r] : 0;
                delivering[r].set(k, working && on.get(k)[r]);
            }
        }
        if (secondShare == 0) {
            return DeliveryForTests.of(new double[][][] {flow}, new double[][] {target}, delivering, record);
        }
        return DeliveryForTests.of(
                new double[][][] {flow, times(secondShare, flow)},
                new double[][] {target, times(secondShare, new double[][] {target})[0]},
                delivering,
                record);
    }

    private static double[][] times(double factor, double[][] columns) {
        return Arrays.stream(columns)
                .map(column -> Arrays.stream(column).map(x -> factor * x).toArray())
                .toArray(double[][]::new);
    }

    List<Band> bands() {
        return bands;
    }

    public Coverage coverage(@Nullable Boundary boundary, CoverageOptions options) {
        Poses poses = poses();
        return Coverages.of(track(poses), strips(poses), delivery(), boundary, options);
    }

    public Coverage coverage() {
        return coverage(null, CoverageOptions.defaults(1));
    }
}
