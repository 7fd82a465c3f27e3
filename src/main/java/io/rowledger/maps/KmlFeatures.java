package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The placemarks of a KML file (OGC 12-007): longitude, latitude and an altitude that is not used, degrees on WGS 84. Name
 * and extended data become properties. Nothing is fetched: links, document types and entities of one's own are refused or
 * passed over.
 */
final class KmlFeatures {
    /** JDKs differ in how deep they read; what counts is bounded here, and the rest is passed over without recursion. */
    private static final String ANY_DEPTH = "http://www.oracle.com/xml/jaxp/properties/maxElementDepth";

    /** Geometries nested deeper than this are nobody's map. */
    private static final int DEEPEST = 50;

    private static final Set<String> NUMBERS = Set.of("int", "uint", "short", "ushort", "float", "double");

    private final String file;
    private final MapUse use;
    private final RingReader places;
    private final XMLStreamReader xml;
    private final List<MapFeature> features = new ArrayList<>();
    /** Names of fields that a schema says are numbers. */
    private final Set<String> numbers = new HashSet<>();

    private KmlFeatures(String file, MapUse use, XMLStreamReader xml) {
        this.file = file;
        this.use = use;
        this.places = new RingReader(file, use, MapFormat.KML);
        this.xml = xml;
    }

    static MapFeatures read(Path file, MapUse use) {
        try (InputStream in = Files.newInputStream(file)) {
            return read(file.toString(), in, use);
        } catch (IOException e) {
            throw MapSize.unreadable(file.toString(), e);
        }
    }

