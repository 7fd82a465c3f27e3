package io.rowledger.coverage;

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
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The polygons of a GeoJSON file as rings of (longitude, latitude), and the first feature's name. Reads the file token
 * by token, so that every complaint carries its line and column.
 */
final class GeoJsonPolygons {
    /** RFC 7946: a closed ring has four positions or more. */
    private static final int LEAST_POSITIONS = 4;
    /** Nested deeper than this is no GeoJSON: a MultiPolygon has four levels. */
    private static final int DEEPEST = 4;

    /** What the JSON library tells programmers about its switches. */
    private static final Pattern FOR_PROGRAMMERS = Pattern.compile(": enable `[^`]*` to allow");

    private final Path file;
    private final JsonParser json;
    private final List<List<List<double[]>>> polygons = new ArrayList<>();
    private final List<String> otherTypes = new ArrayList<>();
    private String name = "";

    private GeoJsonPolygons(Path file, JsonParser json) {
        this.file = file;
        this.json = json;
    }

    List<List<List<double[]>>> polygons() {
        return polygons;
    }

    String name() {
        return name;
    }

    static GeoJsonPolygons read(Path file) {
        try (InputStream in = Files.newInputStream(file);
                JsonParser json = JsonFactory.builder().build().createParser(in)) {
            GeoJsonPolygons reader = new GeoJsonPolygons(file, json);
            reader.document();
            return reader;
        } catch (JsonProcessingException e) {
            throw notJson(file, e);
        } catch (IOException e) {
            throw UnusableInputException.found("a boundary file that can't be read (" + e.getMessage() + ")")
                    .inFile(file.toString())
                    .expected("a GeoJSON file")
                    .mend("check the path and that the file may be read");
        }
    }

    private static UnusableInputException notJson(Path file, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        UnusableInputException out = UnusableInputException.found("text that is no JSON ("
                        + FOR_PROGRAMMERS.matcher(e.getOriginalMessage()).replaceFirst("") + ")")
                .inFile(file.toString())
                .expected("GeoJSON as in RFC 7946, in UTF-8")
                .mend("export the boundary again as GeoJSON");
        return at == null ? out : out.atLine(at.getLineNr()).atColumn(Integer.toString(at.getColumnNr()));
    }

    private void document() throws IOException {
        JsonToken first = json.nextToken();
        if (first == null) {
            throw UnusableInputException.found("an empty file")
                    .inFile(file.toString())
                    .expected("GeoJSON with the field's outline")
                    .mend("export the boundary again as GeoJSON");
        }
        if (first != JsonToken.START_OBJECT) {
            throw at("JSON that is no object").expected("a GeoJSON object").mend("export the boundary as GeoJSON");
        }
        object();
        if (json.nextToken() != null) {
            throw at("more text after the GeoJSON object")
                    .expected("one GeoJSON object")
                    .mend("keep one object in the file");
        }
        if (polygons.isEmpty()) {
            String found = otherTypes.isEmpty() ? "no geometry" : "no polygon, only " + String.join(", ", otherTypes);
            throw UnusableInputException.found(found)
                    .inFile(file.toString())
                    .expected("a Polygon or MultiPolygon, bare or in a Feature or FeatureCollection")
                    .mend("export the field's outline as a polygon");
        }
    }

