package io.rowledger.maps;

import io.rowledger.geo.LocalPlane;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.locationtech.proj4j.CRSFactory;
import org.locationtech.proj4j.Proj4jException;
import org.locationtech.proj4j.ProjCoordinate;
import org.locationtech.proj4j.proj.Projection;

/**
 * From the coordinates of a file to longitude and latitude.
 *
 * <p>Datums. The world and continental datums below lie within two meters of WGS 84; receivers corrected by a national
 * network log them under its name. They are taken as WGS 84 and the reader is told. Others differ by up to hundreds of
 * meters and need grids; they are refused. Sizes of the differences: IOGP Guidance Note 7-2 and the EPSG register's
 * transformations to WGS 84 (NAD83 1188, ETRS89 1149, GDA94 1150, NZGD2000 1565), all null with an accuracy of 1 to 4 m.
 *
 * <p>Projections. Transverse Mercator by {@link LocalPlane}; Lambert conformal conic and Albers by PROJ4J on the file's own
 * ellipsoid; the spherical Mercator of web maps in closed form.
 */
final class ReferenceSystem {
    /** Degrees on WGS 84, nothing to convert. */
    static final ReferenceSystem WGS84 = new ReferenceSystem("", (x, y, out) -> {
        out[0] = x;
        out[1] = y;
    });

    private static final double FULL_TURN_DEG = 360;
    /** Around the equator, and some more. */
    private static final double EARTH_GIRTH_M = 5e7;
    /** Scales on the central meridian lie within a percent of 1 where anybody draws maps by them. */
    private static final double MIN_SCALE = 0.5;

    private static final List<String> DATUMS = List.of(
            "wgs1984",
            "wgs84",
            "worldgeodeticsystem1984",
            "northamericandatum1983",
            "northamerican1983",
            "nad83",
            "nad1983",
            "europeanterrestrialreferencesystem1989",
            "etrs1989",
            "etrs89",
            "etrf",
            "itrf",
            "geocentricdatumofaustralia",
            "gda1994",
            "gda94",
            "gda2020",
            "newzealandgeodeticdatum2000",
            "nzgd2000",
            "sistemadereferenciageocentrico",
            "sirgas",
            "reseaugeodesiquefrancais1993",
            "rgf1993",
            "rgf93");

    private static final double WEB_RADIUS_M = 6_378_137;
    private static final double DEGREE_RAD = Math.PI / 180;

    private final String otherDatum;
    private final Inverse inverse;

    /** Takes x and y as the file has them; {@code out} receives longitude and latitude, degrees. */
    private interface Inverse {
        void apply(double x, double y, double[] out);
    }

    private ReferenceSystem(String otherDatum, Inverse inverse) {
        this.otherDatum = otherDatum;
        this.inverse = inverse;
    }

    /** What could not be made of a description. */
    static final class NotUsable extends Exception {
        private static final long serialVersionUID = 1L;
        private final String found;
        private final String wanted;

        NotUsable(String found, String wanted) {
            super(found);
            this.found = found;
            this.wanted = wanted;
        }

        String found() {
            return found;
        }

        String wanted() {
            return wanted;
        }
    }

    /** The name of a datum other than WGS 84 that counts as WGS 84; empty for WGS 84 itself. */
    String otherDatum() {
        return otherDatum;
    }

    /** Longitude and latitude pairs from x and y pairs, in place; NaN where there is no such place. */
    double[] toLonLat(double[] xy) {
        double[] out = new double[2];
        for (int i = 0; i < xy.length; i += 2) {
            inverse.apply(xy[i], xy[i + 1], out);
            xy[i] = out[0];
            xy[i + 1] = out[1];
        }
        return xy;
    }

    /**
     * The system a well-known text (OGC 01-009, also as in a shapefile's .prj) describes.
     *
     * @throws NotUsable where it is none, or of a datum or projection that can't be brought to WGS 84
     */
    static ReferenceSystem of(String text) throws NotUsable {
        Wkt root = Wkt.parse(text);
        Wkt system = root != null && root.keyword().equals("COMPD_CS") ? root.node("PROJCS", "GEOGCS") : root;
        if (system == null || !List.of("PROJCS", "GEOGCS").contains(system.keyword())) {
            throw new NotUsable(
                    "a coordinate system that can't be read", "well-known text that begins with PROJCS or GEOGCS");
        }
        Wkt geographic = system.keyword().equals("GEOGCS") ? system : system.node("GEOGCS");
        Wkt datum = geographic == null ? null : geographic.node("DATUM");
        Wkt spheroid = datum == null ? null : datum.node("SPHEROID", "ELLIPSOID");
        if (geographic == null || datum == null || spheroid == null) {
            throw new NotUsable("a coordinate system without a datum", "a GEOGCS with DATUM and SPHEROID");
        }
        String other = otherDatum(datum);
        Wkt meridian = geographic.node("PRIMEM");
        if (meridian != null && meridian.number(1) != 0) {
            throw new NotUsable("longitudes from " + meridian.name(), "longitudes from Greenwich");
        }
        Wkt angle = geographic.node("UNIT");
        double degrees = (angle == null ? DEGREE_RAD : angle.number(1)) / DEGREE_RAD;
        // Files write 0.0174532925199433, with more or fewer figures.
        double unit = Math.abs(degrees - 1) < 1e-8 ? 1 : degrees;
        if (system.keyword().equals("GEOGCS")) {
            return new ReferenceSystem(other, (x, y, out) -> {
                out[0] = x * unit;
                out[1] = y * unit;
            });
        }
        return new ReferenceSystem(other, projected(system, spheroid, unit));
    }