    static MapFeatures read(String file, InputStream in, MapUse use) throws IOException {
        // The JDK's own parser by name: another one on the class path might have other defaults.
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        factory.setProperty(ANY_DEPTH, "0");
        Reader characters = XmlCharacters.of(
                file, in, "UTF-8, as KML (OGC 12-007) has it", "export the " + use.file() + " again as KML");
        try {
            KmlFeatures reader = new KmlFeatures(file, use, factory.createXMLStreamReader(characters));
            reader.document();
            return new MapFeatures(file, MapFormat.KML, reader.features, List.of());
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNumber());
            throw UnusableInputException.found("text that is no well-formed XML")
                    .inFile(file)
                    .atLine(line)
                    .expected("KML (OGC 12-007)")
                    .hint("export the " + use.file() + " again as KML");
        }
    }

    private void document() throws XMLStreamException {
        boolean root = true;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.DTD) {
                throw at("a document type").expected("KML, which has none").hint("take the line <!DOCTYPE ...> out");
            }
            if (event != XMLStreamConstants.START_ELEMENT) {
                continue;
            }
            String name = xml.getLocalName();
            if (root && !Set.of("kml", "Document", "Folder", "Placemark").contains(name)) {
                throw at("XML that begins with <" + name + ">")
                        .expected("KML (OGC 12-007), which begins with <kml>")
                        .hint("export the " + use.file() + " as KML, GeoJSON, a shapefile or a GeoPackage");
            }
            root = false;
            if (name.equals("SimpleField") && NUMBERS.contains(attribute("type"))) {
                numbers.add(attribute("name"));
            } else if (name.equals("Placemark")) {
                placemark();
            }
        }
    }

    private String attribute(String name) {
        String value = xml.getAttributeValue(null, name);
        return value == null ? "" : value;
    }

    private int line() {
        return Math.max(0, xml.getLocation().getLineNumber());
    }

    /** What one placemark says. */
    private static final class Found {
        final List<String> types = new ArrayList<>();
        final List<MapShape> shapes = new ArrayList<>();
        final List<MapProperty> properties = new ArrayList<>();

        void type(String type) {
            if (!types.contains(type)) {
                types.add(type);
            }
        }
    }

    private void placemark() throws XMLStreamException {
        Found found = new Found();
        int line = line();
        while (next()) {
            switch (xml.getLocalName()) {
                case "name" -> property(found, "name");
                case "ExtendedData" -> extendedData(found);
                default -> geometry(found, 0);
            }
        }
        features.add(new MapFeature(features.size() + 1, line, found.types, found.shapes, found.properties));
    }

    /** Moves to the next child of the open element; false at its end. */
    private boolean next() throws XMLStreamException {
        while (true) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                return true;
            }
            if (event == XMLStreamConstants.END_ELEMENT) {
                return false;
            }
        }
    }

    /** The text of the open element, its children left out; ends at its end. */
    private String text() throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        while (true) {
            int event = xml.next();
            if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                text.append(xml.getText());
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                skip();
            } else if (event == XMLStreamConstants.ENTITY_REFERENCE) {
                throw at("an entity of its own, &" + xml.getLocalName() + ";")
                        .expected("plain text")
                        .hint("write the text itself");
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                return text.toString();
            }
        }
    }

    private void skip() throws XMLStreamException {
        for (int depth = 1; depth > 0; ) {
            int event = xml.next();
            depth += event == XMLStreamConstants.START_ELEMENT ? 1 : event == XMLStreamConstants.END_ELEMENT ? -1 : 0;
        }
    }

    private void property(Found found, String name) throws XMLStreamException {
        int line = line();
        String text = text().strip();
        if (!text.isEmpty()) {
            double number = numbers.contains(name) ? Numbers.of(text) : Double.NaN;
            found.properties.add(new MapProperty(name, text, number, line));
        }
    }

    private void extendedData(Found found) throws XMLStreamException {
        while (next()) {
            switch (xml.getLocalName()) {
                case "Data" -> {
                    String name = attribute("name");
                    while (next()) {
                        if (xml.getLocalName().equals("value")) {
                            property(found, name);
                        } else {
                            skip();
                        }
                    }
                }
                case "SchemaData" -> {
                    while (next()) {
                        if (xml.getLocalName().equals("SimpleData")) {
                            property(found, attribute("name"));
                        } else {
                            skip();
                        }
                    }
                }
                default -> skip();
            }
        }
    }

    private void geometry(Found found, int depth) throws XMLStreamException {
        String type = xml.getLocalName();
        if (depth > DEEPEST) {
            throw at("geometries within geometries, more than " + DEEPEST + " deep")
                    .expected("KML (OGC 12-007)")
                    .hint("export the " + use.file() + " again as KML");
        }
        switch (type) {
            case "MultiGeometry" -> {
                while (next()) {
                    geometry(found, depth + 1);
                }
            }
            case "Polygon" -> {
                found.type(type);
                polygon(found);
            }
            case "Point", "LineString", "LinearRing" -> {
                found.type(type);
                int line = line();
                double[] lonLat = coordinates();
                if (lonLat.length == 0) {
                    throw at("a " + type + " without coordinates")
                            .expected("longitude,latitude")
                            .hint("export the " + use.file() + " again as KML");
                }
                found.shapes.add(
                        type.equals("Point")
                                ? new MapShape(MapShape.Kind.POINT, List.of(point(lonLat, line)))
                                : new MapShape(MapShape.Kind.LINE, List.of(places.line(lonLat, number(), line))));
            }
            case "Model", "Track", "MultiTrack" -> {
                found.type(type);
                skip();
            }
            default -> skip();
        }
    }

    private int number() {
        return features.size() + 1;
    }

    private double[] point(double[] lonLat, int line) {
        return places.checked(lonLat.length > 2 ? Arrays.copyOf(lonLat, 2) : lonLat, number(), line);
    }

    private void polygon(Found found) throws XMLStreamException {
        List<double[]> outer = new ArrayList<>();
        List<double[]> holes = new ArrayList<>();
        while (next()) {
            List<double[]> rings = xml.getLocalName().equals("outerBoundaryIs")
                    ? outer
                    : xml.getLocalName().equals("innerBoundaryIs") ? holes : null;
            if (rings == null) {
                skip();
                continue;
            }
            while (next()) {
                if (xml.getLocalName().equals("LinearRing")) {
                    int line = line();
                    rings.add(places.ring(coordinates(), number(), line));
                } else {
                    skip();
                }
            }
        }
        if (outer.size() != 1) {
            throw at("a polygon with " + outer.size() + " outlines")
                    .expected("one outerBoundaryIs in each Polygon")
                    .hint("export the " + use.file() + " again as KML");
        }
        outer.addAll(holes);
        found.shapes.add(new MapShape(MapShape.Kind.POLYGON, outer));
    }

    /** The positions of the open element; ends at its end. */
    private double[] coordinates() throws XMLStreamException {
        double[] out = new double[0];
        while (next()) {
            if (xml.getLocalName().equals("coordinates")) {
                out = positions(text());
            } else {
                skip();
            }
        }
        return out;
    }

    private double[] positions(String text) {
        String plain = text.strip();
        if (plain.isEmpty()) {
            return new double[0];
        }
        String[] tuples = plain.split("\\s+", -1);
        double[] out = new double[2 * tuples.length];
        for (int i = 0; i < tuples.length; i++) {
            String[] parts = tuples[i].split(",", -1);
            double lon = parts.length < 2 ? Double.NaN : Numbers.of(parts[0]);
            double lat = parts.length < 2 ? Double.NaN : Numbers.of(parts[1]);
            if (Double.isNaN(lon) || Double.isNaN(lat)) {
                throw at("\"" + tuples[i].substring(0, Math.min(40, tuples[i].length())) + "\" among the coordinates")
                        .expected("longitude,latitude or longitude,latitude,altitude without blanks between")
                        .hint("export the " + use.file() + " again as KML");
            }
            out[2 * i] = lon;
            out[2 * i + 1] = lat;
        }
        return out;
    }

    private UnusableInputException at(String found) {
        return UnusableInputException.found(found).inFile(file).atLine(line());
    }
}
