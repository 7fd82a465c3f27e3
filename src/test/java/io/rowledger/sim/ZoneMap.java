package io.rowledger.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Targets by zones that are polygons on the ground, as multiples of the products' own targets; outside all zones the
 * factor is 1. Knows where a place lies by counting edges to its east.
 *
 * @param zones no two may have ground in common
 */
public record ZoneMap(List<Zone> zones) implements TargetMap {
    /**
     * One zone.
     *
     * @param name what the prescription calls it
     * @param corners {x, y}, m, not closed
     * @param factors per product
     */
    public record Zone(String name, double[][] corners, double... factors) {
        boolean holds(double xM, double yM) {
            boolean in = false;
            for (int i = 0, j = corners.length - 1; i < corners.length; j = i++) {
                double[] a = corners[i];
                double[] b = corners[j];
                boolean spans = a[1] > yM != b[1] > yM;
                if (spans && xM < a[0] + (yM - a[1]) / (b[1] - a[1]) * (b[0] - a[0])) {
                    in = !in;
                }
            }
            return in;
        }
    }

    /** Keeps its own list. */
    public ZoneMap {
        zones = List.copyOf(zones);
    }

    /** A rectangle along a heading: from u0 to u1 ahead of the origin, from w0 to w1 to its right. */
    public static Zone rectangle(
            String name, double headingRad, double u0, double u1, double w0, double w1, double... factors) {
        Frame frame = new Frame(0, 0, headingRad);
        return new Zone(name, frame.ring(new double[][] {{u0, w0}, {u1, w0}, {u1, w1}, {u0, w1}}), factors);
    }

    /** Number of the zone that holds a place, from 0; −1 outside. */
    int at(double xM, double yM) {
        for (int z = 0; z < zones.size(); z++) {
            if (zones.get(z).holds(xM, yM)) {
                return z;
            }
        }
        return -1;
    }

    @Override
    public double factor(int product, double xM, double yM, double timeS) {
        int z = at(xM, yM);
        return z < 0 ? 1 : zones.get(z).factors[product];
    }

    /** The prescription as GeoJSON: each zone with its name and, for each product, {@code KEY.target[L/ha]}. */
    public String geoJson(Scenario scenario) {
        LocalMap map = new LocalMap(scenario.site().latDeg(), scenario.site().lonDeg());
        List<String> features = new ArrayList<>();
        for (Zone zone : zones) {
            StringBuilder b = new StringBuilder("{\"type\": \"Feature\", \"properties\": {\"name\": \"")
                    .append(zone.name)
                    .append('"');
            for (int p = 0; p < scenario.products().size(); p++) {
                SimProduct product = scenario.products().get(p);
                b.append(String.format(
                        Locale.ROOT,
                        ", \"%s.target[L/ha]\": %.9f",
                        product.key(),
                        product.targetLPerM2() * zone.factors[p] * 10_000));
            }
            b.append("},\n \"geometry\": {\"type\": \"Polygon\", \"coordinates\": [[");
            for (int i = 0; i <= zone.corners.length; i++) {
                double[] corner = zone.corners[i % zone.corners.length];
                double[] latLon = map.latLonDeg(corner[0], corner[1]);
                b.append(String.format(Locale.ROOT, "%s[%.10f, %.10f]", i == 0 ? "" : ", ", latLon[1], latLon[0]));
            }
            features.add(b.append("]]}}").toString());
        }
        return "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features) + "\n]}\n";
    }
}
