package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.report.map.GrayCanvas;
import io.rowledger.report.map.MapColors;
import org.junit.jupiter.api.Test;

/** The record's map printed without color. */
class NitrogenMapInGrayTest {
    /** Difference of lightness that a reader sees without looking twice; the project's own bound. */
    private static final double APART = 12;

    @Test
    void more_nitrogen_is_darker_class_by_class_and_skips_keep_their_edge() {
        int[] scale = NitrogenMap.SCALE;
        for (int k = 1; k < scale.length; k++) {
            double step = GrayCanvas.lightness(scale[k - 1]) - GrayCanvas.lightness(scale[k]);
            assertTrue(step >= APART, "from class " + (k - 1) + " to " + k + ": " + step);
        }
        // Skipped ground is white: its edge parts it from the lightest class.
        double edge = GrayCanvas.lightness(MapColors.SKIP);
        assertTrue(GrayCanvas.lightness(scale[0]) - edge >= APART, "edge: " + edge);
    }
}
