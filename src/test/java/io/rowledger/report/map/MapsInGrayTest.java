package io.rowledger.report.map;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.document.text.Messages;
import io.rowledger.rate.HandMadeDelivery;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.sections.CoverageSectionBuilder;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every map of the pass review printed without color: classes that lie side by side are told apart by lightness or by lines. */
class MapsInGrayTest {
    /** Difference of lightness that a reader sees without looking twice; the project's own bound. */
    private static final double APART = 12;

    private static final Messages MESSAGES = new Messages(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
    private static final int WIDTH_PT = 500;
    private static final int HEIGHT_PT = 280;

    /** Lightness and lines of a square patch of a map. */
    private record Patch(double lightness, double lines) {
        /**
         * A patch of 12 by 12 points around a point: the median lightness, and the sum of products of the slopes across and down,
         * positive for lines that rise to the right, negative for lines that fall, 0 for none.
         */
        static Patch at(GrayCanvas canvas, double x, double y) {
            int n = 12 * GrayCanvas.PIXELS;
            double[] all = new double[n * n];
            double lines = 0;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    double here = at(canvas, x, y, i, j);
                    all[i * n + j] = here;
                    lines += (at(canvas, x, y, i + 1, j) - here) * (at(canvas, x, y, i, j + 1) - here);
                }
            }
            Arrays.sort(all);
            return new Patch(all[all.length / 2], lines / (n * n));
        }

        private static double at(GrayCanvas canvas, double x, double y, int i, int j) {
            return canvas.lightness(x - 6 + (double) i / GrayCanvas.PIXELS, y - 6 + (double) j / GrayCanvas.PIXELS);
        }

        boolean rising() {
            return lines > 1;
        }

        boolean falling() {
            return lines < -1;
        }

