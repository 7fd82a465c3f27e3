package io.rowledger.field;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.geo.Unions;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * A field's outline from a map file ({@link MapReader}). Several polygons count as one field: their union.
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
     * @throws UnusableInputException where the file can't be read, is no map, has no polygon, has coordinates that
     *     can't be, or lies far from the driven ground
     */
    public static Boundary read(Path file, LocalPlane plane, @Nullable Envelope driven) {
        MapFeatures source = MapReader.read(file, MapUse.BOUNDARY);
        source.features().forEach(feature -> SelfIntersections.requireFew(source, feature));
        List<MapShape> outlines = source.features().stream()
                .flatMap(feature -> feature.shapes().stream())
                .filter(shape -> shape.kind() == MapShape.Kind.POLYGON)
                .toList();
        if (outlines.isEmpty()) {
            throw noPolygon(file, source);
        }
        List<Geometry> parts = new ArrayList<>();
        boolean repaired = false;
        for (MapShape outline : outlines) {
            MapGeometry.Placed placed = MapGeometry.of(outline, plane);
            repaired |= placed.repaired();
            parts.add(placed.geometry());
        }
        Geometry area = Unions.union(parts, 1);
        if (area.getArea() == 0) {
            throw UnusableInputException.found("a boundary without any area")
                    .inFile(file.toString())
                    .expected("a polygon around the field")
                    .hint("draw the field's outline as a polygon and export it again");
        }
        checkNear(source, area, driven == null ? new Envelope(0, 0, 0, 0) : driven, outlines.get(0));
        return new Boundary(file.toString(), source.firstName(), area, repaired, source.notes());
    }

    private static UnusableInputException noPolygon(Path file, MapFeatures source) {
        List<String> others = source.types().stream()
                .filter(type -> !type.equals("Polygon") && !type.equals("MultiPolygon"))
                .toList();
        String found = others.isEmpty() ? "no geometry" : "no polygon, only " + String.join(", ", others);
        return UnusableInputException.found(found)
                .inFile(file.toString())
                .expected(source.format().polygons())
                .hint("export the field's outline as a polygon");
    }

    private static void checkNear(MapFeatures source, Geometry area, Envelope driven, MapShape outline) {
        double awayM = area.getEnvelopeInternal().distance(driven);
        if (awayM <= MAX_AWAY_M) {
            return;
        }
        double[] first = outline.parts().get(0);
        String place = String.format(Locale.ROOT, "%.5f, %.5f", first[1], first[0]);
        throw UnusableInputException.found(String.format(
                        Locale.ROOT,
                        "a boundary %.0f km away from the log, its first corner at latitude, longitude %s",
                        awayM / 1000,
                        place))
                .inFile(source.file())
                .expected("the outline of the field that was driven"
                        + source.format().order())
                .hint("give the boundary of this field, or " + source.format().placedWrongly());
    }
}
