package io.rowledger.sim;

/**
 * A place to keep away from, with the truth of what was put down within its setback: every row of every step of the
 * integrator is evaluated at points 5 cm apart across its band, half-way through the step (about 4 cm of way), by their plain
 * distance to the place. Shares no geometry with the product. One run each.
 */
public final class SimKeepOut {
    private static final double SAMPLE_M = 0.05;

    /** What a place is. */
    public enum Kind {
        POINT,
        LINE,
        POLYGON
    }

    private final String name;
    private final Kind kind;
    private final double setbackM;
    /** {x, y} in the simulator's meters; a polygon's ring is not closed. */
    private final double[][] corners;

    private double[] meteredL = new double[0];
    private double closestM = Double.POSITIVE_INFINITY;
    private double lowestM = Double.POSITIVE_INFINITY;

    /** A place by its corners {x, y}, m. */
    public SimKeepOut(String name, Kind kind, double setbackM, double[]... corners) {
        this.name = name;
        this.kind = kind;
        this.setbackM = setbackM;
        this.corners = corners;
    }

    /** Name. */
    public String name() {
        return name;
    }

    /** Per product: metered while working inside, L. */
    public double[] meteredL() {
        return meteredL;
    }

    /** Least distance from the place to any point sampled on a delivering row, m. */
    public double closestM() {
        return closestM;
    }

    void step(StepState s) {
        if (meteredL.length == 0) {
            meteredL = new double[s.products];
        }
        if (!s.working) {
            return;
        }
        double reachM = s.rig.widthM() + 2;
        double awayM = distanceM(s.centerX, s.centerY) - reachM;
        if (awayM > setbackM && awayM > closestM) {
            return;
        }
        for (int i = 0; i < s.rows; i++) {
            row(s, i);
        }
    }

    private void row(StepState s, int i) {
        int r = s.rows + i;
        int samples = (int) Math.ceil(s.rig.bandM(i) / SAMPLE_M);
        int inside = 0;
        lowestM = Double.POSITIVE_INFINITY;
        for (int j = 0; j < samples; j++) {
            double t = (j + 0.5) / samples;
            double x = ((1 - t) * (s.startX[i] + s.endX[i]) + t * (s.startX[r] + s.endX[r])) / 2;
            double y = ((1 - t) * (s.startY[i] + s.endY[i]) + t * (s.startY[r] + s.endY[r])) / 2;
            double d = distanceM(x, y);
            lowestM = Math.min(lowestM, d);
            inside += d < setbackM || d == 0 ? 1 : 0;
        }
        if (s.delivering(i)) {
            closestM = Math.min(closestM, lowestM);
        }
        for (int p = 0; p < s.products; p++) {
            meteredL[p] += s.meterLPerS[p][i] * s.dtS * inside / samples;
        }
    }

    /** To the place; 0 inside a polygon. */
    private double distanceM(double x, double y) {
        int n = corners.length;
        double least = Double.POSITIVE_INFINITY;
        boolean in = false;
        for (int i = 0; i < n; i++) {
            double[] a = corners[i];
            double[] b = corners[(i + 1) % n];
            if (kind == Kind.POLYGON && a[1] > y != b[1] > y && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])) {
                in = !in;
            }
            if (kind == Kind.LINE && i == n - 1) {
                break;
            }
            double dx = b[0] - a[0];
            double dy = b[1] - a[1];
            double length2 = dx * dx + dy * dy;
            double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / length2));
            least = Math.min(least, Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy));
        }
        return in ? 0 : least;
    }

    /** As a GeoJSON feature with {@code name} and {@code setback[m]}. */
    public String feature(SimSite site) {
        LocalMap map = new LocalMap(site.latDeg(), site.lonDeg());
        StringBuilder b = new StringBuilder("{\"type\": \"Feature\", \"properties\": {\"name\": \"")
                .append(name)
                .append("\", \"setback[m]\": ");
        LogWriter.fixed(b, setbackM, 3);
        b.append("}, \"geometry\": {\"type\": \"");
        b.append(kind == Kind.POINT ? "Point" : kind == Kind.LINE ? "LineString" : "Polygon");
        b.append("\", \"coordinates\": ").append(kind == Kind.POLYGON ? "[[" : kind == Kind.LINE ? "[" : "");
        int n = kind == Kind.POLYGON ? corners.length + 1 : corners.length;
        for (int i = 0; i < n; i++) {
            double[] latLon = map.latLonDeg(corners[i % corners.length][0], corners[i % corners.length][1]);
            b.append(i == 0 ? "[" : ", [");
            LogWriter.fixed(b, latLon[1], 9);
            b.append(", ");
            LogWriter.fixed(b, latLon[0], 9);
            b.append(']');
        }
        return b.append(kind == Kind.POLYGON ? "]]" : kind == Kind.LINE ? "]" : "")
                .append("}}")
                .toString();
    }

    /** A whole file. */
    public static String file(SimSite site, Iterable<SimKeepOut> places) {
        StringBuilder b = new StringBuilder("{\"type\": \"FeatureCollection\", \"features\": [\n");
        String between = "";
        for (SimKeepOut place : places) {
            b.append(between).append(place.feature(site));
            between = ",\n";
        }
        return b.append("\n]}\n").toString();
    }
}
