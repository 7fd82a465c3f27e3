package io.rowledger.field;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Places to keep away from, from a map file ({@link MapReader}): points, lines or polygons, each with a {@code setback} and, if it has one, a
 * {@code name}. The distances are the user's; the program knows none of its own.
 */
public final class KeepOutReader {
    /** Further than this from the ground that was driven, a place belongs to another field, m. */
    public static final double MAX_AWAY_M = BoundaryReader.MAX_AWAY_M;

    /** The property that holds the distance. */
    static final String SETBACK = "setback";

    /**
     * Chords in a quarter of a circle. Their corners lie on the circle, so n = 4 · 64 chords hold sin(2π/n) ÷ (2π/n) of
     * its area: 0.01 % too little; at 10 m the line runs 0.8 mm inside the circle at most.
     */
    static final int QUARTER_CHORDS = 64;

    /** How much of the setback a line's small bends may be straightened by before it is widened; usually a hundredth. */
    private static final double SIMPLIFY_SHARE = 1e-4;

    private KeepOutReader() {}

    /**
     * The places in the job's plane.
     *
     * @param driven the box around the driven ground in the plane
     * @throws UnusableInputException where the file can't be read, a feature has no place or no setback, or all lie
     *     further than {@link #MAX_AWAY_M} from the driven ground
     */
    public static KeepOuts read(Path file, LocalPlane plane, Envelope driven) {
        MapFeatures source = MapReader.read(file, MapUse.KEEP_OUT);
        List<KeepOut> places = new ArrayList<>();
        for (MapFeature feature : source.features()) {
            places.add(keepOut(source, feature, plane));
        }
        if (places.isEmpty()) {
            throw UnusableInputException.found("no feature")
                    .inFile(file.toString())
                    .expected("points, lines or polygons, each with a setback")
                    .hint("draw the places to keep away from, or leave the file out");
        }
        checkNear(source, places, driven);
        return new KeepOuts(source.file(), places, source.notes());
    }

    private static KeepOut keepOut(MapFeatures source, MapFeature feature, LocalPlane plane) {
        if (feature.shapes().isEmpty()) {
            String only = feature.types().isEmpty() ? "" : ", only " + String.join(", ", feature.types());
            throw source.fault(feature, "a feature without a place" + only)
                    .expected("a point, a line or a polygon")
                    .hint("draw where it is, or take the feature out");
        }
        double setbackM = setbackM(source, feature);
        SelfIntersections.requireFew(source, feature);
        MapGeometry.Placed placed = MapGeometry.of(feature, plane);
        for (MapShape shape : feature.shapes()) {
            if (shape.kind() == MapShape.Kind.POLYGON
                    && MapGeometry.of(shape, plane).geometry().getArea() == 0) {
                throw source.fault(feature, "a polygon without any area")
                        .expected("an outline around the place")
                        .hint("draw the outline again, or make it a line or a point");
            }
        }
        for (Coordinate c : placed.geometry().getCoordinates()) {
            if (!Double.isFinite(c.x) || !Double.isFinite(c.y)) {
                throw source.fault(feature, "a place on the other side of the earth")
                        .expected("places in or around the field")
                        .hint("take the feature out");
            }
        }
        return new KeepOut(
                feature.number(),
                feature.nameOrNumber(),
                setbackM,
                placed.geometry(),
                within(placed.geometry(), setbackM),
                placed.repaired());
    }

    private static double setbackM(MapFeatures source, MapFeature feature) {
        OptionalDouble setbackM = source.quantity(feature, SETBACK, Dimension.LENGTH);
        if (setbackM.isEmpty()) {
            throw source.fault(feature, "a feature without a setback")
                    .expected("the property setback, how far to keep away: the distance that your rules ask for")
                    .hint("write the property with its unit, such as \"setback\": \"N ft\" or \"setback[m]\": N");
        }
        if (setbackM.getAsDouble() < 0) {
            MapProperty property = feature.properties().stream()
                    .filter(p -> !p.text().isBlank() && isSetback(feature, p))
                    .findFirst()
                    .orElseThrow();
            throw source.fault(feature, property, "a setback of \"" + property.text() + "\"")
                    .expected("a distance of 0 or more")
                    .hint("write how far to keep away; 0 keeps out of a polygon itself");
        }
        return setbackM.getAsDouble();
    }

    /** As {@link MapFeatures#quantity} finds it: with its unit in brackets, behind an underscore, or in the value. */
    private static boolean isSetback(MapFeature feature, MapProperty property) {
        String unit = property.unitBehind(SETBACK);
        return feature.called(SETBACK).contains(property)
                || (!unit.isEmpty() && Unit.find(unit, Dimension.LENGTH).isPresent());
    }

    /** Ground closer to the place than the setback, the inside of polygons with it. Straight in the plane. */
    public static Geometry within(Geometry place, double setbackM) {
        BufferParameters circle = new BufferParameters(QUARTER_CHORDS);
        circle.setSimplifyFactor(SIMPLIFY_SHARE);
        return BufferOp.bufferOp(place, setbackM, circle);
    }

    private static void checkNear(MapFeatures source, List<KeepOut> places, Envelope driven) {
        KeepOut nearest = places.get(0);
        for (KeepOut place : places) {
            if (awayM(place, driven) < awayM(nearest, driven)) {
                nearest = place;
            }
        }
        if (awayM(nearest, driven) <= MAX_AWAY_M) {
            return;
        }
        double[] first = source.features()
                .get(nearest.number() - 1)
                .shapes()
                .get(0)
                .parts()
                .get(0);
        throw UnusableInputException.found(String.format(
                        Locale.ROOT,
                        "no place within %.0f km of the log: the nearest, %s, is %.0f km away, at latitude, longitude"
                                + " %.5f, %.5f",
                        MAX_AWAY_M / 1000,
                        nearest.name(),
                        awayM(nearest, driven) / 1000,
                        first[1],
                        first[0]))
                .inFile(source.file())
                .expected("the places around the field that was driven"
                        + source.format().order())
                .hint("give the keep-out file of this field, or "
                        + source.format().placedWrongly());
    }

    private static double awayM(KeepOut place, Envelope driven) {
        return place.place().getEnvelopeInternal().distance(driven);
    }
}
