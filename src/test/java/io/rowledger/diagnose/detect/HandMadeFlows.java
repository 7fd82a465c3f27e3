package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.JobOnDisk;
import io.rowledger.geo.LocalPlane;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * A log whose flows are written down as a function of row and time: no simulator, no noise. Usually {@value #ROWS} rows of 30 in,
 * {@value #PASSES} straight passes north and south in turn, one record a second, RTK fixes.
 *
 * <p>Pass p, from 0, has its records from p · {@value #PERIOD_S} s on: {@value #LIFTED_S} s with the bar lifted,
 * {@value #WORK_S} s of work, {@value #LIFTED_S} s lifted; then the log pauses until the next pass. The speed swings by 4 %
 * about the pass's own within 31 s.
 */
final class HandMadeFlows {
    static final int ROWS = 8;
    static final int PASSES = 6;
    static final int PERIOD_S = 200;
    static final int LIFTED_S = 15;
    static final int WORK_S = 100;

    /** Epoch of time 0, s. */
    static final double START_S = 1_780_000_000;

    /** 42 gal/ac on 30 in at 5 mph: 42 · 5 · 30 / 5940. */
    static final double USUAL_GAL_PER_MIN = 1.0606;

    private static final double MPH_MPS = 0.44704;
    private static final double TARGET_GAL_PER_AC = 42;
    private static final double SPACING_IN = 30;
    private static final double BEHIND_M = 6;

    /** Flow of a row, from 1 at the left, at a time, when the target asks for so much; gal/min. */
    interface Flow {
        double galPerMin(int row, double timeS, double dueGalPerMin);
    }

    /** True while a row is commanded on. */
    interface Command {
        boolean on(int row, double timeS);
    }

    private final Flow flow;
    private int rows = ROWS;
    private @Nullable Command command;
    private double[] speedsMph = {5, 4.6, 5.4, 4.8, 5.2, 5};
    private double roundedTo;
    private Flow meterOf = (row, timeS, gives) -> gives;
    private boolean total;
    private double swing = 0.04;
    private double swingPerS = 2 * Math.PI / 31;
    private int everyS = 1;
    private boolean speedLogged = true;
    private double scatterM;
    private final double[] factors = {1.004, 0.993, 1.009, 0.998, 0.991, 1.006, 0.996, 1.002};

    /** Rows that give this; their meters read what they give unless told otherwise. */
    HandMadeFlows(Flow flow) {
        this.flow = flow;
    }

    /** Meters that read this of what a row gives. */
    HandMadeFlows metered(Flow reading) {
        meterOf = reading;
        return this;
    }

    /** One speed for each pass, mph. */
    HandMadeFlows speeds(double... mph) {
        speedsMph = mph;
        return this;
    }

    /** All passes at this speed, which does not swing, mph. */
    HandMadeFlows steadySpeed(double mph) {
        Arrays.fill(speedsMph, mph);
        swing = 0;
        return this;
    }

    /** One record in so many is logged. */
    HandMadeFlows oneRecordIn(int seconds) {
        everyS = seconds;
        return this;
    }

    /** No speed is logged, and fixes scatter by up to so much to each side. */
    HandMadeFlows withoutSpeed(double scatter) {
        speedLogged = false;
        scatterM = scatter;
        return this;
    }

    /** The speed of every pass swings by this share. */
    HandMadeFlows swinging(double share) {
        swing = share;
        return this;
    }

    /** The speed swings within this time, s. */
    HandMadeFlows within(double seconds) {
        swingPerS = 2 * Math.PI / seconds;
        return this;
    }

    /** Row flows are logged in steps of this, gal/min. */
    HandMadeFlows rounded(double stepGalPerMin) {
        roundedTo = stepGalPerMin;
        return this;
    }

    /** Meters that read alike to the last digit; else each has a fixed error within 1 %. */
    HandMadeFlows withEqualMeters() {
        Arrays.fill(factors, 1);
        return this;
    }

    /** A total meter sees what all rows give. */
    HandMadeFlows withTotal() {
        total = true;
        return this;
    }

    /** The rows' commands are logged. */
    HandMadeFlows commanded(Command on) {
        command = on;
        return this;
    }

    /** A bar of so many rows, at most {@value #ROWS}. */
    HandMadeFlows rows(int count) {
        rows = count;
        return this;
    }

    /** True while the bar is down. */
    static boolean down(double timeS) {
        double inPassS = timeS % PERIOD_S;
        return inPassS >= LIFTED_S && inPassS < LIFTED_S + WORK_S;
    }

    /** Seconds since the bar was lowered in this pass; negative before. */
    static double sinceDownS(double timeS) {
        return timeS % PERIOD_S - LIFTED_S;
    }

    Diagnosis diagnose(Path folder) {
        try {
            Files.writeString(folder.resolve("log.csv"), csv());
            Files.writeString(folder.resolve("rig.yaml"), RIG.replace("COUNT", Integer.toString(rows)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return JobOnDisk.of(folder);
    }

    private String csv() {
        StringBuilder b = new StringBuilder("epoch_s,lat,lon,down,fix,target[gal/ac]");
        b.append(speedLogged ? ",speed[mph]" : "");
        for (int row = 1; row <= rows; row++) {
            b.append(String.format(Locale.ROOT, ",flow_%02d[gal/min]", row));
        }
        for (int row = 1; row <= rows && command != null; row++) {
            b.append(String.format(Locale.ROOT, ",on_%02d", row));
        }
        b.append(total ? ",flow_total[gal/min]\n" : "\n");
        LocalPlane plane = new LocalPlane(41.5, -93.5);
        for (int pass = 0; pass < PASSES; pass++) {
            for (int s = 0; s < LIFTED_S + WORK_S + LIFTED_S; s += everyS) {
                record(b, plane, pass, s);
            }
        }
        return b.toString();
    }

    private void record(StringBuilder b, LocalPlane plane, int pass, double inPassS) {
        double timeS = pass * PERIOD_S + inPassS;
        double mph = speedsMph[pass] * (1 + swing * Math.sin(swingPerS * inPassS));
        // The integral of the speed: how far the antenna has come.
        double alongM = speedsMph[pass] * MPH_MPS * (inPassS - swing / swingPerS * (Math.cos(swingPerS * inPassS) - 1));
        double lengthM = speedsMph[pass] * MPH_MPS * (LIFTED_S + WORK_S + LIFTED_S);
        double y = pass % 2 == 0 ? alongM + BEHIND_M : lengthM - alongM - BEHIND_M;
        double[] degrees = new double[2];
        SplittableRandom noise = new SplittableRandom((long) timeS);
        double eastM = scatterM == 0 ? 0 : noise.nextDouble(-scatterM, scatterM);
        double northM = scatterM == 0 ? 0 : noise.nextDouble(-scatterM, scatterM);
        plane.inverse(pass * rows * SPACING_IN * 0.0254 + eastM, y + northM, degrees);
        b.append(String.format(
                Locale.ROOT,
                "%.1f,%.10f,%.10f,%d,4,%.1f",
                START_S + timeS,
                degrees[0],
                degrees[1],
                down(timeS) ? 1 : 0,
                TARGET_GAL_PER_AC));
        b.append(speedLogged ? String.format(Locale.ROOT, ",%.4f", mph) : "");
        double due = down(timeS) ? TARGET_GAL_PER_AC * mph * SPACING_IN / 5940 : 0;
        double sum = 0;
        for (int row = 1; row <= rows; row++) {
            double gives = flow.galPerMin(row, timeS, due);
            double reads = factors[row - 1] * meterOf.galPerMin(row, timeS, gives);
            sum += gives;
            b.append(String.format(
                    Locale.ROOT, ",%.5f", roundedTo > 0 ? Math.rint(reads / roundedTo) * roundedTo : reads));
        }
        for (int row = 1; row <= rows && command != null; row++) {
            b.append(command.on(row, timeS) ? ",1" : ",0");
        }
        b.append(total ? String.format(Locale.ROOT, ",%.4f%n", sum) : String.format("%n"));
    }

    private static final String RIG = """
            rig:
              antenna: {ahead_of_axle: 0 m}
              axle_to_hitch: 1 m
              hitch: pull-type
              hitch_to_wheels: 4 m
              hitch_to_drop: 5 m
              bar_right_of_center: 0 m
            rows: {count: COUNT, spacing: 30 in, outer_share: 1}
            products:
              uan:
                density: 11.06 lb/gal
                target: 42 gal/ac
                flow_lag: 0 s

            """;
}
