package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.source.LogSource;
import io.rowledger.rate.RowTotals;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.Scenarios;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.Truth;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.track.PathBreak;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A clean simulated log, damaged line by line as receivers and loggers do it, against the simulator's truth of the job. How
 * many lines were damaged is counted here, and the program must count the same. The margins: covered area 0.3 %, each
 * row's volume 0.5 %, mean rate 0.5 %, as for the clean log; where a stretch is left open, its ground and what was applied
 * on it come on top.
 */
@Tag("slow")
class DirtyGpsTruthTest {
    private static final SimRig BAR = SimRig.drawn(12);
    private static final double HZ = 5;
    /** No faster than this in the plan, m/s. */
    private static final double FASTEST_MPS = 3.5;

    @TempDir
    static Path folder;

    private static List<String> clean = List.of();
    private static Truth truth;
    private static int lat;
    private static int fix;
    private static int down;

    @BeforeAll
    static void simulate() throws IOException {
        SimResult job = new Scenario(31, BAR, PassPlan.rectangle(240, 6, 1, BAR.widthM()))
                .gnss(GnssModel.rtk(HZ))
                .run()
                .writeTo(folder);
        truth = job.truth();
        clean = List.of(job.logText().split("\n"));
        List<String> header = Arrays.asList(clean.get(0).split(","));
        lat = header.indexOf("lat");
        fix = header.indexOf("fix");
        down = header.indexOf("down");
        assertEquals(lat + 1, header.indexOf("lon"));
        assertTrue(lat >= 0 && fix >= 0 && down >= 0 && clean.size() > 2500, clean.size() + " lines, " + header);
    }

    private static Analysis analyze(List<String> lines) throws IOException {
        Path log = folder.resolve("dirty.csv");
        Files.write(log, lines);
        return Pipeline.analyze(
                new JobFiles(List.of(log), folder.resolve("rig.yaml"), folder.resolve("boundary.geojson")),
                2,
                Progress.SILENT);
    }

    private static LogSource.Dropped dropped(Analysis a) {
        return a.log().sources().get(0).dropped();
    }

    /** The promise, with {@code lostS} seconds of work unknown and {@code astrayM2} of ground laid beside its place. */
    private static void holds(Analysis a, double lostS, double astrayM2) {
        double lostM2 = lostS * FASTEST_MPS * BAR.widthM();
        double coveredM2 = truth.ground().coveredM2();
        double meanRate = a.coverage().received().get(0).meanRateLPerM2();
        double volumeL =
                truth.rows().stream().mapToDouble(row -> row.meteredL()[0]).sum();
        assertAll(
                () -> assertEquals(
                        coveredM2, a.coverage().coveredAreaM2(), 0.003 * coveredM2 + lostM2 + astrayM2, "covered, m2"),
                () -> assertEquals(
                        volumeL / coveredM2,
                        meanRate,
                        (0.005 + astrayM2 / coveredM2) * volumeL / coveredM2,
                        "mean rate"),
                () -> assertEquals(0, a.coverage().received().get(0).conservationError(), 0.001, "grid against log"));
        for (int r = 0; r < truth.rows().size(); r++) {
            double metered = truth.rows().get(r).meteredL()[0];
            RowTotals row = a.rates().rows().get(r);
            assertEquals(
                    metered,
                    row.products().get(0).volumeL(),
                    (0.005 + lostM2 / coveredM2) * metered,
                    "volume of row " + row.row());
        }
    }

    private static String withPosition(String line, String latText, String lonText) {
        String[] fields = line.split(",", -1);
        fields[lat] = latText;
        fields[lat + 1] = lonText;
        return String.join(",", fields);
    }

    private static String at(String line, String other) {
        String[] from = other.split(",", -1);
        return withPosition(line, from[lat], from[lat + 1]);
    }

    private static String moved(String line, double eastM) {
        String[] fields = line.split(",", -1);
        double latDeg = Double.parseDouble(fields[lat]);
        // A degree of longitude at the equator is 111.32 km (WGS 84).
        double lonDeg = Double.parseDouble(fields[lat + 1]) + eastM / (111_320 * Math.cos(Math.toRadians(latDeg)));
        return withPosition(line, fields[lat], String.format(Locale.ROOT, "%.9f", lonDeg));
    }

    @Test
    void fixes_that_freeze_for_a_second_cost_nothing() throws IOException {
        List<String> lines = new ArrayList<>(clean);
        for (int i = 300; i + 10 < lines.size(); i += 150) {
            for (int k = 1; k <= 5; k++) {
                lines.set(i + k, at(lines.get(i + k), lines.get(i)));
            }
        }
        Analysis a = analyze(lines);
        int blocks = (int) Math.ceil((clean.size() - 310) / 150.0);
        assertTrue(dropped(a).frozen() >= 0.8 * 5 * blocks, dropped(a) + " of " + 5 * blocks);
        assertTrue(dropped(a).frozen() <= 5 * blocks, dropped(a) + " of " + 5 * blocks);
        holds(a, 0, 0);
    }

