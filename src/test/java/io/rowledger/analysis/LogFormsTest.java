package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.Metering;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimRig;
import io.rowledger.text.Message;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same job written as flows of rows, rates per area, nitrogen per area, shared meters, flow or rate of the whole bar
 * and points without times: each is held against the plain log of flows.
 */
class LogFormsTest {
    /** Customary check of HANDBOOK 5: gal/min = gal/ac × mph × in ÷ 5940. */
    private static final double CUSTOMARY = 5940;

    private static final int ROWS = 6;
    private static final double LB_PER_GAL = 11.06;

    @TempDir
    Path folder;

    private final List<String> headers = new ArrayList<>();
    private final List<String[]> records = new ArrayList<>();
    private String rig = "";
    private Analysis plain;

    @BeforeEach
    void drive() throws IOException {
        SimRig bar = SimRig.carried(ROWS);
        new Scenario(7, bar, PassPlan.rectangle(110, 4, 0, bar.widthM()))
                .products(SimProduct.uan32(42))
                .format(LogFormat.customaryUnits())
                .run()
                .writeTo(folder);
        List<String> lines = Files.readAllLines(folder.resolve("log.csv"));
        headers.addAll(List.of(lines.get(0).split(",")));
        lines.stream().skip(1).forEach(line -> records.add(line.split(",", -1)));
        rig = Files.readString(folder.resolve("rig.yaml"));
        plain = analyze("plain", write("plain", flows(), i -> rowFlows(i)), rig);
    }

    private Analysis analyze(String name, Path log, String rigText) throws IOException {
        Path file = folder.resolve(name + ".yaml");
        Files.writeString(file, rigText);
        return Pipeline.analyze(new JobFiles(List.of(log), file, null), 2, Progress.SILENT);
    }

    private int column(String start) {
        for (int i = 0; i < headers.size(); i++) {
            if (headers.get(i).startsWith(start)) {
                return i;
            }
        }
        throw new IllegalStateException(start + " in " + headers);
    }

    private double value(int record, String start) {
        String text = records.get(record)[column(start)];
        return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.9f", value);
    }

    private static String flows() {
        return IntStream.rangeClosed(1, ROWS)
                .mapToObj(r -> String.format(Locale.ROOT, "flow_%02d[gal/min]", r))
                .collect(Collectors.joining(","));
    }

    private double flow(int i, int row) {
        return value(i, String.format(Locale.ROOT, "flow_%02d", row));
    }

    private double barFlow(int i) {
        return IntStream.rangeClosed(1, ROWS).mapToDouble(r -> flow(i, r)).sum();
    }

    private String rowFlows(int i) {
        return IntStream.rangeClosed(1, ROWS).mapToObj(r -> number(flow(i, r))).collect(Collectors.joining(","));
    }

    /** Rate that gives the flow over a width in inches at the logged speed; 0 where the machine stands. */
    private double rate(int i, double galPerMin, double widthIn) {
        double mph = value(i, "speed");
        return mph > 0 ? galPerMin * CUSTOMARY / (mph * widthIn) : 0;
    }

    private Path write(String name, String head, Function<Integer, String> fields) throws IOException {
        return write(name, head, fields, "time", "lat", "lon", "fix", "down", "speed", "target");
    }

