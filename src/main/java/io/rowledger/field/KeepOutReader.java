package io.rowledger.field;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import io.rowledger.text.Message;
import io.rowledger.units.Dimension;
import io.rowledger.units.QuantityKind;
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
    /** Distance from the driven ground beyond which a place belongs to another field, m. */
    public static final double MAX_AWAY_M = BoundaryReader.MAX_AWAY_M;

    /** The property that holds the distance. */
    static final String SETBACK = "setback";

    /**
     * Chords in a quarter of a circle. Their corners lie on the circle, so n = 4 · 64 chords hold sin(2π/n) ÷ (2π/n) of
     * its area: 0.01 % too little; at 10 m the line runs 0.8 mm inside the circle at most.
     */
    static final int QUARTER_CHORDS = 64;

    /** Tolerance of simplifying an input line before it is buffered, as a share of the setback; JTS's default is 0.01. */
    private static final double SIMPLIFY_SHARE = 1e-4;

    private KeepOutReader() {}

    /**
     * The places in the job's plane.
     *
     * <p>Public layers hold a whole county: features farther than {@link #MAX_AWAY_M} from the driven ground are left
     * out, with a note.
     *
     * @param driven the box around the driven ground in the plane
     * @param defaultSetbackM setback of features that have none of their own, m; NaN for none
     * @throws UnusableInputException if the file can't be read, a feature has no place, a feature near the driven ground
     *     has no setback, or all lie farther than {@link #MAX_AWAY_M} from it
     */
    public static KeepOuts read(Path file, LocalPlane plane, Envelope driven, double defaultSetbackM) {
        MapFeatures source = MapReader.read(file, MapUse.KEEP_OUT);
        if (source.features().isEmpty()) {
            throw UnusableInputException.found("no feature")
                    .inFile(file.toString())
                    .expected("points, lines or polygons, each with a setback")
                    .hint("draw the places to keep away from, or leave the file out");
        }
        List<KeepOut> places = new ArrayList<>();
        MapFeature nearest = source.features().get(0);
        double nearestM = Double.POSITIVE_INFINITY;
        int byDefault = 0;
        for (MapFeature feature : source.features()) {
            MapGeometry.Placed placed = placed(source, feature, plane);
            double awayM = placed.geometry().getEnvelopeInternal().distance(driven);
            if (awayM < nearestM) {
                nearest = feature;
                nearestM = awayM;
            }
            if (awayM <= MAX_AWAY_M) {
                OptionalDouble own = source.quantity(feature, SETBACK, Dimension.LENGTH);
                byDefault += own.isPresent() ? 0 : 1;
                places.add(keepOut(feature, placed, setbackM(source, feature, own, defaultSetbackM)));
            }
        }
        if (places.isEmpty()) {
            throw farAway(source, nearest, nearestM);
        }
        List<Message> notes = new ArrayList<>(source.notes());
        int far = source.features().size() - places.size();
        if (far > 0) {
            notes.add(Message.of(
                    "notes.setback.far",
                    source.file(),
                    far,
                    source.features().size(),
                    Message.value(QuantityKind.LENGTH, MAX_AWAY_M)));
        }
        if (byDefault > 0) {
            notes.add(Message.of(
                    "notes.setback.default",
                    source.file(),
                    byDefault,
                    places.size(),
                    Message.value(QuantityKind.LENGTH, defaultSetbackM)));
        }
        return new KeepOuts(source.file(), places, notes);
    }

    private static MapGeometry.Placed placed(MapFeatures source, MapFeature feature, LocalPlane plane) {
        if (feature.shapes().isEmpty()) {
            String only = feature.types().isEmpty() ? "" : ", only " + String.join(", ", feature.types());
            throw source.fault(feature, "a feature without a place" + only)
                    .expected("a point, a line or a polygon")
                    .hint("draw where it is, or delete the feature");
        }
        SelfIntersections.requireFew(source, feature);
        for (MapShape shape : feature.shapes()) {
            if (shape.kind() == MapShape.Kind.POLYGON
                    && MapGeometry.of(shape, plane).geometry().getArea() == 0) {
                throw source.fault(feature, "a polygon without any area")
                        .expected("an outline around the place")
                        .hint("draw the outline again, or make it a line or a point");
            }
        }
        MapGeometry.Placed placed = MapGeometry.of(feature, plane);
        for (Coordinate c : placed.geometry().getCoordinates()) {
            if (!Double.isFinite(c.x) || !Double.isFinite(c.y)) {
                throw source.fault(feature, "a place on the other side of the earth")
                        .expected("places in or around the field")
                        .hint("delete the feature");
            }
        }
        return placed;
    }

    private static KeepOut keepOut(MapFeature feature, MapGeometry.Placed placed, double setbackM) {
        return new KeepOut(
                feature.number(),
                feature.nameOrNumber(),
                setbackM,
                placed.geometry(),
                within(placed.geometry(), setbackM),
                placed.repaired());
    }

    private static double setbackM(MapFeatures source, MapFeature feature, OptionalDouble own, double defaultSetbackM) {
        if (own.isEmpty() && Double.isNaN(defaultSetbackM)) {
            throw source.fault(feature, "a feature without a setback")
                    .expected("how far to keep away, as your rules ask for")
                    .hint(
                            "give one distance for all on the call, as in --setback \"N ft\", or write an attribute setback"
                                    + " with its unit, such as setback[ft]");
        }
        double setbackM = own.orElse(defaultSetbackM);
        if (setbackM < 0) {
            MapProperty property = feature.properties().stream()
                    .filter(p -> !p.text().isBlank() && isSetback(feature, p))
                    .findFirst()
                    .orElseThrow();
            throw source.fault(feature, property, "a setback of \"" + property.text() + "\"")
                    .expected("a distance of 0 or more")
                    .hint("write how far to keep away; 0 keeps out of a polygon itself");
        }
        return setbackM;
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

    private static UnusableInputException farAway(MapFeatures source, MapFeature nearest, double awayM) {
        double[] first = nearest.shapes().get(0).parts().get(0);
        return UnusableInputException.found(String.format(
                        Locale.ROOT,
                        "no place within %.0f km of the log: the nearest, %s, is %.0f km away, at latitude, longitude"
                                + " %.5f, %.5f",
                        MAX_AWAY_M / 1000,
                        nearest.nameOrNumber(),
                        awayM / 1000,
                        first[1],
                        first[0]))
                .inFile(source.file())
                .expected("the places around the field that was driven"
                        + source.format().order())
                .hint("give the keep-out file of this field, or "
                        + source.format().placedWrongly());
    }
}