    @Test
    void a_receiver_that_gives_a_fix_a_second_costs_nothing() throws IOException {
        List<String> lines = new ArrayList<>(clean);
        for (int i = 1; i < lines.size(); i++) {
            lines.set(i, at(lines.get(i), clean.get((i - 1) / 5 * 5 + 1)));
        }
        Analysis a = analyze(lines);
        assertTrue(dropped(a).frozen() > 0.7 * clean.size(), dropped(a).toString());
        holds(a, 0, 0);
    }

    @Test
    void stray_fixes_zero_positions_swapped_lines_and_repeated_stamps_are_counted_and_cost_nothing()
            throws IOException {
        List<String> lines = new ArrayList<>();
        int jumps = 0;
        int zeros = 0;
        int repeated = 0;
        int swapped = 0;
        for (int i = 0; i < clean.size(); i++) {
            String line = clean.get(i);
            if (i > 100 && i < clean.size() - 20) {
                if (i % 150 == 0) {
                    line = moved(line, 60);
                    jumps++;
                } else if (i % 200 < 3) {
                    line = withPosition(line, "0", "0");
                    zeros++;
                } else if (i % 97 == 5 && i % 150 > 3) {
                    lines.add(line);
                    repeated++;
                } else if (i % 83 == 7 && i % 150 > 3 && i % 200 > 5 && (i - 1) % 97 != 5) {
                    lines.add(lines.size() - 1, line);
                    swapped++;
                    continue;
                }
            }
            lines.add(line);
        }
        Analysis a = analyze(lines);
        assertEquals(new LogSource.Dropped(zeros, repeated, swapped, jumps, 0), dropped(a));
        holds(a, 0, 0);
    }

    /** The line half-way along each pass of full length: straight on, bar down. */
    private static List<Integer> middles() throws IOException {
        Analysis a = analyze(clean);
        List<Integer> lines = new ArrayList<>();
        for (Pass pass : a.track().passes()) {
            if (pass.lengthM() > 150) {
                lines.add(1
                        + (int) Math.round(
                                ((pass.startS() + pass.endS()) / 2 - a.log().timeS(0)) * HZ));
            }
        }
        assertTrue(lines.size() >= 6, lines.toString());
        return lines;
    }

    private static String withoutFix(String line) {
        String[] fields = withPosition(line, "", "").split(",", -1);
        fields[fix] = "0";
        return String.join(",", fields);
    }

    private static List<String> losing(List<Integer> starts, int records) {
        List<String> lines = new ArrayList<>(clean);
        for (int start : starts) {
            for (int i = start; i < start + records; i++) {
                lines.set(i, withoutFix(lines.get(i)));
            }
        }
        return lines;
    }

    @Test
    void a_fix_lost_for_a_second_is_bridged_everywhere() throws IOException {
        List<Integer> starts = new ArrayList<>();
        for (int i = 250; i + 50 < clean.size(); i += 170) {
            starts.add(i);
        }
        Analysis a = analyze(losing(starts, 6));
        assertEquals(6 * starts.size(), dropped(a).noFix());
        assertEquals(List.of(), a.track().breaks());
        holds(a, 0, 0);
    }

    /** 30 records at 5 Hz are missing between the two fixes: 31 intervals of 0.2 s, about 15 m. */
    @Test
    void a_fix_lost_under_trees_on_a_straight_pass_costs_nothing() throws IOException {
        List<Integer> middles = middles();
        Analysis a = analyze(losing(middles, 30));
        assertEquals(30 * middles.size(), dropped(a).noFix());
        List<PathBreak> breaks = a.track().breaks();
        assertEquals(middles.size(), breaks.size(), breaks.toString());
        for (PathBreak each : breaks) {
            assertEquals(PathBreak.Kind.BRIDGED, each.kind());
            assertEquals(31 / HZ, each.durationS(), 1e-3);
        }
        assertTrue(
                a.notes().stream().anyMatch(note -> isNote(note, "notes.breaks.bridged", middles.size())),
                a.notes().toString());
        holds(a, 0, 0);
    }

