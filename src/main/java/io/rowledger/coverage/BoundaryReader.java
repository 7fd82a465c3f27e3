package io.rowledger.coverage;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;

/**
 * A field's outline from GeoJSON (RFC 7946): a Polygon or MultiPolygon, bare, in a Feature or in a FeatureCollection.
 * Several polygons count as one field: their union.
 *
 * <p>RFC 7946 draws edges straight in longitude and latitude, the plane straight in metres. Along an edge of 1 km the
 * two lie less than 2 cm apart at 45 degrees of latitude, and the area differs by less than a part in 100,000.
 */
public final class BoundaryReader {
    /** Further than this from the ground that was driven, a boundary belongs to another field, m. */
    public static final double MAX_AWAY_M = 5_000;

    private BoundaryReader() {}

    /** The boundary in the job's plane. */
    public static Boundary read(Path file, LocalPlane plane) {
        return read(file, plane, null);
    }

    /**
     * The boundary in the job's plane.
     *
     * @param driven the box around the driven ground in the plane, or null for the plane's origin
     * @throws UnusableInputException where the file can't be read, is no GeoJSON, has no polygon, has coordinates that
     *     can't be, or lies far from the driven ground
     */
    public static Boundary read(Path file, LocalPlane plane, @Nullable Envelope driven) {
        GeoJsonPolygons source = GeoJsonPolygons.read(file);
        List<Geometry> parts = new ArrayList<>();
        boolean repaired = false;
        for (List<List<double[]>> rings : source.polygons()) {
            Polygon polygon = polygon(rings, plane);
            boolean valid = polygon.isValid();
            repaired |= !valid;
            parts.add(valid ? polygon : Jts.areal(GeometryFixer.fix(polygon)));
        }
        Geometry area = Unions.union(parts, 1);
        if (area.getArea() == 0) {
            throw UnusableInputException.found("a boundary without any area")
                    .inFile(file.toString())
                    .expected("a polygon around the field")
                    .mend("draw the field's outline as a polygon and export it again");
        }
        checkNear(file, area, driven == null ? new Envelope(0, 0, 0, 0) : driven, source);
        return new Boundary(file.toString(), source.name(), area, repaired);
    }

    private static Polygon polygon(List<List<double[]>> rings, LocalPlane plane) {
        LinearRing shell = ring(rings.get(0), plane);
        LinearRing[] holes =
                rings.subList(1, rings.size()).stream().map(r -> ring(r, plane)).toArray(LinearRing[]::new);
        return Jts.FACTORY.createPolygon(shell, holes);
    }

    private static LinearRing ring(List<double[]> lonLat, LocalPlane plane) {
        Coordinate[] out = new Coordinate[lonLat.size()];
        double[] eastNorth = new double[2];
        for (int i = 0; i < out.length; i++) {
            plane.forward(lonLat.get(i)[1], lonLat.get(i)[0], eastNorth);
            out[i] = new Coordinate(Jts.onGrid(eastNorth[0]), Jts.onGrid(eastNorth[1]));
        }
        out[out.length - 1] = out[0].copy();
        return Jts.FACTORY.createLinearRing(out);
    }

    private static void checkNear(Path file, Geometry area, Envelope driven, GeoJsonPolygons source) {
        double awayM = area.getEnvelopeInternal().distance(driven);
        if (awayM <= MAX_AWAY_M) {
            return;
        }
        double[] first = source.polygons().get(0).get(0).get(0);
        String place = String.format(Locale.ROOT, "%.5f, %.5f", first[1], first[0]);
        throw UnusableInputException.found(String.format(
                        Locale.ROOT,
                        "a boundary %.0f km away from the log, its first corner at latitude, longitude %s",
                        awayM / 1000,
                        place))
                .inFile(file.toString())
                .expected("the outline of the field that was driven, longitude before latitude as in RFC 7946")
                .mend("give the boundary of this field, or swap the two numbers of each position if they are the wrong"
                        + " way round");
    }
}