    /** A geometry, feature or collection; its members come in any order. */
    private void object() throws IOException {
        String type = "";
        Levels coordinates = null;
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String key = json.currentName();
            JsonToken value = json.nextToken();
            switch (key) {
                case "type" -> type = value == JsonToken.VALUE_STRING ? json.getText() : "";
                case "coordinates" -> coordinates = value == JsonToken.START_ARRAY ? levels(1) : null;
                case "geometry" -> {
                    if (value == JsonToken.START_OBJECT) {
                        object();
                    } else {
                        json.skipChildren();
                    }
                }
                case "features", "geometries" -> objects(value);
                case "properties" -> properties(value);
                default -> json.skipChildren();
            }
        }
        take(type, coordinates);
    }

    private void objects(JsonToken value) throws IOException {
        if (value != JsonToken.START_ARRAY) {
            throw at("a list that is none").expected("an array").mend("export the boundary again as GeoJSON");
        }
        while (json.nextToken() != JsonToken.END_ARRAY) {
            if (json.currentToken() == JsonToken.START_OBJECT) {
                object();
            } else {
                throw at("a feature that is no object")
                        .expected("a GeoJSON object")
                        .mend("export the boundary again as GeoJSON");
            }
        }
    }

    private void properties(JsonToken value) throws IOException {
        if (value != JsonToken.START_OBJECT) {
            json.skipChildren();
            return;
        }
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String key = json.currentName();
            if (json.nextToken() == JsonToken.VALUE_STRING && key.equalsIgnoreCase("name") && name.isEmpty()) {
                name = json.getText();
            } else {
                json.skipChildren();
            }
        }
    }

    private void take(String type, @Nullable Levels coordinates) {
        boolean one = type.equals("Polygon");
        if (!one && !type.equals("MultiPolygon")) {
            boolean wrapper = type.equals("Feature") || type.endsWith("Collection");
            if (!wrapper && !type.isEmpty() && !otherTypes.contains(type)) {
                otherTypes.add(type);
            }
            return;
        }
        if (coordinates == null) {
            throw at("a " + type + " without coordinates")
                    .expected("an array of rings")
                    .mend("export the boundary again as GeoJSON");
        }
        for (Levels polygon : one ? List.of(coordinates) : coordinates.inside) {
            if (!polygon.inside.isEmpty()) {
                polygons.add(polygon.inside.stream().map(this::ring).toList());
            }
        }
    }

    private List<double[]> ring(Levels ring) {
        List<double[]> out = new ArrayList<>();
        for (Levels position : ring.inside) {
            if (!position.inside.isEmpty() || position.numbers.size() < 2) {
                throw at("a position without two numbers", position)
                        .expected("[longitude, latitude]")
                        .mend("export the boundary again as GeoJSON");
            }
            out.add(checked(position));
        }
        if (out.size() < LEAST_POSITIONS) {
            throw at("a ring of " + out.size() + " positions", ring)
                    .expected("four or more, the last equal to the first")
                    .mend("draw the outline with three corners or more and close it");
        }
        double[] first = out.get(0);
        double[] last = out.get(out.size() - 1);
        if (first[0] != last[0] || first[1] != last[1]) {
            throw at("a ring that does not end where it begins", ring)
                    .expected("a last position equal to the first (RFC 7946, section 3.1.6)")
                    .mend("add the first position once more at the ring's end");
        }
        return out;
    }

    private double[] checked(Levels position) {
        double lon = position.numbers.get(0);
        double lat = position.numbers.get(1);
        if (!(Math.abs(lon) <= 180) || !(Math.abs(lat) <= 90)) {
            boolean swapped = Math.abs(lon) <= 90 && Math.abs(lat) <= 180;
            throw at("longitude " + lon + ", latitude " + lat, position)
                    .expected("[longitude, latitude] in degrees, within 180 and 90")
                    .mend(
                            swapped
                                    ? "the two look swapped: put longitude first"
                                    : "export the boundary in degrees on WGS 84, not in meters or feet");
        }
        return new double[] {lon, lat};
    }

    /** An array of arrays of numbers, with the place it began at. */
    private static final class Levels {
        final int line;
        final int column;
        final List<Double> numbers = new ArrayList<>();
        final List<Levels> inside = new ArrayList<>();

        Levels(JsonLocation at) {
            this.line = at.getLineNr();
            this.column = at.getColumnNr();
        }
    }

    private Levels levels(int depth) throws IOException {
        Levels out = new Levels(json.currentTokenLocation());
        while (json.nextToken() != JsonToken.END_ARRAY) {
            JsonToken token = json.currentToken();
            if (token == JsonToken.START_ARRAY && depth < DEEPEST) {
                out.inside.add(levels(depth + 1));
            } else if (token != null && token.isNumeric()) {
                out.numbers.add(json.getDoubleValue());
            } else {
                throw at("something that is no number among the coordinates")
                        .expected("arrays of numbers")
                        .mend("export the boundary again as GeoJSON");
            }
        }
        return out;
    }

    private UnusableInputException at(String found) {
        JsonLocation at = json.currentTokenLocation();
        return UnusableInputException.found(found)
                .inFile(file.toString())
                .atLine(at.getLineNr())
                .atColumn(Integer.toString(at.getColumnNr()));
    }

    private UnusableInputException at(String found, Levels where) {
        return UnusableInputException.found(found)
                .inFile(file.toString())
                .atLine(where.line)
                .atColumn(Integer.toString(where.column));
    }
}