    private static String otherDatum(Wkt datum) throws NotUsable {
        String plain = plain(datum.name());
        String name = plain.startsWith("d") && !plain.startsWith("deutsch") ? plain.substring(1) : plain;
        if (DATUMS.stream().noneMatch(known -> plain.startsWith(known) || name.startsWith(known))) {
            throw new NotUsable(
                    "positions on the datum " + datum.name(),
                    "WGS 84, or a datum within two meters of it such as NAD83, ETRS89 or GDA2020");
        }
        boolean same = name.startsWith("wgs") || plain.startsWith("wgs") || plain.startsWith("worldgeodetic");
        return same ? "" : datum.name().replaceFirst("^D_", "").replace('_', ' ');
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    private static Inverse projected(Wkt system, Wkt spheroid, double degrees) throws NotUsable {
        Wkt method = system.node("PROJECTION");
        Wkt unit = system.node("UNIT");
        double toM = unit == null ? Double.NaN : unit.number(1);
        if (method == null || !(toM > 0)) {
            throw new NotUsable("a projected coordinate system without PROJECTION or UNIT", "both in the PROJCS");
        }
        Map<String, Double> given = new LinkedHashMap<>();
        for (Wkt node : system.nodes()) {
            if (node.keyword().equals("PARAMETER") && Double.isFinite(node.number(1))) {
                given.put(plain(node.name()), node.number(1));
            }
        }
        Parameters p = new Parameters(given, degrees, toM);
        if (!p.onEarth()) {
            throw new NotUsable(
                    "a projection with an angle, a distance or a scale that can't be", "parameters such as UTM's");
        }
        double a = spheroid.number(1);
        double inverseF = spheroid.number(2);
        if (!(a > 6.3e6 && a < 6.4e6) || !(inverseF == 0 || inverseF > 200)) {
            throw new NotUsable("a spheroid that is not the earth's", "an ellipsoid such as WGS 84's");
        }
        Inverse inverse = ofMethod(system, plain(method.name()), p, a, inverseF);
        if (inverse == null) {
            throw new NotUsable(
                    "the projection " + method.name(),
                    "Transverse Mercator (UTM), Lambert conformal conic, Albers, web Mercator, or plain degrees");
        }
        return inverse;
    }

    private static @Nullable Inverse ofMethod(Wkt system, String method, Parameters p, double a, double inverseF) {
        return switch (method) {
            case "transversemercator", "gausskruger" -> transverseMercator(p, a, inverseF);
            case "lambertconformalconic", "lambertconformalconic1sp", "lambertconformalconic2sp" ->
                conic("lcc", p, a, inverseF);
            case "albers", "albersconicequalarea" -> conic("aea", p, a, inverseF);
            case "mercatorauxiliarysphere", "popularvisualisationpseudomercator" -> webMercator(p);
            case "mercator1sp", "mercator" -> isWebMercator(system) ? webMercator(p) : null;
            default -> null;
        };
    }

    /** Files say in three ways that their Mercator is on a sphere though their datum is not. */
    private static boolean isWebMercator(Wkt system) {
        Wkt extension = system.node("EXTENSION");
        boolean sphere = extension != null
                && extension.values().stream().anyMatch(v -> v.contains("+a=6378137") && v.contains("+b=6378137"));
        String name = plain(system.name());
        return sphere || name.contains("pseudomercator") || name.contains("webmercator");
    }

    /** The spherical Mercator of web maps (EPSG:3857). */
    static ReferenceSystem webMercator() {
        return new ReferenceSystem("", webMercator(new Parameters(Map.of(), 1, 1)));
    }

    /** A zone of UTM on WGS 84 (EPSG:32601 to 32660 north of the equator, 32701 to 32760 south of it). */
    static ReferenceSystem utm(int zone, boolean north) {
        Parameters p = new Parameters(
                Map.of(
                        "latitudeoforigin", 0.0,
                        "centralmeridian", zone * 6.0 - 183,
                        "scalefactor", 0.9996,
                        "falseeasting", 500_000.0,
                        "falsenorthing", north ? 0 : 10_000_000.0),
                1,
                1);
        return new ReferenceSystem("", transverseMercator(p, LocalPlane.WGS84_A, LocalPlane.WGS84_INVERSE_F));
    }

    private static Inverse webMercator(Parameters p) {
        return (x, y, out) -> {
            out[0] = p.lon0() + Math.toDegrees((x * p.toM - p.eastM()) / WEB_RADIUS_M);
            out[1] = Math.toDegrees(Math.atan(Math.sinh((y * p.toM - p.northM()) / WEB_RADIUS_M)));
        };
    }

    private static Inverse transverseMercator(Parameters p, double a, double inverseF) {
        double invF = inverseF == 0 ? 1e15 : inverseF;
        LocalPlane plane = new LocalPlane(a, invF, p.lat0(), p.lon0(), p.scale());
        return (x, y, out) -> {
            plane.inverse(x * p.toM - p.eastM(), y * p.toM - p.northM(), out);
            double lat = out[0];
            out[0] = out[1];
            out[1] = lat;
        };
    }

    private static @Nullable Inverse conic(String name, Parameters p, double a, double inverseF) {
        List<String> args = new ArrayList<>();
        boolean one = Double.isNaN(p.get("standardparallel2"));
        double first = one ? p.get("standardparallel1", p.lat0()) : p.get("standardparallel1");
        if (Double.isNaN(first) || (one && name.equals("aea"))) {
            return null;
        }
        args.add("+proj=" + name);
        args.add("+lat_1=" + first);
        args.add("+lat_2=" + (one ? first : p.get("standardparallel2")));
        args.add("+lat_0=" + p.lat0());
        args.add("+lon_0=" + p.lon0());
        args.add("+k_0=" + p.scale());
        args.add("+x_0=" + p.eastM());
        args.add("+y_0=" + p.northM());
        args.add("+a=" + a);
        // PROJ4J 1.4.1 makes nothing of +rf behind +a.
        args.add("+b=" + (inverseF == 0 ? a : a * (1 - 1 / inverseF)));
        args.add("+units=m");
        Projection projection;
        try {
            projection = new CRSFactory()
                    .createFromParameters("file", args.toArray(new String[0]))
                    .getProjection();
        } catch (Proj4jException e) {
            return null;
        }
        return (x, y, out) -> {
            ProjCoordinate to = new ProjCoordinate();
            try {
                boolean near = Math.abs(x * p.toM) <= 2 * EARTH_GIRTH_M && Math.abs(y * p.toM) <= 2 * EARTH_GIRTH_M;
                if (near) {
                    projection.inverseProject(new ProjCoordinate(x * p.toM, y * p.toM), to);
                } else {
                    to = new ProjCoordinate(Double.NaN, Double.NaN);
                }
            } catch (Proj4jException e) {
                to = new ProjCoordinate(Double.NaN, Double.NaN);
            }
            out[0] = to.x;
            out[1] = to.y;
        };
    }

    /** The parameters of a projection; lengths in meters, angles in degrees. */
    private record Parameters(Map<String, Double> given, double degrees, double toM) {
        /** Angles within a turn, distances within the earth's girth. PROJ4J takes others for ever to bring into range. */
        boolean onEarth() {
            double[] angles = {lat0(), lon0(), get("standardparallel1", 0), get("standardparallel2", 0)};
            boolean turned = Arrays.stream(angles).allMatch(a -> Math.abs(a) <= FULL_TURN_DEG);
            boolean near = Math.abs(eastM()) <= EARTH_GIRTH_M && Math.abs(northM()) <= EARTH_GIRTH_M;
            return turned && near && scale() > MIN_SCALE && scale() < 1 / MIN_SCALE;
        }

        double get(String name) {
            Double value = given.get(name);
            return value == null ? Double.NaN : value * degrees;
        }

        double get(String name, double otherwise) {
            double value = get(name);
            return Double.isNaN(value) ? otherwise : value;
        }

        double lat0() {
            return get("latitudeoforigin", get("latitudeofcenter", get("standardparallel1", 0)));
        }

        double lon0() {
            return get("centralmeridian", get("longitudeofcenter", get("longitudeoforigin", 0)));
        }

        double scale() {
            Double value = given.get("scalefactor");
            return value == null ? 1 : value;
        }

        double eastM() {
            return given.getOrDefault("falseeasting", 0.0) * toM;
        }

        double northM() {
            return given.getOrDefault("falsenorthing", 0.0) * toM;
        }
    }
}
