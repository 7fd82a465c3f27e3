package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The raster against shapes whose area anyone can work out. */
class CoverRasterTest {
    private static final double[] BOUNDS = {-10, -10, 130, 130};

    private static void rectangle(CoverRaster raster, double[] box, double timeS) {
        raster.fill(
                new double[] {box[0], box[0], box[2], box[2]}, new double[] {box[1], box[3], box[3], box[1]}, timeS);
    }

    @Test
    void two_rectangles_that_overlap_are_counted_once_and_twice() {
        CoverRaster raster = new CoverRaster(BOUNDS, 0.3);
        rectangle(raster, new double[] {0, 0, 100, 10}, 1);
        rectangle(raster, new double[] {0, 9.4, 100, 20}, 50);
        Truth.Ground ground = raster.ground(new double[][] {{0, 0}, {100, 0}, {100, 30}, {0, 30}});
        // Arithmetic: 100 x 20 covered, 100 x 0.6 twice, 100 x 10 skipped of 3000.
        assertEquals(2000, ground.coveredM2(), 0.5);
        assertEquals(60, ground.overlapM2(), 0.5);
        assertEquals(1000, ground.skipM2(), 0.5);
        assertEquals(3000, ground.boundaryM2(), 1e-9);
        assertEquals(3000, ground.skipM2() + ground.coveredInsideM2(), 0.5);
        assertEquals(0, ground.enclosedGapsM2(), 0.0);
    }

    @Test
    void edges_that_two_strips_share_belong_to_one_of_them() {
        CoverRaster raster = new CoverRaster(BOUNDS, 0);
        for (int i = 0; i < 2000; i++) {
            double[] box = {10, 0.037 * i, 19.144, 0.037 * (i + 1)};
            rectangle(raster, box, i * 3);
        }
        // Arithmetic: strips laid edge to edge overlap nowhere, though each comes long after the one before.
        assertEquals(0, raster.ground(null).overlapM2(), 0.0);
    }

    @Test
    void a_gap_inside_a_frame_is_enclosed_and_a_bay_is_not() {
        CoverRaster raster = new CoverRaster(BOUNDS, 0.2);
        rectangle(raster, new double[] {0, 0, 40, 10}, 1);
        rectangle(raster, new double[] {0, 10, 10, 20}, 1);
        rectangle(raster, new double[] {30, 10, 40, 20}, 1);
        rectangle(raster, new double[] {0, 20, 40, 30}, 1);
        rectangle(raster, new double[] {60, 0, 100, 10}, 1);
        rectangle(raster, new double[] {60, 10, 70, 30}, 1);
        rectangle(raster, new double[] {90, 10, 100, 30}, 1);
        // Arithmetic: 20 x 10 hole in the frame; the second shape is open at its top.
        assertEquals(200, raster.ground(null).enclosedGapsM2(), 0.5);
    }

    @Test
    void lingering_on_a_place_is_one_visit() {
        CoverRaster raster = new CoverRaster(BOUNDS, 0);
        for (int i = 0; i < 20; i++) {
            rectangle(raster, new double[] {0, 0, 10, 10}, i);
        }
        assertEquals(0, raster.ground(null).overlapM2(), 0.0);
    }
}
