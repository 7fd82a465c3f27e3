package io.rowledger.geo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.Test;

class LocalPlaneTest {
    @Test
    void the_published_example_of_epsg_method_9807_comes_out() {
        // EPSG Guidance Note 7-2, method 9807, Airy 1830 with its printed (rounded) constants.
        LocalPlane plane = new LocalPlane(6_377_563.396, 299.32496, 49, -2, 0.9996013);
        double[] out = new double[2];
        plane.forward(50.5, 0.5, out);
        assertEquals(577_274.99, out[0] + 400_000, 0.005);
        assertEquals(69_740.50, out[1] - 100_000, 0.005);
        plane.inverse(out[0], out[1], out);
        assertEquals(50.5, out[0], 1e-12);
        assertEquals(0.5, out[1], 1e-12);
    }

    @Test
    void a_plane_across_the_date_line_is_one_plane() {
        LocalPlane plane = new LocalPlane(-17, 180.0005);
        double[] west = new double[2];
        double[] east = new double[2];
        plane.forward(-17, 179.9995, west);
        plane.forward(-17, -179.9985, east);
        // A degree of longitude at 17 S by GeographicLib: 0.002 degrees apart.
        assertEquals(Geodesic.WGS84.Inverse(-17, 179.9995, -17, -179.9985).s12, east[0] - west[0], 1e-3);
        plane.inverse(east[0], east[1], east);
        assertEquals(-179.9985, east[1], 1e-11);
    }

    @Test
    void utm_zone_15_coordinates_come_out() {
        // Derived with an independent series on WGS 84 (UTM: k0 0.9996, false easting 500 km).
        LocalPlane utm = new LocalPlane(LocalPlane.WGS84_A, LocalPlane.WGS84_INVERSE_F, 0, -93, 0.9996);
        double[] out = new double[2];
        utm.forward(45, -92, out);
        assertEquals(578_815.303, out[0] + 500_000, 0.001);
        assertEquals(4_983_436.768, out[1], 0.001);
        utm.forward(45, -93, out);
        assertEquals(4_982_950.400, out[1], 0.001);
    }

    @Test
    void distances_and_areas_of_a_field_agree_with_the_geodesic_ones() {
        // Oracle: GeographicLib (C. F. F. Karney, J. Geodesy 87 (2013) 43-55).
        SplittableRandom random = new SplittableRandom(11);
        double[] a = new double[2];
        double[] b = new double[2];
        for (int i = 0; i < 500; i++) {
            double lat = random.nextDouble(-60, 60);
            double lon = random.nextDouble(-180, 180);
            LocalPlane plane = new LocalPlane(lat, lon);
            double dLat = random.nextDouble(-0.01, 0.01);
            double dLon = random.nextDouble(-0.01, 0.01);
            plane.forward(lat, lon, a);
            plane.forward(lat + dLat, lon + dLon, b);
            GeodesicData line = Geodesic.WGS84.Inverse(lat, lon, lat + dLat, lon + dLon);
            assertEquals(line.s12, Math.hypot(b[0] - a[0], b[1] - a[1]), 2e-6 * line.s12 + 1e-6);
            plane.inverse(b[0], b[1], b);
            assertEquals(lat + dLat, b[0], 1e-11);
            assertEquals(0, Math.IEEEremainder(lon + dLon - b[1], 360), 1e-11);
        }
        PolygonArea geodesic = new PolygonArea(Geodesic.WGS84, false);
        double[][] corners = {{43.92, -93.98}, {43.92, -93.97}, {43.93, -93.97}, {43.93, -93.98}};
        LocalPlane plane = new LocalPlane(43.925, -93.975);
        double twice = 0;
        double[] first = new double[2];
        double[] last = new double[2];
        plane.forward(corners[3][0], corners[3][1], last);
        for (double[] corner : corners) {
            geodesic.AddPoint(corner[0], corner[1]);
            plane.forward(corner[0], corner[1], first);
            twice += last[0] * first[1] - first[0] * last[1];
            last = first.clone();
        }
        assertEquals(892_299.0869, geodesic.Compute().area, 0.001);
        assertEquals(892_299.0869, twice / 2, 892_299.0869 * 5e-4);
    }
}
