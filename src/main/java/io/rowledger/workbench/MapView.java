package io.rowledger.workbench;

import io.rowledger.batch.FieldFiles;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogSurvey;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import io.rowledger.units.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/** The screen of the maps: boundary, prescription and places to keep away from under the passes. */
final class MapView {
    /** Values of an attribute that are shown. */
    private static final int MAX_VALUES = 5;
    /** Shapes that are drawn of a map. */
    private static final int MAX_SHAPES = 2000;
    /** Corners of a boundary that is drawn around the passes lie at least so far from a straight line, m. */
    private static final double TOLERANCE_M = 1.5;
    /** Passes nearer together than twice this belong to one field, m. */
    private static final double BRIDGED_M = 25;

    private final FieldStore store;
    private final Surveys surveys;

    MapView(FieldStore store, Surveys surveys) {
        this.store = store;
        this.surveys = surveys;
    }

    /**
     * The maps of a field on the plane of its logs.
     *
     * @param paths of the logs: east and north, m, one pair after the other
     * @param originDeg latitude and longitude of the plane's origin; empty without a log
     * @param boundary or null
     * @param prescription or null
     * @param keepOut or null
     * @param chosen the block {@code prescription:} of the rig file
     */
    record Maps(
            List<List<Double>> paths,
            List<Double> originDeg,
            @Nullable MapFile boundary,
            @Nullable MapFile prescription,
            @Nullable MapFile keepOut,
            Map<String, Object> chosen) {}

    /**
     * A map file.
     *
     * @param file its name
     * @param own true if it lies beside the logs
     * @param shapes outlines and lines: east and north, m
     * @param attributes names to first values
     * @param withoutSetback number of features without a setback of their own
     * @param problem why it can't be read, or empty
     */
    record MapFile(
            String file,
            boolean own,
            List<List<Double>> shapes,
            Map<String, List<String>> attributes,
            int withoutSetback,
            ProblemText problem) {}

    /** A ring drawn on the page: east and north, m. */
    record Ring(List<Double> ring) {}

    /** A distance as typed. */
    record Distance(String setback) {}

    Maps maps(String name) throws IOException {
        FieldFiles field = store.field(name);
        List<LogSurvey> logs = surveys(field);
        LocalPlane plane = plane(logs);
        List<List<Double>> paths = new ArrayList<>();
        List<Double> originDeg = new ArrayList<>();
        if (plane != null) {
            originDeg.add(logs.get(0).latDeg()[0]);
            originDeg.add(logs.get(0).lonDeg()[0]);
            for (LogSurvey log : logs) {
                paths.add(path(plane, log.latDeg(), log.lonDeg()));
            }
        }
        return new Maps(
                paths,
                originDeg,
                map(field, field.boundary(), MapUse.BOUNDARY, plane),
                map(field, field.prescription(), MapUse.PRESCRIPTION, plane),
                map(field, field.keepOut(), MapUse.KEEP_OUT, plane),
                store.rig(field).block("prescription"));
    }

    private List<LogSurvey> surveys(FieldFiles field) throws IOException {
        List<LogSurvey> logs = new ArrayList<>();
        for (Path log : field.logs()) {
            try {
                LogSurvey survey = surveys.of(log, FieldStore.logOptions(field), Surveys.spacingM(store.rig(field)));
                if (survey.latDeg().length > 0) {
                    logs.add(survey);
                }
            } catch (UnusableInputException e) {
                // Left off the map; the screen of the logs says why.
            }
        }
        return logs;
    }

    private static @Nullable LocalPlane plane(List<LogSurvey> logs) {
        return logs.isEmpty()
                ? null
                : new LocalPlane(logs.get(0).latDeg()[0], logs.get(0).lonDeg()[0]);
    }

    private static List<Double> path(LocalPlane plane, double[] latDeg, double[] lonDeg) {
        List<Double> path = new ArrayList<>();
        double[] at = new double[2];
        for (int i = 0; i < latDeg.length; i++) {
            plane.forward(latDeg[i], lonDeg[i], at);
            path.add(Math.round(at[0] * 10) / 10.0);
            path.add(Math.round(at[1] * 10) / 10.0);
        }
        return path;
    }