        boolean differsFrom(Patch other) {
            return Math.abs(lightness - other.lightness) >= APART
                    || rising() != other.rising()
                    || falling() != other.falling();
        }
    }

    /** Published values: sRGB 50 % gray (188) is L* 76.2, 119 is 50.0; black 0, white 100 (IEC 61966-2-1 with CIE 15). */
    @Test
    void lightness_is_that_of_the_standards() {
        assertEquals(0, GrayCanvas.lightness(0x000000), 1e-9);
        assertEquals(100, GrayCanvas.lightness(0xffffff), 1e-9);
        assertEquals(50.0, GrayCanvas.lightness(0x777777), 0.1);
        // Red of sRGB has Y = 0.2126: 116 · 0.2126^(1/3) − 16 = 53.2.
        assertEquals(53.2, GrayCanvas.lightness(0xff0000), 0.05);
    }

    private static GroundView view(Coverage coverage, Analysis a) {
        return new GroundView(coverage, a.track(), 0.8, null);
    }

    /** The even job of {@link SyntheticJob} with a band of every class of deviation, from far under in the west to far over. */
    private static Coverage withEveryClass(Coverage c) {
        ReceivedGrid grid = c.grid();
        double[] ratio = {0.7, 0.85, 0.93, 1, 1.07, 1.15, 1.3};
        float[] volume = new float[grid.coveredM2().length];
        for (int i = 0; i < volume.length; i++) {
            int band = Math.min(6, i % grid.cols() * 7 / grid.cols());
            volume[i] = (float) (grid.targetL()[0][i] * ratio[band]);
        }
        ReceivedGrid bands = new ReceivedGrid(
                grid.east0M(),
                grid.north0M(),
                grid.cellM(),
                grid.cols(),
                grid.rows(),
                grid.coveredM2(),
                new float[][] {volume},
                grid.targetL());
        return new Coverage(
                c.coveredAreaM2(),
                c.overlapAreaM2(),
                c.skipAreaM2(),
                c.boundaryAreaM2(),
                c.outsideBoundaryM2(),
                c.covered(),
                c.boundary(),
                c.strips(),
                c.overlaps(),
                c.skips(),
                c.doubtfulSkips(),
                c.slivers(),
                c.shutOffs(),
                c.shutOffCredit(),
                bands,
                c.received(),
                c.shutOffCases());
    }

    @Test
    void classes_of_the_rate_map_are_told_apart_without_color() {
        Analysis a = new SyntheticJob().even().build();
        Coverage coverage = withEveryClass(a.coverage());
        GrayCanvas canvas = new GrayCanvas(WIDTH_PT, HEIGHT_PT * 4);
        new RateMap(view(coverage, a), 0, true, List.of(), MESSAGES).paint(canvas, WIDTH_PT, HEIGHT_PT * 4);
        MapFrame frame = new MapFrame(RateMap.ground(coverage), 0, 0, WIDTH_PT - 122, HEIGHT_PT * 4);
        Patch[] patches = new Patch[7];
        for (int i = 0; i < 7; i++) {
            // Off the pass numbers, which stand near the ends.
            patches[i] = Patch.at(canvas, frame.x(-40 + (i + 0.5) * 80 / 7), frame.y(0));
        }
        for (int i = 0; i < 7; i++) {
            assertEquals(i < 3, patches[i].falling(), "class " + i + ": " + patches[i]);
            assertEquals(i > 3, patches[i].rising(), "class " + i + ": " + patches[i]);
            if (i > 0) {
                assertTrue(patches[i].differsFrom(patches[i - 1]), patches[i - 1] + " beside " + patches[i]);
            }
        }
        // On either side of the target the order is one of lightness too.
        for (int i : new int[] {0, 1, 4, 5}) {
            assertTrue(
                    Math.abs(patches[i].lightness - patches[i + 1].lightness) >= APART,
                    "classes " + i + ", " + (i + 1));
        }
    }

    /** Seven rows, one a class, of 40 points each, so that a patch lies within a row. */
    @Test
    void classes_of_rows_by_time_are_told_apart_without_color() {
        float[] deviation = {-0.3f, -0.15f, -0.07f, 0, 0.07f, 0.15f, 0.3f};
        float[][] rows = new float[7][2];
        for (int i = 0; i < 7; i++) {
            Arrays.fill(rows[i], deviation[i]);
        }
        RowPicture picture = new RowPicture(new double[] {0, 100}, new double[] {100, 200}, new int[] {1, 2}, rows);
        GrayCanvas canvas = new GrayCanvas(400, 20 + 280 + 36);
        new DeviationPicture(picture, List.of(), MESSAGES).paint(canvas, 400, 20 + 280 + 36);
        Patch[] patches = new Patch[7];
        for (int i = 0; i < 7; i++) {
            patches[i] = Patch.at(canvas, 100, 20 + 40 * (i + 0.5));
        }
        for (int i = 0; i < 7; i++) {
            assertEquals(i < 3, patches[i].falling(), "class " + i + ": " + patches[i]);
            assertEquals(i > 3, patches[i].rising(), "class " + i + ": " + patches[i]);
            for (int other = 0; other < i; other++) {
                assertTrue(
                        patches[i].differsFrom(patches[other]),
                        "classes " + other + " and " + i + ": " + patches[other] + ", " + patches[i]);
            }
        }
    }

    /** Row 7 left five strips: 0.8 m wide, dark lines of at least two points on light ground. */
    @Test
    void a_skipped_row_stays_visible_on_a_small_map() {
        Analysis a = new SyntheticJob().build();
        GrayCanvas canvas = new GrayCanvas(WIDTH_PT, HEIGHT_PT);
        new RateMap(view(a.coverage(), a), 0, true, List.of(), MESSAGES).paint(canvas, WIDTH_PT, HEIGHT_PT);
        MapFrame frame = new MapFrame(RateMap.ground(a.coverage()), 0, 0, WIDTH_PT - 122, HEIGHT_PT);
        assertTrue(frame.pt(0.8) < 1, "a row is thinner than a point here");
        double x = frame.x(a.coverage().skips().get(0).eastM());
        double y = frame.y(-20);
        int dark = 0;
        for (double at = x - 4; at < x + 4; at += 1.0 / GrayCanvas.PIXELS) {
            dark += canvas.lightness(at, y) < 50 ? 1 : 0;
        }
        assertTrue(dark >= 1.8 * GrayCanvas.PIXELS && dark <= 3 * GrayCanvas.PIXELS, "dark pixels: " + dark);
    }

    @Test
    void skips_overlaps_and_covered_ground_are_told_apart_without_color() {
        Analysis a = new SyntheticJob().build();
        GrayCanvas canvas = new GrayCanvas(WIDTH_PT, HEIGHT_PT * 4);
        new PlaceMap(
                        view(a.coverage(), a),
                        new CoverageSectionBuilder(a.coverage(), a.intervals(), a.track(), MESSAGES).build(),
                        MESSAGES)
                .paint(canvas, WIDTH_PT, HEIGHT_PT * 4);
        MapFrame frame = new MapFrame(RateMap.ground(a.coverage()), 0, 0, WIDTH_PT - 122, HEIGHT_PT * 4);
        double covered = canvas.lightness(frame.x(-30), frame.y(0));
        double overlap = canvas.lightness(frame.x(-22), frame.y(121));
        var skip = a.coverage().skips().get(0);
        double inside = canvas.lightness(frame.x(skip.eastM()), frame.y(-20));
        double edge = canvas.lightness(frame.x(skip.eastM() - 0.4), frame.y(-20));
        assertTrue(Math.abs(covered - overlap) >= APART, covered + " and " + overlap);
        assertTrue(Math.abs(overlap - inside) >= APART, overlap + " and " + inside);
        // White in a dark outline: the outline parts it from the covered ground, which is nearly as light.
        assertTrue(inside - edge >= 3 * APART && covered - edge >= 3 * APART, inside + ", " + edge + ", " + covered);
    }

    @Test
    void days_are_told_apart_without_color() {
        Analysis a = new SyntheticJob().even().build();
        List<DayMap.Day> days = new java.util.ArrayList<>();
        for (int pass = 1; pass <= 10; pass++) {
            days.add(new DayMap.Day("day " + pass, List.of(pass)));
        }
        GrayCanvas canvas = new GrayCanvas(WIDTH_PT, HEIGHT_PT * 4);
        new DayMap(view(a.coverage(), a), days, MESSAGES).paint(canvas, WIDTH_PT, HEIGHT_PT * 4);
        MapFrame frame = new MapFrame(RateMap.ground(a.coverage()), 0, 0, WIDTH_PT - 122, HEIGHT_PT * 4);
        Patch[] patches = new Patch[10];
        for (int d = 0; d < 10; d++) {
            patches[d] = Patch.at(canvas, frame.x(-36 + 8 * d), frame.y(0));
        }
        for (int d = 0; d < 10; d++) {
            for (int other = 0; other < d; other++) {
                assertTrue(
                        patches[d].differsFrom(patches[other]),
                        "days " + other + " and " + d + ": " + patches[other] + ", " + patches[d]);
            }
        }
    }

    /** Row 3 puts out 7 % more than the target, its neighbors the target: 0.04 L/m² on 0.8 m at 2 m/s are 0.064 L/s. */
    @Test
    void rows_of_a_place_seen_from_near_are_told_apart_without_color() {
        Analysis a = new SyntheticJob().build();
        double size = 12;
        GrayCanvas canvas = new GrayCanvas(256, 272);
        double[] flows = new double[10];
        Arrays.fill(flows, 0.064);
        flows[2] *= 1.07;
        WorkView work = new WorkView(
                a.strips(),
                HandMadeDelivery.steady(flows, 0.04, a.track().poses().steps()),
                0,
                0.04);
        new ZoomMap(view(a.coverage(), a), work, new RateMap.Mark("S1", 4, 30), size, MESSAGES).paint(canvas, 256, 272);
        double ptPerM = 256 / size / 1.02;
        // Pass 6 runs south on 4 m east: its row 3 lies at 4 + 4 − 2.5 · 0.8 = 6 m, row 5 at 4.4 m.
        Patch over = Patch.at(canvas, 128 + (6 - 4) * ptPerM, 180);
        Patch onTarget = Patch.at(canvas, 128 + (4.4 - 4) * ptPerM, 180);
        assertTrue(over.differsFrom(onTarget), over + " beside " + onTarget);
    }
}
