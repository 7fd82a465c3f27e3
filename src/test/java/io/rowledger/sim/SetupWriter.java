package io.rowledger.sim;

import java.util.Map;

/** Writes the rig file and the boundary that go with a log. */
final class SetupWriter {
    private static final double DENSEST_EDGE_M = 50;
    private static final double INCH_M = 0.0254;
    private static final double KG_PER_L_IN_LB_PER_GAL = 0.45359237 / (231 * 0.016387064);

    private SetupWriter() {}

    static String rigYaml(Scenario scenario) {
        SimRig rig = scenario.statedRig();
        boolean us = scenario.format().customary();
        StringBuilder b = new StringBuilder(2048);
        b.append("# Every measure carries its unit. Lengths are taken along the ground with the bar in work.\n");
        b.append("rig:\n");
        b.append("  name: ").append(rig.name()).append('\n');
        b.append("  antenna:\n");
        measure(b, "    ahead_of_axle", rig.antennaAheadM(), us, "rear axle forward to the antenna");
        measure(
                b,
                "    right_of_center",
                rig.antennaRightM(),
                us,
                "center line right to the antenna; left is negative");
        measure(b, "  axle_to_hitch", rig.axleToHitchM(), us, "rear axle back to the hitch pin");
        comment(
                b.append("  hitch: ").append(rig.drawn() ? "pull-type" : "mounted"),
                "pull-type on own wheels, or mounted");
        if (rig.drawn()) {
            measure(b, "  hitch_to_wheels", rig.hitchToWheelsM(), us, "hitch pin back to the bar's own wheels");
        }
        measure(b, "  hitch_to_drop", rig.hitchToDropM(), us, "hitch pin back to where the liquid meets the ground");
        measure(
                b,
                "  bar_right_of_center",
                rig.barRightM(),
                us,
                "middle of the bar right of the tractor's center line");
        rows(b, rig, us);
        products(b, scenario, us);
        job(b, scenario.job());
        return b.toString();
    }

    private static void rows(StringBuilder b, SimRig rig, boolean us) {
        b.append("rows:\n");
        if (!rig.custom()) {
            b.append("  count: ").append(rig.rows()).append('\n');
            measure(b, "  spacing", rig.spacingM(), us, "row to row");
            b.append("  outer_share: ");
            number(b, rig.outerShare(), 3);
            comment(b, "width of each outside outlet, in rows: 0.5, 1 or 1.5");
            return;
        }
        b.append("  outlets:\n");
        for (int i = 0; i < rig.rows(); i++) {
            b.append("    - {at: ");
            length(b, (rig.leftM()[i] + rig.rightM()[i]) / 2, us);
            b.append(", band: [");
            length(b, rig.leftM()[i], us);
            b.append(", ");
            length(b, rig.rightM()[i], us);
            b.append("]}\n");
        }
    }

    private static void products(StringBuilder b, Scenario scenario, boolean us) {
        b.append("products:\n");
        for (SimProduct product : scenario.products()) {
            b.append("  ").append(product.key()).append(":\n");
            b.append("    name: ").append(product.name()).append('\n');
            b.append("    density: ");
            number(b, product.densityKgPerL() / (us ? KG_PER_L_IN_LB_PER_GAL : 1), us ? 4 : 6);
            b.append(us ? " lb/gal\n" : " kg/L\n");
            if (!product.densityAt().isEmpty()) {
                comment(b.append("    density_at: ").append(product.densityAt()), "temperature the density is for");
            }
            b.append("    analysis: ").append(product.analysis());
            comment(b, "N-P2O5-K2O by weight, a fourth number is S");
            b.append("    target: ");
            number(b, product.targetLPerM2() / (us ? SimProduct.L_PER_M2_IN_GAL_PER_AC : 1e-4), us ? 4 : 2);
            comment(b.append(us ? " gal/ac" : " L/ha"), "used where the log has no target");
            b.append("    flow_lag: ");
            number(b, product.flowLagS(), 3);
            comment(b.append(" s"), "how much later the meter shows what left the outlet");
        }
    }

    private static void job(StringBuilder b, Map<String, String> job) {
        if (!job.isEmpty()) {
            b.append("job:\n");
            job.forEach((key, value) -> fact(b, key, value));
        }
    }

    /** A text in quotes; a list or block in brackets as it stands, each item of a list on a line of its own. */
    private static void fact(StringBuilder b, String key, String value) {
        b.append("  ").append(key).append(":");
        if (value.startsWith("- ")) {
            value.lines().forEach(line -> b.append("\n    ").append(line));
            b.append('\n');
        } else if (value.startsWith("{")) {
            b.append(' ').append(value).append('\n');
        } else {
            b.append(" \"").append(value).append("\"\n");
        }
    }

    private static void comment(StringBuilder b, String text) {
        int from = b.lastIndexOf("\n") + 1;
        while (b.length() - from < 33) {
            b.append(' ');
        }
        b.append("  # ").append(text).append('\n');
    }

    private static void measure(StringBuilder b, String key, double valueM, boolean us, String text) {
        b.append(key).append(": ");
        length(b, valueM, us);
        comment(b, text);
    }

    private static void length(StringBuilder b, double valueM, boolean us) {
        number(b, us ? valueM / INCH_M : valueM, us ? 3 : 4);
        b.append(us ? " in" : " m");
    }

    private static void number(StringBuilder b, double value, int decimals) {
        int from = b.length();
        LogWriter.fixed(b, value, decimals);
        if (b.indexOf(".", from) >= 0) {
            while (b.charAt(b.length() - 1) == '0') {
                b.setLength(b.length() - 1);
            }
            if (b.charAt(b.length() - 1) == '.') {
                b.setLength(b.length() - 1);
            }
        }
    }

    /** RFC 7946: longitude first, outer ring counter-clockwise and closed; long edges get points between. */
    static String boundaryGeoJson(Scenario scenario, double[][] ring) {
        LocalMap map = new LocalMap(scenario.site().latDeg(), scenario.site().lonDeg());
        double twice = 0;
        int n = ring.length;
        for (int i = 0; i < n; i++) {
            twice += ring[i][0] * ring[(i + 1) % n][1] - ring[(i + 1) % n][0] * ring[i][1];
        }
        StringBuilder b = new StringBuilder(4096);
        b.append(
                        "{\"type\": \"FeatureCollection\", \"features\": [{\"type\": \"Feature\", \"properties\": {\"name\": \"")
                .append(scenario.job().getOrDefault("field", "Field"))
                .append("\"},\n\"geometry\": {\"type\": \"Polygon\", \"coordinates\": [[\n");
        int step = twice > 0 ? 1 : -1;
        for (int k = 0, i = 0; k < n; k++, i = Math.floorMod(i + step, n)) {
            double[] from = ring[i];
            double[] to = ring[Math.floorMod(i + step, n)];
            int parts = (int) Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / DENSEST_EDGE_M));
            for (int part = 0; part < parts; part++) {
                double f = (double) part / parts;
                point(b, map, from[0] + f * (to[0] - from[0]), from[1] + f * (to[1] - from[1]));
                b.append(",\n");
            }
        }
        point(b, map, ring[0][0], ring[0][1]);
        return b.append("\n]]}}]}\n").toString();
    }

    private static void point(StringBuilder b, LocalMap map, double x, double y) {
        double[] latLon = map.latLonDeg(x, y);
        b.append('[');
        LogWriter.fixed(b, latLon[1], 9);
        b.append(", ");
        LogWriter.fixed(b, latLon[0], 9);
        b.append(']');
    }
}
