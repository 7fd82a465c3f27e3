package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import org.junit.jupiter.api.Test;

class SrgbProfileTest {
    /** IEC 61966-2-1, linear sRGB to XYZ under D65. */
    private static final double[][] TO_XYZ = {
        {0.4124, 0.3576, 0.1805},
        {0.2126, 0.7152, 0.0722},
        {0.0193, 0.1192, 0.9505}
    };
    /** Bradford, D65 to D50: ICC specification ISO 15076-1, annex E. */
    private static final double[][] TO_D50 = {
        {1.0479, 0.0229, -0.0502},
        {0.0296, 0.9904, -0.0171},
        {-0.0092, 0.0151, 0.7519}
    };

    private static double linear(double value) {
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] product = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                product[i] += matrix[i][j] * vector[j];
            }
        }
        return product;
    }

    /** The JDK's color engine reads the profile; the figures are those of IEC 61966-2-1. */
    @Test
    void a_color_means_what_the_standard_says() {
        ICC_ColorSpace space = new ICC_ColorSpace(ICC_Profile.getInstance(SrgbProfile.bytes()));
        assertEquals(ColorSpace.TYPE_RGB, space.getType());
        for (float[] rgb : new float[][] {
            {1, 1, 1},
            {0, 0, 0},
            {1, 0, 0},
            {0, 1, 0},
            {0, 0, 1},
            {0.12f, 0.36f, 0.39f},
            {0.71f, 0.29f, 0.04f},
            {0.03f, 0.03f, 0.03f}
        }) {
            double[] expected =
                    times(TO_D50, times(TO_XYZ, new double[] {linear(rgb[0]), linear(rgb[1]), linear(rgb[2])}));
            float[] xyz = space.toCIEXYZ(rgb);
            float[] back = space.toRGB(rgb);
            for (int i = 0; i < 3; i++) {
                // Half a step of 8 bits near black would be 0.00015; the engine works with 16.
                assertEquals(expected[i], xyz[i], 0.001);
                assertEquals(rgb[i], back[i], 0.5 / 255);
            }
        }
    }
}