    private static @Nullable MapFile map(
            FieldFiles field, @Nullable Path file, MapUse use, @Nullable LocalPlane plane) {
        if (file == null) {
            return null;
        }
        String name = String.valueOf(file.getFileName());
        boolean own = field.folder().equals(file.getParent());
        try {
            MapFeatures features = MapReader.read(file, use);
            List<List<Double>> shapes = new ArrayList<>();
            Map<String, List<String>> attributes = new LinkedHashMap<>();
            int without = 0;
            for (MapFeature feature : features.features()) {
                boolean setback = false;
                for (MapProperty property : feature.properties()) {
                    List<String> values = attributes.computeIfAbsent(property.name(), key -> new ArrayList<>());
                    if (values.size() < MAX_VALUES && !values.contains(property.text())) {
                        values.add(property.text());
                    }
                    setback |= property.plainName().strip().regionMatches(true, 0, "setback", 0, 7);
                }
                without += setback ? 0 : 1;
                for (MapShape shape : feature.shapes()) {
                    for (double[] part : shape.parts()) {
                        if (plane != null && shapes.size() < MAX_SHAPES) {
                            shapes.add(projected(plane, part));
                        }
                    }
                }
            }
            return new MapFile(name, own, shapes, attributes, without, ProblemText.NONE);
        } catch (UnusableInputException e) {
            return new MapFile(name, own, List.of(), Map.of(), 0, ProblemText.of(e));
        }
    }

    /** Points of a map are longitude and latitude, one pair after the other. */
    private static List<Double> projected(LocalPlane plane, double[] lonLatDeg) {
        double[] latDeg = new double[lonLatDeg.length / 2];
        double[] lonDeg = new double[lonLatDeg.length / 2];
        for (int i = 0; i < latDeg.length; i++) {
            lonDeg[i] = lonLatDeg[2 * i];
            latDeg[i] = lonLatDeg[2 * i + 1];
        }
        return path(plane, latDeg, lonDeg);
    }

