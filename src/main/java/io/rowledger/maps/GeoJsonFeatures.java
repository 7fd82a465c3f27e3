package io.rowledger.maps;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The features of a GeoJSON file (RFC 7946). Reads the file token by token, so that every complaint carries its line and
 * column. A bare geometry counts as one feature without properties.
 */
public final class GeoJsonFeatures {
    /** RFC 7946: a closed ring has four positions or more. */
    private static final int MIN_OF_RING = 4;
    /** RFC 7946: a line has two positions or more. */
    private static final int MIN_OF_LINE = 2;
    /** Nested deeper than this is no GeoJSON: a MultiPolygon has four levels. */
    private static final int DEEPEST = 4;
    /** Collections nested deeper than this are nobody's map. */
    private static final int DEEPEST_COLLECTION = 50;

    /** What the JSON library tells programmers about its switches. */
    private static final Pattern FOR_PROGRAMMERS = Pattern.compile(": enable `[^`]*` to allow");

    private final String file;
    private final MapUse use;
    private final JsonParser json;
    private final List<MapFeature> features = new ArrayList<>();

    private GeoJsonFeatures(String file, MapUse use, JsonParser json) {
        this.file = file;
        this.use = use;
        this.json = json;
    }

    /**
     * All features of the file, in its order.
     *
     * @param use what the file is for
     * @throws UnusableInputException where the file can't be read, is no GeoJSON or has positions that can't be
     */
    public static MapFeatures read(Path file, MapUse use) {
        try (InputStream in = Files.newInputStream(file)) {
            return read(file.toString(), in, use);
        } catch (IOException e) {
            String what = use.file().endsWith(" file") ? use.file() : use.file() + " file";
            throw UnusableInputException.found("a " + what + " that can't be read (" + e.getMessage() + ")")
                    .inFile(file.toString())
                    .expected("a GeoJSON file")
                    .hint("check the path and that the file may be read");
        }
    }

    /** All features of a stream that is called {@code file} in messages. */
    static MapFeatures read(String file, InputStream in, MapUse use) throws IOException {
        try (JsonParser json = JsonFactory.builder().build().createParser(in)) {
            GeoJsonFeatures reader = new GeoJsonFeatures(file, use, json);
            reader.document();
            return new MapFeatures(file, MapFormat.GEOJSON, reader.features, List.of());
        } catch (JsonProcessingException e) {
            throw notJson(file, use, e);
        }
    }

    private String again() {
        return "export the " + use.file() + " again as GeoJSON";
    }

    private static UnusableInputException notJson(String file, MapUse use, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        UnusableInputException out = UnusableInputException.found("text that is no JSON ("
                        + FOR_PROGRAMMERS.matcher(e.getOriginalMessage()).replaceFirst("") + ")")
                .inFile(file)
                .expected("GeoJSON as in RFC 7946, in UTF-8")
                .hint("export the " + use.file() + " again as GeoJSON");
        return at == null ? out : out.atLine(at.getLineNr()).atColumn(Integer.toString(at.getColumnNr()));
    }

    private void document() throws IOException {
        JsonToken first = json.nextToken();
        if (first == null) {
            throw UnusableInputException.found("an empty file")
                    .inFile(file)
                    .expected("GeoJSON with " + use.holds())
                    .hint(again());
        }
        if (first != JsonToken.START_OBJECT) {
            throw at("JSON that is no object")
                    .expected("a GeoJSON object")
                    .hint("export the " + use.file() + " as GeoJSON");
        }
        Found found = object(0);
        if (json.nextToken() != null) {
            throw at("more text after the GeoJSON object")
                    .expected("one GeoJSON object")
                    .hint("keep one object in the file");
        }
        add(found);
    }

    /** What came of an object: a geometry or feature, not yet among the features. */
    private static final class Found {
        final int line;
        String type = "";
        final List<String> types = new ArrayList<>();
        final List<MapShape> shapes = new ArrayList<>();
        final List<MapProperty> properties = new ArrayList<>();
        boolean hasFeatures;

        Found(int line) {
            this.line = line;
        }

