package io.rowledger.diagnose.setup;

import io.rowledger.geo.LocalPlane;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * A log of straight passes side by side, written down from plain arithmetic with a receiver's noise and a person's habit of
 * lowering and lifting early or late by so many seconds; it shares no code with the simulator. The drop line runs
 * {@value #BEHIND_M} m behind the antenna, the headlands are straight lines across the passes, at a slant.
 *
 * @param speedsMps speed of each pass, m/s
 * @param lowerLateS the bar is lowered so much later than on the line, s; negative early
 * @param liftLateS the same for lifting
 * @param scatterS scatter of both from end to end, 1 sigma, s
 * @param headlandSlope how far the headlands' lines rise per meter to the east
 * @param rateHz records per second
 * @param whiteM noise of a position, 1 sigma, m
 * @param driftM drift of a position over minutes, 1 sigma, m
 */
record HabitJob(
        double[] speedsMps,
        double lowerLateS,
        double liftLateS,
        double scatterS,
        double headlandSlope,
        double rateHz,
        double whiteM,
        double driftM) {
    static final double BAR_M = 9.144;
    static final double BEHIND_M = 6;
    private static final double LENGTH_M = 150;
    private static final double RUN_M = 25;
    private static final double DRIFT_TAU_S = 200;

    /** A job with habits up to 2 s early or late, lowering and lifting alike or not; the receiver RTK or differential. */
    static HabitJob draw(SplittableRandom random, boolean severalSpeeds, boolean habit) {
        double base = random.nextDouble(1.8, 2.8);
        int passes = random.nextInt(14, 25);
        double[] speeds = new double[passes];
        for (int i = 0; i < passes; i++) {
            double factor = severalSpeeds ? new double[] {0.75, 1, 1.3}[3 * i / passes] : 1;
            speeds[i] = base * factor * (1 + 0.01 * random.nextGaussian());
        }
        double lower = habit ? random.nextDouble(-2, 2) : 0;
        double lift = !habit ? 0 : random.nextBoolean() ? lower : random.nextDouble(-2, 2);
        boolean rtk = random.nextDouble() < 0.7;
        return new HabitJob(
                speeds,
                lower,
                lift,
                random.nextDouble(0.02, 0.2),
                random.nextDouble(-0.25, 0.25),
                new double[] {1, 2, 5, 10}[random.nextInt(4)],
                rtk ? 0.01 : 0.04,
                rtk ? 0.01 : 0.12);
    }

    String csv(SplittableRandom random) {
        StringBuilder b = new StringBuilder(
                "epoch_s,lat,lon,down,fix,flow_01[L/min],flow_02[L/min],flow_03[L/min],flow_04[L/min]\n");
        LocalPlane plane = new LocalPlane(41.5, -93.5);
        double[] drift = {driftM * random.nextGaussian(), driftM * random.nextGaussian()};
        double timeS = 0;
        double[] degrees = new double[2];
        double stepS = 1 / rateHz;
        double keep = Math.exp(-stepS / DRIFT_TAU_S);
        for (int pass = 0; pass < speedsMps.length; pass++) {
            boolean north = pass % 2 == 0;
            double east = pass * BAR_M;
            double speed = speedsMps[pass];
            double downFromM = speed * (lowerLateS + scatterS * random.nextGaussian());
            double downToM = LENGTH_M + speed * (liftLateS + scatterS * random.nextGaussian());
            // The first record falls anywhere within a record's time of the start.
            for (double m = -RUN_M + speed * stepS * random.nextDouble(); m < LENGTH_M + RUN_M; m += speed * stepS) {
                for (int k = 0; k < 2; k++) {
                    drift[k] = keep * drift[k] + driftM * Math.sqrt(1 - keep * keep) * random.nextGaussian();
                }
                double antennaM = m + BEHIND_M;
                double along = headlandSlope * east + (north ? antennaM : LENGTH_M - antennaM);
                plane.inverse(
                        east + drift[0] + whiteM * random.nextGaussian(),
                        along + drift[1] + whiteM * random.nextGaussian(),
                        degrees);
                boolean down = m > downFromM && m < downToM;
                double flow = down ? 3 : 0;
                b.append(String.format(
                        Locale.ROOT,
                        "%.2f,%.9f,%.9f,%d,%d,%.1f,%.1f,%.1f,%.1f%n",
                        1_780_000_000 + timeS,
                        degrees[0],
                        degrees[1],
                        down ? 1 : 0,
                        whiteM > 0.02 ? 2 : 4,
                        flow,
                        flow,
                        flow,
                        flow));
                timeS += stepS;
            }
            timeS += 40;
        }
        return b.toString();
    }

    /** A rig file for it: right with {@code hitchToDropM} 5 m. */
    static String rig(double hitchToDropM) {
        List<String> lines = new ArrayList<>();
        lines.add("rig:");
        lines.add("  antenna: {ahead_of_axle: 0 m}");
        lines.add("  axle_to_hitch: 1 m");
        lines.add("  hitch: pull-type");
        lines.add("  hitch_to_wheels: 4 m");
        lines.add(String.format(Locale.ROOT, "  hitch_to_drop: %.3f m", hitchToDropM));
        lines.add("rows: {count: 4, spacing: 2.286 m, outer_share: 1}");
        lines.add("products:");
        lines.add("  uan:");
        lines.add("    density: 11.06 lb/gal");
        lines.add("    target: 20 L/ha");
        return String.join("\n", lines) + "\n";
    }
}