    /** Arcs of 64 to 146 m radius: in 4.2 s, about 10 m, the straight line between the fixes would cut the bend by 20 cm. */
    @Test
    void a_fix_lost_in_a_contour_is_carried_along_the_bend() throws IOException {
        Path bend = folder.resolve("bend");
        SimResult job = Scenarios.contourDrawn(32).gnss(GnssModel.rtk(HZ)).run().writeTo(bend);
        List<String> lines = new ArrayList<>(Files.readAllLines(bend.resolve("log.csv")));
        JobFiles files = new JobFiles(
                List.of(bend.resolve("log.csv")), bend.resolve("rig.yaml"), bend.resolve("boundary.geojson"));
        Analysis a = Pipeline.analyze(files, 2, Progress.SILENT);
        int lost = 0;
        for (Pass pass : a.track().passes()) {
            int start = 1
                    + (int) Math.round(
                            ((pass.startS() + pass.endS()) / 2 - a.log().timeS(0)) * HZ);
            for (int i = start; pass.lengthM() > 150 && i < start + 20; i++) {
                lines.set(i, withoutFix(lines.get(i)));
            }
            lost += pass.lengthM() > 150 ? 1 : 0;
        }
        Files.write(bend.resolve("log.csv"), lines);
        Analysis dirty = Pipeline.analyze(files, 2, Progress.SILENT);
        assertTrue(lost >= 10, lost + " passes");
        assertEquals(
                lost,
                dirty.track().breaks().stream()
                        .filter(each -> each.kind() == PathBreak.Kind.BRIDGED)
                        .count());
        Truth.Ground ground = job.truth().ground();
        assertAll(
                () -> assertEquals(
                        ground.coveredM2(), dirty.coverage().coveredAreaM2(), 0.003 * ground.coveredM2(), "covered"),
                () -> assertEquals(ground.overlapM2(), dirty.coverage().overlapAreaM2(), 40, "overlap"));
    }

    @Test
    void where_the_bar_may_have_been_lifted_or_the_loss_is_long_it_is_left_open_and_said_so() throws IOException {
        List<Integer> middles = middles();
        int lifted = middles.get(0);
        int unknown = middles.get(1);
        int longLoss = middles.get(2);
        List<String> lines = losing(List.of(lifted), 30);
        for (int i = lifted + 10; i < lifted + 15; i++) {
            String[] fields = lines.get(i).split(",", -1);
            fields[down] = "0";
            lines.set(i, String.join(",", fields));
        }
        for (int i = longLoss; i < longLoss + 60; i++) {
            lines.set(i, withoutFix(lines.get(i)));
        }
        // The logger itself was silent: nobody knows what the bar did.
        lines.subList(unknown, unknown + 30).clear();
        Analysis a = analyze(lines);
        List<PathBreak> breaks = a.track().breaks();
        assertEquals(3, breaks.size(), breaks.toString());
        for (PathBreak each : breaks) {
            assertEquals(PathBreak.Kind.GAP, each.kind());
            assertTrue(each.lowered());
        }
        assertTrue(
                a.notes().stream().anyMatch(note -> isNote(note, "notes.gaps", 3)),
                a.notes().toString());
        holds(a, (31 + 31 + 61) / HZ, 0);
    }

    @Test
    void seconds_the_logger_dropped_are_bridged() throws IOException {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < clean.size(); i++) {
            if (i < 200 || i % 230 >= 5) {
                lines.add(clean.get(i));
            }
        }
        Analysis a = analyze(lines);
        assertEquals(0, dropped(a).total());
        assertEquals(List.of(), a.track().breaks());
        holds(a, 0, 0);
    }

    /** 20 s a meter aside: the way in and the way back are shifts; in between the ground lies at most 1 m beside its place. */
    @Test
    void a_receiver_that_comes_back_with_an_offset_is_noticed_both_ways() throws IOException {
        List<String> lines = new ArrayList<>(clean);
        int from = 600;
        for (int i = from; i < from + 100; i++) {
            lines.set(i, moved(lines.get(i), 1.0));
        }
        Analysis a = analyze(lines);
        List<PathBreak> breaks = a.track().breaks();
        assertEquals(2, breaks.size(), breaks.toString());
        for (PathBreak each : breaks) {
            assertEquals(PathBreak.Kind.SHIFTED, each.kind());
            assertEquals(1 / HZ, each.durationS(), 1e-3);
        }
        assertEquals(20, breaks.get(1).endS() - breaks.get(0).endS(), 1e-3);
        assertTrue(
                a.notes().stream().anyMatch(note -> isNote(note, "notes.breaks.shifted", 2)),
                a.notes().toString());
        holds(a, 2 / HZ, 20 * FASTEST_MPS);
    }

    @Test
    void the_clean_log_has_no_breaks_and_nothing_left_out() throws IOException {
        Analysis a = analyze(clean);
        assertEquals(0, dropped(a).total());
        assertEquals(List.of(), a.track().breaks());
        holds(a, 0, 0);
    }

    private static boolean isNote(Message note, String key, int places) {
        return note.key().equals(key) && note.arguments().get(0).equals(new Argument.Count(places));
    }
}
