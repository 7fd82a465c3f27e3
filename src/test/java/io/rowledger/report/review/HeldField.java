package io.rowledger.report.review;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A field small enough to work out by hand, driven by a bar of six rows of 0.75 m, 4.5 m in all: eight passes of 320 m side by side
 * from west to east, northward and southward in turn, at 2 m/s, a record a second, the bar lowered on the passes alone. The target is
 * 200 L/ha, 0.02 L/m²; on it a row puts out 0.02 · 0.75 · 2 = 0.03 L/s, 1.8 L/min. A pass covers 320 · 4.5 = 1,440 m², all eight
 * 11,520 m² or 1.152 ha, and take 230.4 L. The boundary lies around exactly that.
 */
final class HeldField {
    static final int ROWS = 6;
    static final int PASSES = 8;
    static final double ROW_M = 0.75;
    static final double PASS_M = 320;
    static final double MPS = 2;
    static final double ON_TARGET_LPM = 1.8;
    /** 2026-06-02T14:00:00Z, 9 in the morning in Chicago. */
    private static final double START_S = Instant.parse("2026-06-02T14:00:00Z").getEpochSecond();

    private static final double LAT0 = 42;
    private static final double LON0 = -93;
    /** Meters a degree of latitude and of longitude at 42° north on WGS 84: series of NIMA TR8350.2, good to a decimeter. */
    private static final double M_PER_LAT = 111_071.2;

    private static final double M_PER_LON = 82_854.3;
    /** Turning room at either end, m. */
    private static final double TURN_M = 12;

    /** Flow of a row, L/min, by pass from 1, row from 1 and distance from the start of the pass. */
    interface Flow {
        double lPerMin(int pass, int row, double alongM);
    }

    /** Speed on a pass, m/s. */
    interface Speed {
        double mps(int pass);
    }

    private Flow flow = (pass, row, alongM) -> ON_TARGET_LPM;
    private Speed speed = pass -> MPS;
    private int leftOut;
    private int nextDayFrom = Integer.MAX_VALUE;
    private boolean oneMeter;
    private boolean timed = true;

    HeldField flow(Flow value) {
        flow = value;
        return this;
    }

    HeldField speed(Speed value) {
        speed = value;
        return this;
    }

    /** Nobody drives this pass. */
    HeldField leftOut(int pass) {
        leftOut = pass;
        return this;
    }

    /** From this pass on it is the next day. */
    HeldField nextDayFrom(int pass) {
        nextDayFrom = pass;
        return this;
    }

    /** The log has one flow for the whole bar. */
    HeldField oneMeter() {
        oneMeter = true;
        return this;
    }

    /** The log has no times, and rates in the place of flows. */
    HeldField withoutTimes() {
        timed = false;
        return this;
    }

