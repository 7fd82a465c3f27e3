package io.rowledger.report.map;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.document.chart.Axis;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Palette;
import io.rowledger.report.review.ReceivedHistogram;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClassRasterTest {
    /** The classes the legend names; a bound belongs to the class nearer the target above it. */
    @ParameterizedTest
    @CsvSource({
        "-1, 0",
        "-0.21, 0",
        "-0.15, 1",
        "-0.07, 2",
        "-0.04, 3",
        "0, 3",
        "0.04, 3",
        "0.07, 4",
        "0.15, 5",
        "0.21, 6",
        "1, 6"
    })
    void deviations_fall_into_the_classes_of_the_legend(double deviation, int expected) {
        assertEquals(expected, DeviationClasses.of(deviation));
    }

    private static ReceivedGrid grid(int cols, int rows, float[] covered, float[] volume, float[] target) {
        return new ReceivedGrid(0, 0, 1, cols, rows, covered, new float[][] {volume}, new float[][] {target});
    }

    @Test
    void cells_are_classed_and_bare_cells_left_out() {
        ReceivedGrid grid =
                grid(4, 1, new float[] {1, 1, 0, 1}, new float[] {1, 1.15f, 0, 0.5f}, new float[] {1, 1, Float.NaN, 1});
        ClassRaster raster = ClassRaster.of(grid, 0, 1);
        assertEquals("[3, 5, -1, 0]", java.util.Arrays.toString(raster.classes));
        assertEquals(1, raster.classM2[3]);
        assertEquals(1, raster.classM2[5]);
        assertEquals(1, raster.classM2[0]);
    }

    /** 1,001 cells make blocks of 3: two cells of 3 and 5 L and one half-covered of 0.5 L over targets 4, 4 and 2 L. */
    @Test
    void blocks_are_weighted_by_area() {
        int cols = 1001;
        float[] covered = new float[cols];
        float[] volume = new float[cols];
        float[] target = new float[cols];
        covered[0] = 1;
        covered[1] = 1;
        covered[2] = 0.5f;
        volume[0] = 3;
        volume[1] = 5;
        volume[2] = 0.5f;
        target[0] = 4;
        target[1] = 4;
        target[2] = 2;
        ClassRaster raster = ClassRaster.of(grid(cols, 3, wide(covered), wide(volume), wide(target)), 0, 1);
        assertEquals(334, raster.cols);
        // Three rows alike: 25.5 L of 30 L is 15 % under.
        assertEquals(1, raster.classes[0]);
        assertEquals(-1, raster.classes[1]);
    }

    private static float[] wide(float[] row) {
        float[] three = new float[row.length * 3];
        for (int i = 0; i < 3; i++) {
            System.arraycopy(row, 0, three, i * row.length, row.length);
        }
        return three;
    }

    @Test
    void without_a_target_cells_are_compared_with_the_rate_given() {
        ReceivedGrid grid = grid(2, 1, new float[] {1, 1}, new float[] {2, 3}, new float[] {Float.NaN, Float.NaN});
        ClassRaster raster = ClassRaster.of(grid, 0, 2);
        assertEquals("[3, 6]", java.util.Arrays.toString(raster.classes));
    }

    @Test
    void boxes_cover_every_block_of_a_class_once_and_no_other() {
        Random random = new Random(7);
        for (int round = 0; round < 50; round++) {
            int cols = 1 + random.nextInt(30);
            int rows = 1 + random.nextInt(30);
            float[] covered = new float[cols * rows];
            float[] volume = new float[cols * rows];
            float[] target = new float[cols * rows];
            for (int i = 0; i < covered.length; i++) {
                covered[i] = random.nextInt(4) == 0 ? 0 : 1;
                volume[i] = random.nextInt(3) == 0 ? 0.5f : 1;
                target[i] = 1;
            }
            ClassRaster raster = ClassRaster.of(grid(cols, rows, covered, volume, target), 0, 1);
            for (int wanted : new int[] {-1, 0, 3}) {
                int[] seen = new int[cols * rows];
                raster.boxes(wanted, (col, row, width, height) -> {
                    for (int y = row; y < row + height; y++) {
                        for (int x = col; x < col + width; x++) {
                            seen[y * cols + x]++;
                        }
                    }
                });
                for (int i = 0; i < seen.length; i++) {
                    boolean is = covered[i] > 0 && (wanted < 0 || (volume[i] < 1 ? 0 : 3) == wanted);
                    assertEquals(is ? 1 : 0, seen[i]);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"1,1,1", "1.9,1,2", "2,2,2", "4.9,2,5", "5,5,5", "73,50,100", "0.3,0.2,0.5"})
    void round_numbers_are_one_two_and_five(double x, double down, double up) {
        assertEquals(down, Axis.roundDown(x), 1e-12);
        assertEquals(up, Axis.roundUp(x), 1e-12);
    }

    @Test
    void the_scale_bar_shows_the_length_it_says() {
        RecordingCanvas canvas = new RecordingCanvas();
        MapFrame frame = new MapFrame(new org.locationtech.jts.geom.Envelope(0, 1000, 0, 500), 0, 0, 408, 400);
        io.rowledger.units.UnitFormat f =
                new io.rowledger.units.UnitFormat(io.rowledger.units.UnitSystem.METRIC, java.time.ZoneOffset.UTC);
        frame.scaleBar(canvas, 0, 100, 90, f);
        // 1,000 m and a hundredth of margin on either side are 408 pt: 0.4 pt a meter; 90 pt hold 225 m.
        assertTrue(canvas.texts.contains("200\u00a0m"), canvas.texts.toString());
        assertEquals(80, canvas.widest, 1e-9);
        assertEquals(4, frame.x(0), 1e-9);
        assertEquals(frame.top() + 4, frame.y(500), 1e-9);
    }

    @Test
    void labels_that_would_touch_are_left_out() {
        RecordingCanvas canvas = new RecordingCanvas();
        Labels labels = new Labels(canvas);
        assertTrue(labels.plate("1", 10, 10, Palette.LABEL, 0xffffff));
        assertTrue(!labels.plate("2", 12, 11, Palette.LABEL, 0xffffff));
        assertTrue(labels.plate("3", 40, 10, Palette.LABEL, 0xffffff));
        assertEquals(java.util.List.of("1", "3"), canvas.texts);
    }

    @Test
    void histogram_shares_add_up_with_open_ends() {
        java.util.List<Double> areas = new java.util.ArrayList<>(java.util.Collections.nCopies(45, 0.0));
        areas.set(0, 10.0);
        areas.set(9, 10.0);
        areas.set(10, 20.0);
        areas.set(20, 40.0);
        areas.set(29, 5.0);
        areas.set(30, 10.0);
        areas.set(44, 5.0);
        double[] shares = ReceivedHistogram.shares(areas);
        assertEquals(22, shares.length);
        assertEquals(20, shares[0]);
        assertEquals(20, shares[1]);
        assertEquals(40, shares[11]);
        assertEquals(5, shares[20]);
        assertEquals(15, shares[21]);
    }
}
