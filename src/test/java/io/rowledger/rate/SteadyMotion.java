package io.rowledger.rate;

import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Band;
import io.rowledger.rig.BarLengths;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A bar in exactly known motion, one record a step, written straight into the product's columns: what strips, delivery
 * and rates make of it can be worked out by hand. The clock starts at 0 so that times are exact.
 */
public final class SteadyMotion {
    private SteadyMotion() {}

    /** A drop line whose center goes clockwise around the origin at this radius; the right side is the inside. */
    public static PoseColumns circle(double radiusM, double stepRad, int steps, double stepS) {
        PoseColumns c = columns(steps, stepS);
        for (int i = 0; i <= steps; i++) {
            double heading = i * stepRad;
            put(c, i, -radiusM * Math.cos(heading), radiusM * Math.sin(heading), heading);
        }
        return c;
    }

    /** A drop line whose center goes north from the origin. */
    public static PoseColumns north(double speedMps, int steps, double stepS) {
        PoseColumns c = columns(steps, stepS);
        for (int i = 0; i <= steps; i++) {
            put(c, i, 0, i * stepS * speedMps, 0);
        }
        return c;
    }

    /** One pose of the drop line. */
    public static void put(PoseColumns c, int i, double eastM, double northM, double headingRad) {
        c.dropEastM[i] = eastM;
        c.dropNorthM[i] = northM;
        c.barHeadingRad[i] = headingRad;
        c.barSin[i] = Math.sin(headingRad);
        c.barCos[i] = Math.cos(headingRad);
    }

    /** Columns for so many steps, all of one pass, each its own record. */
    public static PoseColumns columns(int steps, double stepS) {
        PoseColumns c = new PoseColumns();
        int poses = steps + 1;
        c.timeS = new double[poses];
        c.antennaEastM = new double[poses];
        c.antennaNorthM = new double[poses];
        c.headingRad = new double[poses];
        c.hitchEastM = new double[poses];
        c.hitchNorthM = new double[poses];
        c.barHeadingRad = new double[poses];
        c.barSin = new double[poses];
        c.barCos = new double[poses];
        c.dropEastM = new double[poses];
        c.dropNorthM = new double[poses];
        c.record = new int[steps];
        c.pass = new int[steps];
        c.unsettled = new boolean[steps];
        c.backing = new boolean[steps];
        for (int i = 0; i < poses; i++) {
            c.timeS[i] = i * stepS;
        }
        for (int k = 0; k < steps; k++) {
            c.record[k] = k;
            c.pass[k] = 1;
        }
        return c;
    }

    /** A track of these poses with the passes their columns number. */
    public static Track track(PoseColumns c) {
        List<Pass> passes = new ArrayList<>();
        int steps = c.record.length;
        int first = -1;
        for (int k = 0; k <= steps; k++) {
            boolean ends = first >= 0 && (k == steps || c.pass[k] != c.pass[first]);
            if (ends) {
                passes.add(new Pass(c.pass[first], first, k, c.timeS[first], c.timeS[k], 0, 0));
                first = -1;
            }
            if (first < 0 && k < steps && c.pass[k] > 0) {
                first = k;
            }
        }
        TrackQuality quality = new TrackQuality(1, 0, 0, false, new double[10], new int[10]);
        return new Track(new LocalPlane(42, -93), new Poses(c), passes, quality);
    }

    /** A log of one product with one record in the middle of every step; {@code flowLPerS[outlet][record]}. */
    public static LogTable log(PoseColumns poses, double[][] flowLPerS) {
        int n = poses.record.length;
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[n];
        c.latDeg = new double[n];
        c.lonDeg = new double[n];
        c.breakBefore = new boolean[n];
        c.flowLPerS = new double[][][] {flowLPerS};
        c.targetLPerM2 = new double[1][0];
        c.totalLPerS = new double[1][0];
        for (int i = 0; i < n; i++) {
            c.timeS[i] = (poses.timeS[i] + poses.timeS[i + 1]) / 2;
        }
        return new LogTable(c, List.of());
    }

    /** The same flow in every record. */
    public static double[][] steadyFlows(int records, double... flowLPerS) {
        double[][] columns = new double[flowLPerS.length][records];
        for (int r = 0; r < flowLPerS.length; r++) {
            Arrays.fill(columns[r], flowLPerS[r]);
        }
        return columns;
    }

    /** A mounted bar of these bands with one product. */
    public static Rig rig(List<Band> bands, double targetLPerM2, double flowLagS) {
        Product uan = new Product("uan", "UAN 32-0-0", 1.32528, 0.32, 0, 0, 0, targetLPerM2, flowLagS);
        return Rig.of("test", BarLengths.mounted(0, 0, 0), bands, List.of(uan), Job.NONE);
    }

    /** Bands side by side of these widths, centered on the bar. */
    public static List<Band> bandsOfWidth(double... widthM) {
        double at = -Arrays.stream(widthM).sum() / 2;
        List<Band> bands = new ArrayList<>();
        for (int r = 0; r < widthM.length; r++) {
            bands.add(new Band(r + 1, at + widthM[r] / 2, at, at + widthM[r], 1, null));
            at += widthM[r];
        }
        return bands;
    }

    /** Narrow bands of one width around these offsets, so that a band's mean is the value at its offset. */
    public static List<Band> bandsAt(double widthM, double... atM) {
        List<Band> bands = new ArrayList<>();
        for (int r = 0; r < atM.length; r++) {
            bands.add(new Band(r + 1, atM[r], atM[r] - widthM / 2, atM[r] + widthM / 2, 1, null));
        }
        return bands;
    }

    /** Rates of a bar in this motion with these flows, through the product's delivery, strips and rates. */
    public static Rates rates(PoseColumns c, Rig rig, double[][] flowLPerS) {
        Track track = track(c);
        Strips strips = new Strips(track.poses(), rig.bands());
        return RatesBuilder.build(track, strips, DeliveryBuilder.build(log(c, flowLPerS), rig, strips));
    }
}
