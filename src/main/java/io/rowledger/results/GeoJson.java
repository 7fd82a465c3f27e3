package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.geo.LocalPlane;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * A GeoJSON feature collection (RFC 7946), written feature by feature: longitude before latitude, WGS 84, outer rings
 * counter-clockwise and holes clockwise, eight decimals (a millimeter). Properties are records.
 */
public final class GeoJson implements AutoCloseable {
    private static final long SCALE = 100_000_000L;

    private final LocalPlane plane;
    private final JsonGenerator json;
    private final double[] latLon = new double[2];
    private final char[] digits = new char[24];

    public GeoJson(LocalPlane plane, OutputStream out) throws IOException {
        this.plane = plane;
        this.json = JsonFile.generator(out);
        json.writeStartObject();
        json.writeStringField("type", "FeatureCollection");
        json.writeArrayFieldStart("features");
    }

    /** Adds a polygon of the job's plane. */
    public void polygon(Polygon polygon, Object properties) throws IOException {
        open();
        json.writeStringField("type", "Polygon");
        json.writeFieldName("coordinates");
        coordinates(polygon);
        finish(properties);
    }

    /** Adds polygons of the job's plane as one feature. */
    public void polygons(List<Polygon> polygons, Object properties) throws IOException {
        open();
        json.writeStringField("type", "MultiPolygon");
        json.writeArrayFieldStart("coordinates");
        for (Polygon polygon : polygons) {
            coordinates(polygon);
        }
        json.writeEndArray();
        finish(properties);
    }

    /** Adds any geometry of the job's plane. */
    public void geometry(Geometry geometry, Object properties) throws IOException {
        json.writeStartObject();
        json.writeStringField("type", "Feature");
        json.writeFieldName("geometry");
        any(geometry);
        properties(properties);
    }

    private void any(Geometry geometry) throws IOException {
        json.writeStartObject();
        json.writeStringField("type", geometry.getGeometryType());
        boolean mixed = geometry.getGeometryType().equals("GeometryCollection");
        json.writeFieldName(mixed ? "geometries" : "coordinates");
        if (mixed) {
            json.writeStartArray();
            for (int i = 0; i < geometry.getNumGeometries(); i++) {
                any(geometry.getGeometryN(i));
            }
            json.writeEndArray();
        } else {
            coordinates(geometry);
        }
        json.writeEndObject();
    }

    private void coordinates(Geometry geometry) throws IOException {
        if (geometry instanceof GeometryCollection several) {
            json.writeStartArray();
            for (int i = 0; i < several.getNumGeometries(); i++) {
                coordinates(several.getGeometryN(i));
            }
            json.writeEndArray();
        } else if (geometry instanceof Polygon polygon) {
            json.writeStartArray();
            ring(polygon.getExteriorRing(), true);
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                ring(polygon.getInteriorRingN(i), false);
            }
            json.writeEndArray();
        } else if (geometry instanceof LineString line) {
            corners(line.getCoordinateSequence(), true);
        } else {
            plane.inverse(geometry.getCoordinate().x, geometry.getCoordinate().y, latLon);
            position(latLon[1], latLon[0]);
        }
    }

    /** Adds a point in degrees, or a feature without a place where the point isn't known. */
    public void point(double latDeg, double lonDeg, Object properties) throws IOException {
        if (Double.isFinite(latDeg) && Double.isFinite(lonDeg)) {
            open();
            json.writeStringField("type", "Point");
            json.writeFieldName("coordinates");
            position(lonDeg, latDeg);
            finish(properties);
            return;
        }
        json.writeStartObject();
        json.writeStringField("type", "Feature");
        json.writeNullField("geometry");
        properties(properties);
    }

    private void open() throws IOException {
        json.writeStartObject();
        json.writeStringField("type", "Feature");
        json.writeObjectFieldStart("geometry");
    }

    private void finish(Object properties) throws IOException {
        json.writeEndObject();
        properties(properties);
    }

    private void properties(Object properties) throws IOException {
        json.writeFieldName("properties");
        JsonFile.writeInto(json, properties);
        json.writeEndObject();
        json.writeRaw('\n');
    }

    private void ring(LineString ring, boolean counterClockwise) throws IOException {
        CoordinateSequence corners = ring.getCoordinateSequence();
        // East and north to longitude and latitude keeps the sense of a ring: both planes are right-handed.
        boolean isCounterClockwise = Area.ofRingSigned(corners) < 0;
        corners(corners, isCounterClockwise == counterClockwise);
    }

    private void corners(CoordinateSequence corners, boolean forward) throws IOException {
        int n = corners.size();
        json.writeStartArray();
        for (int i = 0; i < n; i++) {
            int at = forward ? i : n - 1 - i;
            plane.inverse(corners.getX(at), corners.getY(at), latLon);
            position(latLon[1], latLon[0]);
        }
        json.writeEndArray();
    }

    private void position(double lonDeg, double latDeg) throws IOException {
        json.writeStartArray();
        number(lonDeg);
        number(latDeg);
        json.writeEndArray();
    }

    /** Fixed-point digits by hand: a layer holds a million of these, and a BigDecimal each would cost seconds. */
    private void number(double degrees) throws IOException {
        long scaled = Math.round(degrees * SCALE);
        long rest = Math.abs(scaled);
        int at = digits.length;
        int decimals = JsonNumbers.DEGREES;
        boolean significant = false;
        for (int i = 0; i < decimals; i++) {
            int digit = (int) (rest % 10);
            rest /= 10;
            significant |= digit != 0;
            if (significant) {
                digits[--at] = (char) ('0' + digit);
            }
        }
        if (significant) {
            digits[--at] = '.';
        }
        do {
            digits[--at] = (char) ('0' + rest % 10);
            rest /= 10;
        } while (rest > 0);
        if (scaled < 0) {
            digits[--at] = '-';
        }
        json.writeRawValue(digits, at, digits.length - at);
    }

    @Override
    public void close() throws IOException {
        json.writeEndArray();
        json.writeEndObject();
        json.writeRaw('\n');
        json.close();
    }
}
