package io.rowledger.diagnose.setup;

import io.rowledger.geo.LocalPlane;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A log of straight passes north and south in turn, written down record by record from plain arithmetic: no noise, no
 * simulator. Four rows of 1 m; the drop line runs 6 m behind the antenna, the bar straight behind the tractor.
 *
 * <p>Work begins and ends on the lines y = 0 and y = {@value #LENGTH_M}; the flow follows after {@link #flowLateS}.
 */
final class HandMadeLog {
    static final double LENGTH_M = 120;
    static final double BAR_M = 4;
    static final double BEHIND_M = 6;
    private static final double RUN_M = 40;
    private static final double RATE_HZ = 10;

    final double flowLateS;
    final double[] speedsMps;
    final double headlandSlope;
    private double averagedS;

    /** Passes at these speeds; the headland's line rises by so much for each meter east. */
    HandMadeLog(double flowLateS, double headlandSlope, double... speedsMps) {
        this.flowLateS = flowLateS;
        this.headlandSlope = headlandSlope;
        this.speedsMps = speedsMps;
    }

    /** The log has means of the flows over the last so many seconds. */
    HandMadeLog averaged(double seconds) {
        averagedS = seconds;
        return this;
    }

    /** Share of the time that the log averages over that lies after an edge so long ago (1). */
    private double passed(double sinceS) {
        return averagedS > 0 ? Math.max(0, Math.min(1, sinceS / averagedS)) : sinceS > 0 ? 1 : 0;
    }

    String csv() {
        StringBuilder b = new StringBuilder(
                "epoch_s,lat,lon,down,fix,flow_01[L/min],flow_02[L/min],flow_03[L/min],flow_04[L/min]\n");
        LocalPlane plane = new LocalPlane(41.5, -93.5);
        double startS = 1_780_000_000;
        for (int pass = 0; pass < speedsMps.length; pass++) {
            startS = pass(b, plane, startS, pass) + 60;
        }
        return b.toString();
    }

    private double pass(StringBuilder b, LocalPlane plane, double startS, int pass) {
        boolean north = pass % 2 == 0;
        double east = pass * BAR_M;
        double speed = speedsMps[pass];
        double lineM = headlandSlope * east;
        // Along the way driven: the drop line comes to the first line at beginS and to the second at endS. Records lie
        // at odd
        // twentieths of a second about them, so that halfway between two records is exactly there.
        double beginS = Math.rint(RUN_M / speed * RATE_HZ) / RATE_HZ;
        double endS = beginS + Math.rint(LENGTH_M / speed * RATE_HZ) / RATE_HZ;
        double lengthM = (endS - beginS) * speed;
        double t = 0.05;
        double[] degrees = new double[2];
        while (t * speed < RUN_M + lengthM + RUN_M) {
            double dropM = (t - beginS) * speed;
            double antennaM = dropM + BEHIND_M;
            double y = lineM + (north ? antennaM : LENGTH_M - antennaM);
            plane.inverse(east, y, degrees);
            boolean down = t > beginS && t < endS;
            double flow = 3 * (passed(t - beginS - flowLateS) - passed(t - endS - flowLateS));
            b.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.10f,%.10f,%d,4,%.1f,%.1f,%.1f,%.1f%n",
                    startS + t,
                    degrees[0],
                    degrees[1],
                    down ? 1 : 0,
                    flow,
                    flow,
                    flow,
                    flow));
            t += 1 / RATE_HZ;
        }
        return startS + t;
    }

    /** A rig file for it. */
    static String rig(String hitchToDrop, String barRight, String flowLag) {
        List<String> lines = new ArrayList<>();
        lines.add("rig:");
        lines.add("  antenna: {ahead_of_axle: 0 m}");
        lines.add("  axle_to_hitch: 1 m");
        lines.add("  hitch: pull-type");
        lines.add("  hitch_to_wheels: 4 m");
        lines.add("  hitch_to_drop: " + hitchToDrop);
        lines.add("  bar_right_of_center: " + barRight);
        lines.add("rows: {count: 4, spacing: 1 m, outer_share: 1}");
        lines.add("products:");
        lines.add("  uan:");
        lines.add("    density: 11.06 lb/gal");
        lines.add("    target: 150 L/ha");
        lines.add("    flow_lag: " + flowLag);
        return String.join("\n", lines) + "\n";
    }
}