    private Path write(String name, String head, Function<Integer, String> fields, String... kept) throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add(Arrays.stream(kept).map(k -> headers.get(column(k))).collect(Collectors.joining(",")) + "," + head);
        for (int i = 0; i < records.size(); i++) {
            String[] record = records.get(i);
            lines.add(Arrays.stream(kept).map(k -> record[column(k)]).collect(Collectors.joining(",")) + ","
                    + fields.apply(i));
        }
        return Files.write(folder.resolve(name + ".csv"), lines);
    }

    private static double volumeL(Analysis a, int row) {
        return a.rates().rows().get(row - 1).products().get(0).volumeL();
    }

    private static double volumeL(Analysis a) {
        return IntStream.rangeClosed(1, ROWS).mapToDouble(r -> volumeL(a, r)).sum();
    }

    /** Volumes of standing machines are lost to a rate per area: the tolerance is the share of flow below walking pace. */
    private void sameRows(Analysis a, double tolerance) {
        for (int row = 1; row <= ROWS; row++) {
            assertEquals(volumeL(plain, row), volumeL(a, row), tolerance * volumeL(plain, row), "row " + row);
        }
        sameGround(a, tolerance);
    }

    private void sameGround(Analysis a, double tolerance) {
        double coveredM2 = plain.coverage().coveredAreaM2();
        assertEquals(coveredM2, a.coverage().coveredAreaM2(), tolerance * coveredM2, "covered");
        assertEquals(plain.coverage().overlapAreaM2(), a.coverage().overlapAreaM2(), tolerance * coveredM2, "overlap");
        assertEquals(plain.rates().sweptAreaM2(), a.rates().sweptAreaM2(), 1e-6 * coveredM2, "swept");
        assertEquals(volumeL(plain), volumeL(a), tolerance * volumeL(plain), "volume");
    }

    @Test
    void rates_per_area_of_rows_give_the_figures_of_flows() throws IOException {
        String head = IntStream.rangeClosed(1, ROWS)
                .mapToObj(r -> "Row " + r + " Rate (gal/ac)")
                .collect(Collectors.joining(","));
        Analysis a = analyze(
                "rates",
                write(
                        "rates",
                        head,
                        i -> IntStream.rangeClosed(1, ROWS)
                                .mapToObj(r -> number(rate(i, flow(i, r), 30)))
                                .collect(Collectors.joining(","))),
                rig);
        assertEquals(Metering.PER_ROW, a.log().metering());
        sameRows(a, 0.001);
    }

    @Test
    void nitrogen_per_area_of_rows_gives_the_figures_of_flows() throws IOException {
        String head = IntStream.rangeClosed(1, ROWS)
                .mapToObj(r -> String.format(Locale.ROOT, "nitrogen_rate_%02d[lb/ac]", r))
                .collect(Collectors.joining(","));
        Analysis a = analyze(
                "nitrogen",
                write(
                        "nitrogen",
                        head,
                        i -> IntStream.rangeClosed(1, ROWS)
                                .mapToObj(r -> number(rate(i, flow(i, r), 30) * LB_PER_GAL * 0.32))
                                .collect(Collectors.joining(","))),
                rig);
        sameRows(a, 0.001);
    }

    @Test
    void rates_without_a_logged_speed_take_the_speed_of_the_path() throws IOException {
        String head = IntStream.rangeClosed(1, ROWS)
                .mapToObj(r -> String.format(Locale.ROOT, "rate_%02d[gal/ac]", r))
                .collect(Collectors.joining(","));
        Analysis a = analyze(
                "path-speed",
                write(
                        "path-speed",
                        head,
                        i -> IntStream.rangeClosed(1, ROWS)
                                .mapToObj(r -> number(rate(i, flow(i, r), 30)))
                                .collect(Collectors.joining(",")),
                        "time",
                        "lat",
                        "lon",
                        "fix",
                        "down",
                        "target"),
                rig);
        assertEquals(volumeL(plain), volumeL(a), 0.01 * volumeL(plain));
    }

    @Test
    void one_meter_for_two_rows_is_shared_between_them() throws IOException {
        String shared = rig.replaceFirst("(?m)^(rows:\\s*)$", "$1\n  meters: [[1, 2], [3, 4], [5, 6]]");
        String head = "meter_01[gal/min],meter_02[gal/min],meter_03[gal/min]";
        Analysis a = analyze(
                "meters",
                write(
                        "meters",
                        head,
                        i -> IntStream.rangeClosed(1, 3)
                                .mapToObj(m -> number(flow(i, 2 * m - 1) + flow(i, 2 * m)))
                                .collect(Collectors.joining(","))),
                shared);
        assertEquals(Metering.SHARED, a.log().metering());
        sameGround(a, 0.002);
        for (int m = 1; m <= 3; m++) {
            double pairL = volumeL(plain, 2 * m - 1) + volumeL(plain, 2 * m);
            assertEquals(pairL, volumeL(a, 2 * m - 1) + volumeL(a, 2 * m), 0.001 * pairL);
        }
    }

    @Test
    void one_meter_for_the_bar_gives_its_totals_and_coverage() throws IOException {
        Analysis a = analyze("bar", write("bar", "flow[gal/min]", i -> number(barFlow(i))), rig);
        assertEquals(Metering.WHOLE_BAR, a.log().metering());
        assertEquals(volumeL(plain), volumeL(a), 0.001 * volumeL(plain));
        // Uniform flow, shared by area, says nothing about what turns did to single rows.
        assertTrue(a.rates().rows().stream()
                .allMatch(row -> Double.isNaN(row.turnRemaining().meanAbs())));
        assertTrue(
                a.diagnosis().findings().stream().allMatch(f -> f.rows().isEmpty()),
                a.diagnosis().toString());
    }

    private Instant time(int i) {
        return Instant.parse(records.get(i)[column("time")]);
    }

    /** The bar's running total by record, gal, in steps. */
    private List<String> totals(double stepGal) {
        List<String> totals = new ArrayList<>();
        double gal = 0;
        for (int i = 0; i < records.size(); i++) {
            totals.add(String.format(Locale.ROOT, "%.6f", Math.floor(gal / stepGal) * stepGal));
            if (i + 1 < records.size()) {
                double lengthS = Duration.between(time(i), time(i + 1)).toNanos() / 1e9;
                gal += (barFlow(i) + barFlow(i + 1)) / 2 * lengthS / 60;
            }
        }
        return totals;
    }

    /** The meter starts at any place within its first step, so that a step may be missing at either end. */
    @Test
    void a_running_total_of_the_bar_gives_the_figures_of_its_flow() throws IOException {
        for (double stepGal : new double[] {1e-5, 0.1}) {
            List<String> totals = totals(stepGal);
            Analysis a = analyze("total", write("total", "Total Applied (gal)", totals::get), rig);
            assertEquals(Metering.WHOLE_BAR, a.log().metering());
            assertEquals(volumeL(plain), volumeL(a), 0.001 * volumeL(plain) + stepGal * 3.785, "step " + stepGal);
            double coveredM2 = plain.coverage().coveredAreaM2();
            assertEquals(coveredM2, a.coverage().coveredAreaM2(), 0.01 * coveredM2, "covered, step " + stepGal);
            assertTrue(a.diagnosis().findings().stream().allMatch(f -> f.rows().isEmpty()));
        }
    }

    @Test
    void one_meter_and_the_sections_that_were_on_give_the_coverage_of_rows() throws IOException {
        String head = "flow[gal/min],"
                + IntStream.rangeClosed(1, ROWS)
                        .mapToObj(r -> String.format(Locale.ROOT, "on_%02d", r))
                        .collect(Collectors.joining(","));
        Analysis a = analyze(
                "sections",
                write(
                        "sections",
                        head,
                        i -> number(barFlow(i)) + ","
                                + IntStream.rangeClosed(1, ROWS)
                                        .mapToObj(r -> flow(i, r) > 0.02 ? "1" : "0")
                                        .collect(Collectors.joining(","))),
                rig);
        assertEquals(Metering.WHOLE_BAR, a.log().metering());
        sameGround(a, 0.003);
    }

    @Test
    void one_rate_for_the_bar_with_its_width_gives_the_volume() throws IOException {
        Analysis a = analyze(
                "bar-rate",
                write("bar-rate", "Applied Rate (gal/ac),Swath Width (ft)", i -> {
                    double widthIn = 30
                            * IntStream.rangeClosed(1, ROWS)
                                    .filter(r -> flow(i, r) > 0.02)
                                    .count();
                    return number(widthIn > 0 ? rate(i, barFlow(i), widthIn) : 0) + "," + number(widthIn / 12);
                }),
                rig);
        assertEquals(Metering.WHOLE_BAR, a.log().metering());
        assertEquals(volumeL(plain), volumeL(a), 0.002 * volumeL(plain));
    }

    @Test
    void notes_say_which_width_and_speed_made_flows_of_rates() throws IOException {
        Analysis a = analyze("note", write("note", "rate[gal/ac]", i -> number(rate(i, barFlow(i), 30 * ROWS))), rig);
        assertTrue(
                a.notes()
                        .contains(Message.of(
                                "notes.log.rates.loggedSpeed",
                                "note.csv",
                                Message.of("notes.log.rates.rigWidth"),
                                headers.get(column("speed")))),
                a.notes().toString());
        assertEquals(volumeL(plain), volumeL(a), 0.002 * volumeL(plain));
    }

    /** The working records as points with a rate of the bar and no time, header first. */
    private List<String> points() {
        List<String> lines = new ArrayList<>();
        lines.add("lat,lon,rate[gal/ac]");
        for (int i = 0; i < records.size(); i++) {
            if (value(i, "down") == 1) {
                String[] record = records.get(i);
                lines.add(record[column("lat")] + "," + record[column("lon")] + ","
                        + number(rate(i, barFlow(i), 30 * ROWS)));
            }
        }
        return lines;
    }

    @Test
    void points_without_times_give_areas_volume_and_coverage() throws IOException {
        List<String> lines = points();
        Path log = Files.write(folder.resolve("untimed.csv"), lines);
        Analysis a = analyze("untimed", log, rig);
        assertTrue(!a.log().isTimed());
        double coveredM2 = plain.coverage().coveredAreaM2();
        assertEquals(coveredM2, a.coverage().coveredAreaM2(), 0.02 * coveredM2, "covered");
        assertEquals(volumeL(plain), volumeL(a), 0.02 * volumeL(plain), "volume");
        assertEquals(plain.track().passes().size(), a.track().passes().size(), "passes");
        // No time, no length of a silence and no record interval.
        assertEquals(List.of(), a.diagnosis().limits());
        assertTrue(a.notes().stream().anyMatch(note -> note.key().equals("notes.gaps.untimed")));
        assertTrue(a.notes().stream()
                .noneMatch(note -> List.of("notes.gaps", "notes.breaks.lowered", "notes.breaks.bridged")
                        .contains(note.key())));
        // Nothing tells how late a meter is where no times are.
        assertEquals(
                List.of("findings.setup.lag.untimed"),
                a.setup().check().measurements().stream()
                        .filter(one -> one.parameter() == SetupParameter.FLOW_LAG)
                        .map(one -> one.basis().key())
                        .toList());
    }

    @Test
    void points_of_two_files_follow_one_another_as_the_call_names_them() throws IOException {
        List<String> lines = points();
        Analysis whole = analyze("untimed", Files.write(folder.resolve("untimed.csv"), lines), rig);
        int half = lines.size() / 2;
        List<String> second = new ArrayList<>(List.of(lines.get(0)));
        second.addAll(lines.subList(half, lines.size()));
        Path first = Files.write(folder.resolve("first.csv"), lines.subList(0, half));
        Path rest = Files.write(folder.resolve("rest.csv"), second);
        Path file = Files.writeString(folder.resolve("two.yaml"), rig);
        Analysis two = Pipeline.analyze(new JobFiles(List.of(first, rest), file, null), 2, Progress.SILENT);
        assertEquals(whole.log().records(), two.log().records());
        double coveredM2 = whole.coverage().coveredAreaM2();
        // The step between the two files is in neither.
        assertEquals(coveredM2, two.coverage().coveredAreaM2(), 0.01 * coveredM2);
        assertEquals(volumeL(whole), volumeL(two), 0.01 * volumeL(whole));
        JobFiles twice = new JobFiles(List.of(first, first), file, null);
        assertTrue(assertThrows(UnusableInputException.class, () -> Pipeline.analyze(twice, 2, Progress.SILENT))
                .getMessage()
                .contains("the same points twice"));
    }

    @Test
    void a_logged_width_that_is_not_the_rigs_is_told() throws IOException {
        Analysis a = analyze(
                "width", write("width", "flow[gal/min],Swath Width (ft)", i -> number(barFlow(i)) + ",30"), rig);
        assertTrue(
                a.notes().stream().anyMatch(note -> note.key().equals("notes.log.width")),
                a.notes().toString());
    }

    @Test
    void ground_under_an_unknown_flow_is_no_skip_and_not_covered() throws IOException {
        int from = records.size() / 3;
        int to = from + 120;
        Path log = write("unknown", flows(), i -> {
            String[] each = rowFlows(i).split(",", -1);
            each[2] = i >= from && i < to ? "" : each[2];
            return String.join(",", each);
        });
        Analysis a = analyze("unknown", log, rig);
        double unknownM2 = a.rates().unknownAreaM2(0);
        assertTrue(unknownM2 > 10, unknownM2 + " m2 are swept with an unknown flow");
        assertEquals(plain.coverage().skips().size(), a.coverage().skips().size());
        assertEquals(1, a.coverage().doubtfulSkips().size());
        CoverageDefect open = a.coverage().doubtfulSkips().get(0);
        assertEquals(CoverageDefect.Cause.FLOW_NOT_KNOWN, open.cause());
        assertEquals(List.of(3), open.rows());
        assertEquals(unknownM2, open.areaM2(), 0.1 * unknownM2);
        assertEquals(
                plain.coverage().coveredAreaM2() - a.coverage().coveredAreaM2(), open.areaM2(), 0.05 * open.areaM2());
        assertTrue(a.intervals().coveredAreaM2().holds(plain.coverage().coveredAreaM2()));
        assertTrue(a.intervals().skipAreaM2().holds(plain.coverage().skipAreaM2()));
    }
}