    Analysis analyze(Path folder) throws IOException {
        Files.writeString(folder.resolve("log.csv"), log());
        Files.writeString(folder.resolve("rig.yaml"), RIG);
        Files.writeString(folder.resolve("boundary.geojson"), boundary());
        return Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")),
                        folder.resolve("rig.yaml"),
                        folder.resolve("boundary.geojson")),
                1,
                Progress.SILENT);
    }

    private static final String RIG = """
            rig:
              name: Six-row mounted bar
              antenna:
                ahead_of_axle: 1 m
                right_of_center: 0 m
              axle_to_hitch: 1 m
              hitch: mounted
              hitch_to_drop: 1 m
              bar_right_of_center: 0 m
            rows:
              count: 6
              spacing: 0.75 m
              outer_share: 1
            products:
              uan:
                name: UAN 32-0-0
                density: 1.325 kg/L
                analysis: 32-0-0
                target: 200 L/ha
                flow_lag: 0 s
            job:
              field: Held field
              zone: America/Chicago
            """;
    /** Drop line to antenna by that rig file, m. */
    private static final double AHEAD_M = 3;

    private static String boundary() {
        double width = PASSES * ROWS * ROW_M;
        return String.format(
                Locale.ROOT,
                "{\"type\":\"Polygon\",\"coordinates\":[[[%1$.9f,%3$.9f],[%2$.9f,%3$.9f],[%2$.9f,%4$.9f],[%1$.9f,%4$.9f],"
                        + "[%1$.9f,%3$.9f]]]}",
                LON0,
                LON0 + width / M_PER_LON,
                LAT0,
                LAT0 + PASS_M / M_PER_LAT);
    }

    private final StringBuilder text = new StringBuilder();
    private double timeS;
    /** Where the antenna was after the last turn, m from the start of the next pass. */
    private double turnedM = -TURN_M - AHEAD_M;

    private String log() {
        text.append(timed ? "time,lat,lon,fix,down" : "lat,lon,fix,down");
        for (int r = 1; r <= (oneMeter ? 1 : ROWS); r++) {
            String row = oneMeter ? "" : String.format(Locale.ROOT, "_%02d", r);
            text.append(timed ? ",flow" + row + "[L/min]" : ",rate" + row + "[L/ha]");
        }
        text.append(",target[L/ha]\n");
        timeS = START_S;
        for (int pass = 1; pass <= PASSES; pass++) {
            if (pass == nextDayFrom) {
                timeS += 86_400;
            }
            if (pass != leftOut) {
                pass(pass);
            }
        }
        return text.toString();
    }

    private void pass(int pass) {
        boolean north = pass % 2 == 1;
        double mps = speed.mps(pass);
        double east = (pass - 0.5) * ROWS * ROW_M;
        // A record stands in the middle of its second; the first one stands just ahead of where the last turn ended.
        double along = mps / 2 + mps * Math.ceil((turnedM - AHEAD_M - mps / 2) / mps + 1e-9);
        for (; along <= PASS_M + TURN_M; along += mps) {
            // The record answers for half a second before and after; lowered where its whole second is on the pass.
            boolean down = along - mps / 2 >= -1e-6 && along + mps / 2 <= PASS_M + 1e-6;
            record(pass, east, north ? along + AHEAD_M : PASS_M - along - AHEAD_M, down, along, mps);
        }
        double topM = along - mps + AHEAD_M;
        turnedM = PASS_M - topM;
        turn(pass, east, north ? topM : PASS_M - topM, north);
    }

    /** Half a circle to the next pass, lifted. */
    private void turn(int pass, double east, double top, boolean north) {
        double radius = (pass + 1 == leftOut ? 2 : 1) * ROWS * ROW_M / 2;
        int steps = (int) Math.ceil(Math.PI * radius / MPS);
        for (int i = 1; i < steps; i++) {
            double angle = Math.PI * i / steps;
            double x = east + radius * (1 - Math.cos(angle));
            double y = top + (north ? 1 : -1) * radius * Math.sin(angle);
            record(pass, x, y, false, 0, MPS);
        }
    }

    private void record(int pass, double east, double north, boolean down, double along, double mps) {
        if (timed) {
            text.append(Instant.ofEpochMilli(Math.round(timeS * 1000))).append(',');
        }
        text.append(String.format(
                Locale.ROOT, "%.9f,%.9f,4,%d", LAT0 + north / M_PER_LAT, LON0 + east / M_PER_LON, down ? 1 : 0));
        double bar = 0;
        for (int row = 1; row <= ROWS; row++) {
            // Meters ripple: half a percent up and down in turn, so that what the log resolves can be told.
            double ripple = 1 + 0.005 * Math.sin(1.9 * timeS + 2.3 * row);
            double lpm = down ? flow.lPerMin(pass, row, along) * ripple : 0;
            bar += lpm;
            if (!oneMeter) {
                // L/min ÷ (0.75 m · mps · 60 s) is L/m², times 10,000 L/ha.
                text.append(String.format(Locale.ROOT, ",%.3f", timed ? lpm : lpm / (ROW_M * mps * 60) * 10_000));
            }
        }
        if (oneMeter) {
            text.append(String.format(Locale.ROOT, ",%.3f", timed ? bar : bar / (ROWS * ROW_M * mps * 60) * 10_000));
        }
        text.append(",200\n");
        timeS += 1;
    }

    /** The first page's actions as title and text, spaces plain. */
    static List<String> actions(PassReview review) {
        return review.next().actions().stream()
                .map(action -> (action.title() + ". " + action.text()).replace('\u00a0', ' '))
                .toList();
    }

    /** A figure of the first page by its label; null if it isn't there. */
    static @Nullable String figure(PassReview review, String label) {
        return review.figures().stream()
                .filter(figure -> figure.label().equals(label))
                .map(figure -> figure.value().replace('\u00a0', ' '))
                .findFirst()
                .orElse(null);
    }
}