    /** A boundary drawn around the passes of the logs, half a bar outside of them. */
    Ring around(String name) throws IOException {
        FieldFiles field = store.field(name);
        RigTree rig = store.rig(field);
        List<LogSurvey> logs = surveys(field);
        LocalPlane plane = plane(logs);
        if (plane == null) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.noPositions");
        }
        double rows = Math.max(1, logs.get(0).rows());
        double halfM = rows * Surveys.spacingM(rig) / 2;
        List<Geometry> driven = new ArrayList<>();
        for (LogSurvey log : logs) {
            List<Double> path = path(plane, log.latDeg(), log.lonDeg());
            Coordinate[] line = new Coordinate[path.size() / 2];
            for (int i = 0; i < line.length; i++) {
                line[i] = new Coordinate(path.get(2 * i), path.get(2 * i + 1));
            }
            if (line.length > 1) {
                driven.add(Jts.FACTORY.createLineString(line).buffer(BRIDGED_M));
            }
        }
        Geometry all = Jts.FACTORY
                .createGeometryCollection(driven.toArray(new Geometry[0]))
                .union();
        Polygon largest = largest(all.buffer(halfM - BRIDGED_M));
        Geometry simple = TopologyPreservingSimplifier.simplify(
                Jts.FACTORY.createPolygon(largest.getExteriorRing().getCoordinates()), TOLERANCE_M);
        List<Double> ring = new ArrayList<>();
        for (Coordinate at : simple.getCoordinates()) {
            ring.add(Math.round(at.x * 10) / 10.0);
            ring.add(Math.round(at.y * 10) / 10.0);
        }
        return new Ring(ring);
    }

    private static Polygon largest(Geometry geometry) {
        Polygon largest = Jts.FACTORY.createPolygon();
        for (Polygon polygon : Jts.polygons(geometry)) {
            largest = polygon.getArea() > largest.getArea() ? polygon : largest;
        }
        if (largest.isEmpty()) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.noGround");
        }
        return largest;
    }

    /** Saves a ring as the field's boundary. */
    Maps saveBoundary(String name, Ring ring) throws IOException {
        FieldFiles field = store.field(name);
        LocalPlane plane = plane(surveys(field));
        if (plane == null || ring.ring().size() < 8 || ring.ring().size() % 2 != 0) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.corners");
        }
        List<List<Double>> corners = new ArrayList<>();
        double[] at = new double[2];
        for (int i = 0; i < ring.ring().size(); i += 2) {
            plane.inverse(ring.ring().get(i), ring.ring().get(i + 1), at);
            corners.add(List.of(Math.round(at[1] * 1e8) / 1e8, Math.round(at[0] * 1e8) / 1e8));
        }
        if (!corners.get(0).equals(corners.get(corners.size() - 1))) {
            corners.add(corners.get(0));
        }
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("name", field.name());
        write(field, field.boundary(), "boundary.geojson", List.of(feature("Polygon", List.of(corners), properties)));
        return maps(name);
    }

    /** Gives the distance to every place of the field's map that has none of its own. */
    Maps setback(String name, Distance distance) throws IOException {
        FieldFiles field = store.field(name);
        Path file = field.keepOut();
        if (file == null) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.noKeepOut");
        }
        Reading reading = Quantity.read(distance.setback(), Dimension.LENGTH);
        if (reading instanceof Refusal) {
            throw new HttpRefusal(HttpRefusal.UNUSABLE, "refusals.figure.LENGTH", distance.setback());
        }
        List<Map<String, Object>> features = new ArrayList<>();
        for (MapFeature feature : MapReader.read(file, MapUse.KEEP_OUT).features()) {
            Map<String, Object> properties = new LinkedHashMap<>();
            for (MapProperty property : feature.properties()) {
                properties.put(property.name(), property.isNumber() ? property.number() : property.text());
            }
            if (properties.keySet().stream().noneMatch(key -> key.strip().regionMatches(true, 0, "setback", 0, 7))) {
                properties.put("setback", distance.setback().strip());
            }
            for (MapShape shape : feature.shapes()) {
                features.add(feature(shape, properties));
            }
        }
        write(field, file, "keep-out.geojson", features);
        return maps(name);
    }

    private static Map<String, Object> feature(MapShape shape, Map<String, Object> properties) {
        List<List<List<Double>>> parts = new ArrayList<>();
        for (double[] part : shape.parts()) {
            List<List<Double>> corners = new ArrayList<>();
            for (int i = 0; i < part.length; i += 2) {
                corners.add(List.of(part[i], part[i + 1]));
            }
            parts.add(corners);
        }
        return switch (shape.kind()) {
            case POINT -> feature("Point", parts.get(0).get(0), properties);
            case LINE -> feature("LineString", parts.get(0), properties);
            case POLYGON -> feature("Polygon", parts, properties);
        };
    }

    private static Map<String, Object> feature(String type, Object coordinates, Map<String, Object> properties) {
        Map<String, Object> geometry = new LinkedHashMap<>();
        geometry.put("type", type);
        geometry.put("coordinates", coordinates);
        Map<String, Object> feature = new LinkedHashMap<>();
        feature.put("type", "Feature");
        feature.put("properties", properties);
        feature.put("geometry", geometry);
        return feature;
    }

    /** Writes a map of RFC 7946 beside the logs; the field's own map of that use goes to the dated folder. */
    private void write(FieldFiles field, @Nullable Path before, String file, List<Map<String, Object>> features)
            throws IOException {
        Map<String, Object> collection = new LinkedHashMap<>();
        collection.put("type", "FeatureCollection");
        collection.put("features", features);
        List<String> place = new ArrayList<>(FieldNames.parts(field.name()));
        place.add(file);
        if (before != null
                && field.folder().equals(before.getParent())
                && !String.valueOf(before.getFileName()).equals(file)) {
            for (Path part : MapReader.files(before)) {
                store.folder().putAway(part);
            }
        }
        store.folder().write(place, out -> out.write(Json.bytes(collection)));
    }
}