        void take(Found geometry) {
            shapes.addAll(geometry.shapes);
            geometry.types.stream().filter(t -> !types.contains(t)).forEach(types::add);
        }
    }

    /** A collection's features are there already. */
    private void add(Found found) {
        if (found.hasFeatures) {
            return;
        }
        features.add(new MapFeature(features.size() + 1, found.line, found.types, found.shapes, found.properties));
    }

    /** A geometry, feature or collection; its members come in any order. */
    private Found object(int depth) throws IOException {
        if (depth > DEEPEST_COLLECTION) {
            throw at("collections within collections, more than " + DEEPEST_COLLECTION + " deep")
                    .expected("GeoJSON as in RFC 7946")
                    .hint(again());
        }
        Found found = new Found(json.currentTokenLocation().getLineNr());
        Levels coordinates = null;
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String key = json.currentName();
            JsonToken value = json.nextToken();
            switch (key) {
                case "type" -> {
                    found.type = value == JsonToken.VALUE_STRING ? json.getText() : "";
                    json.skipChildren();
                }
                case "coordinates" -> {
                    coordinates = value == JsonToken.START_ARRAY ? levels(1) : null;
                    json.skipChildren();
                }
                case "geometry" -> {
                    if (value == JsonToken.START_OBJECT) {
                        found.take(object(depth + 1));
                    } else {
                        json.skipChildren();
                    }
                }
                case "features" -> {
                    found.hasFeatures = true;
                    objects(value, depth, this::add);
                }
                case "geometries" -> objects(value, depth, found::take);
                case "properties" -> properties(value, found);
                default -> json.skipChildren();
            }
        }
        shapes(found, coordinates);
        return found;
    }

    private void objects(JsonToken value, int depth, Consumer<Found> taker) throws IOException {
        if (value != JsonToken.START_ARRAY) {
            throw at("a list that is none").expected("an array").hint(again());
        }
        while (json.nextToken() != JsonToken.END_ARRAY) {
            if (json.currentToken() == JsonToken.START_OBJECT) {
                taker.accept(object(depth + 1));
            } else {
                throw at("a feature that is no object")
                        .expected("a GeoJSON object")
                        .hint(again());
            }
        }
    }

    private void properties(JsonToken value, Found found) throws IOException {
        if (value != JsonToken.START_OBJECT) {
            json.skipChildren();
            return;
        }
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String key = json.currentName();
            JsonToken token = json.nextToken();
            int line = json.currentTokenLocation().getLineNr();
            if (token == JsonToken.VALUE_NULL || token.isStructStart()) {
                json.skipChildren();
            } else {
                double number = token.isNumeric() ? json.getDoubleValue() : Double.NaN;
                found.properties.add(new MapProperty(key, json.getText(), number, line));
            }
        }
    }

    private void shapes(Found found, @Nullable Levels coordinates) {
        String type = found.type;
        int depth = depth(type);
        if (depth < 0) {
            boolean wrapper = type.equals("Feature") || type.endsWith("Collection");
            if (!wrapper && !type.isEmpty()) {
                found.types.add(type);
            }
            return;
        }
        if (coordinates == null) {
            String list = type.endsWith("Polygon") ? "an array of rings" : "an array of positions";
            throw at("a " + type + " without coordinates").expected(list).hint(again());
        }
        found.types.add(type);
        boolean several = type.startsWith("Multi");
        for (Levels one : several ? coordinates.inside : List.of(coordinates)) {
            switch (depth) {
                case 0 -> {
                    if (several || one.count > 0 || !one.inside.isEmpty()) {
                        found.shapes.add(new MapShape(MapShape.Kind.POINT, List.of(position(one))));
                    }
                }
                case 1 -> {
                    if (!one.inside.isEmpty()) {
                        found.shapes.add(new MapShape(MapShape.Kind.LINE, List.of(line(one))));
                    }
                }
                default -> {
                    if (!one.inside.isEmpty()) {
                        found.shapes.add(new MapShape(
                                MapShape.Kind.POLYGON,
                                one.inside.stream().map(this::ring).toList()));
                    }
                }
            }
        }
    }

    /** Lists around a position in one shape of this type, −1 for no geometry. */
    private static int depth(String type) {
        return switch (type) {
            case "Point", "MultiPoint" -> 0;
            case "LineString", "MultiLineString" -> 1;
            case "Polygon", "MultiPolygon" -> 2;
            default -> -1;
        };
    }

    private double[] positions(Levels list) {
        double[] out = new double[2 * list.inside.size()];
        for (int i = 0; i < list.inside.size(); i++) {
            System.arraycopy(position(list.inside.get(i)), 0, out, 2 * i, 2);
        }
        return out;
    }

    private double[] line(Levels list) {
        double[] out = positions(list);
        if (out.length < 2 * MIN_OF_LINE) {
            throw at("a line of " + out.length / 2 + " position", list)
                    .expected("two or more")
                    .hint("draw the line with two places or more, or make it a point");
        }
        return out;
    }

    private double[] ring(Levels ring) {
        double[] out = positions(ring);
        int n = out.length / 2;
        if (n < MIN_OF_RING) {
            throw at("a ring of " + n + " positions", ring)
                    .expected("four or more, the last equal to the first")
                    .hint("draw the outline with three corners or more and close it");
        }
        if (out[0] != out[2 * n - 2] || out[1] != out[2 * n - 1]) {
            throw at("a ring that does not end where it begins", ring)
                    .expected("a last position equal to the first (RFC 7946, section 3.1.6)")
                    .hint("add the first position once more at the ring's end");
        }
        return out;
    }

    private double[] position(Levels position) {
        if (!position.inside.isEmpty() || position.count < 2) {
            throw at("a position without two numbers", position)
                    .expected("[longitude, latitude]")
                    .hint(again());
        }
        double lon = position.first;
        double lat = position.second;
        if (!(Math.abs(lon) <= 180) || !(Math.abs(lat) <= 90)) {
            boolean swapped = Math.abs(lon) <= 90 && Math.abs(lat) <= 180;
            throw at("longitude " + lon + ", latitude " + lat, position)
                    .expected("[longitude, latitude] in degrees, within 180 and 90")
                    .hint(
                            swapped
                                    ? "the two look swapped: put longitude first"
                                    : "export the " + use.file() + " in degrees on WGS 84, not in meters or feet");
        }
        return new double[] {lon, lat};
    }

    /** An array of arrays of numbers, with the place it began at. */
    private static final class Levels {
        final int line;
        final int column;
        int count;
        double first;
        double second;
        List<Levels> inside = List.of();

        Levels(JsonLocation at) {
            this.line = at.getLineNr();
            this.column = at.getColumnNr();
        }

        void add(Levels below) {
            if (inside.isEmpty()) {
                inside = new ArrayList<>();
            }
            inside.add(below);
        }

        void add(double number) {
            if (count == 0) {
                first = number;
            } else if (count == 1) {
                second = number;
            }
            count++;
        }
    }

    private Levels levels(int depth) throws IOException {
        Levels out = new Levels(json.currentTokenLocation());
        while (json.nextToken() != JsonToken.END_ARRAY) {
            JsonToken token = json.currentToken();
            if (token == JsonToken.START_ARRAY && depth < DEEPEST) {
                out.add(levels(depth + 1));
            } else if (token != null && token.isNumeric()) {
                out.add(json.getDoubleValue());
            } else {
                throw at("something that is no number among the coordinates")
                        .expected("arrays of numbers")
                        .hint(again());
            }
        }
        return out;
    }

    private UnusableInputException at(String found) {
        JsonLocation at = json.currentTokenLocation();
        return UnusableInputException.found(found)
                .inFile(file)
                .atLine(at.getLineNr())
                .atColumn(Integer.toString(at.getColumnNr()));
    }

    private UnusableInputException at(String found, Levels where) {
        return UnusableInputException.found(found)
                .inFile(file)
                .atLine(where.line)
                .atColumn(Integer.toString(where.column));
    }
}
