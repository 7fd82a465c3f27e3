package io.rowledger.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.rowledger.analysis.Analysis;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.output.Outputs;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Waypoints, held to the order, names and ranges of the schema at topografix.com/GPX/1/1/gpx.xsd (GPX 1.1). */
class PlacesGpxTest {
    private static final String SPACE = "http://www.topografix.com/GPX/1/1";
    private static final List<String> METADATA = List.of("name", "desc", "author", "copyright", "link", "time");
    private static final List<String> WAYPOINT =
            List.of("ele", "time", "magvar", "geoidheight", "name", "cmt", "desc", "src", "link", "sym", "type");

    private static Document read(Analysis analysis, UnitSystem units) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PlacesGpx.write(FieldMap.of(analysis), new UnitFormat(units, ZoneOffset.UTC), out);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(out.toByteArray()));
        checkSchema(document.getDocumentElement());
        return document;
    }

    private static void checkSchema(Element gpx) {
        assertEquals("gpx", gpx.getLocalName());
        assertEquals("1.1", gpx.getAttribute("version"));
        assertTrue(!gpx.getAttribute("creator").isEmpty());
        List<Element> children = children(gpx);
        assertEquals("metadata", children.get(0).getLocalName());
        checkOrder(children.get(0), METADATA);
        List<Element> points = new ArrayList<>();
        boolean routes = false;
        for (Element child : children.subList(1, children.size())) {
            if (child.getLocalName().equals("rte")) {
                routes = true;
                checkOrder(child, List.of("name", "rtept"));
                points.addAll(children(child).stream()
                        .filter(each -> each.getLocalName().equals("rtept"))
                        .toList());
            } else {
                assertEquals("wpt", child.getLocalName());
                assertFalse(routes, "waypoints come before routes");
                points.add(child);
            }
        }
        for (Element wpt : points) {
            checkOrder(wpt, WAYPOINT);
            // xsd:decimal knows no exponent; latitudeType -90 to 90, longitudeType -180 to below 180.
            for (String name : List.of("lat", "lon")) {
                assertTrue(wpt.getAttribute(name).matches("-?\\d+(\\.\\d{1,8})?"), wpt.getAttribute(name));
            }
            assertTrue(Math.abs(Double.parseDouble(wpt.getAttribute("lat"))) <= 90);
            assertTrue(Math.abs(Double.parseDouble(wpt.getAttribute("lon"))) < 180);
        }
    }

    private static void checkOrder(Element parent, List<String> sequence) {
        int at = -1;
        for (Element child : children(parent)) {
            assertEquals(SPACE, child.getNamespaceURI());
            int here = sequence.indexOf(child.getLocalName());
            assertTrue(
                    here > at || (here == at && child.getLocalName().equals("rtept")),
                    child.getLocalName() + " in " + parent.getLocalName());
            at = here;
        }
    }

    private static List<Element> children(Element parent) {
        List<Element> all = new ArrayList<>();
        NodeList nodes = parent.getChildNodes();
        for (int i = 0; i < nodes.getLength(); i++) {
            if (nodes.item(i).getNodeType() == Node.ELEMENT_NODE) {
                all.add((Element) nodes.item(i));
            }
        }
        return all;
    }

    private static String text(Element parent, String name) {
        return parent.getElementsByTagNameNS(SPACE, name).item(0).getTextContent();
    }

    /** The waypoints but for the ends of long places. */
    private static List<Element> waypoints(Document document) {
        return children(document.getDocumentElement()).stream()
                .filter(each -> each.getLocalName().equals("wpt"))
                .filter(each -> !text(each, "name").matches("S\\d+ (start|end)"))
                .toList();
    }

    private static List<Element> routes(Document document) {
        return children(document.getDocumentElement()).stream()
                .filter(each -> each.getLocalName().equals("rte"))
                .toList();
    }

    /**
     * Five strips of 250 m, 8 m and more apart. Both ends of each lie within a twentieth of its length of the true ends, 125 m north and
     * south of 44° N: 0.001125° by 1,852 m a minute of latitude, good to 0.3 %.
     */
    @Test
    void long_skips_have_a_start_and_an_end_and_a_route_of_their_own() throws Exception {
        List<Element> routes = routes(read(new SyntheticJob().build(), UnitSystem.US));
        assertEquals(
                List.of(
                        "All stops, in the best order",
                        "S1, start to end",
                        "S2, start to end",
                        "S3, start to end",
                        "S4, start to end",
                        "S5, start to end"),
                routes.stream().map(route -> text(route, "name")).toList());
        List<Element> all = children(routes.get(0)).subList(1, 11);
        for (int i = 0; i < all.size(); i += 2) {
            double from = Double.parseDouble(all.get(i).getAttribute("lat"));
            double to = Double.parseDouble(all.get(i + 1).getAttribute("lat"));
            assertEquals(2 * 0.001125, Math.abs(from - to), 2 * 0.000115, "length of a strip");
            if (i > 0) {
                // Up one strip and down the next: never back along the field with nothing to do.
                double before = Double.parseDouble(all.get(i - 1).getAttribute("lat"));
                assertEquals(before, from, 0.0003, "from stop to stop");
            }
        }
        Element first = children(routes.get(1)).get(1);
        assertEquals("S1 start", text(first, "name"));
        // 250 m ÷ 0.3048 m.
        assertEquals("S1 begins here; follow it for 820 ft to its end.", text(first, "desc"));
    }

    @Test
    void skips_and_overlaps_are_the_places_of_the_layers_under_the_names_of_the_review() throws Exception {
        Analysis analysis = new SyntheticJob().build();
        List<Element> found = waypoints(read(analysis, UnitSystem.METRIC));
        assertEquals(
                List.of("S1", "S2", "S3", "S4", "S5", "O1"),
                found.stream().map(wpt -> text(wpt, "name")).toList());
        JsonNode skips = layer(out -> Layers.skips(FieldMap.of(analysis), out));
        for (int i = 0; i < skips.size(); i++) {
            JsonNode place = skips.get(i).get("properties");
            assertEquals(
                    place.get("lat").asDouble(), Double.parseDouble(found.get(i).getAttribute("lat")), 1e-8);
            assertEquals(
                    place.get("lon").asDouble(), Double.parseDouble(found.get(i).getAttribute("lon")), 1e-8);
        }
        assertEquals(
                "Skip of 200 m²: row not applying. Pass 6. Row 7. Look at this row's knife, hose and meter, and the corn"
                        + " along it.",
                text(found.get(0), "desc"));
        assertEquals("skip", text(found.get(0), "type"));
        assertTrue(text(found.get(5), "desc").contains("Passes 1, 2. Rows 1–10."), text(found.get(5), "desc"));
    }

    private static JsonNode layer(Outputs.Content content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        content.write(out);
        return new com.fasterxml.jackson.databind.ObjectMapper()
                .readTree(out.toByteArray())
                .get("features");
    }

    @Test
    void areas_are_in_the_readers_units() throws Exception {
        // 200 m² are 2152.8 ft² (1 ft = 0.3048 m exactly).
        Document document = read(new SyntheticJob().build(), UnitSystem.US);
        String text = text(waypoints(document).get(0), "desc");
        assertTrue(text.startsWith("Skip of 2,153 ft²:") || text.startsWith("Skip of 2,150 ft²:"), text);
    }

    @Test
    void a_finding_is_where_it_first_showed_with_what_to_check_and_the_cautions_stand_first() throws Exception {
        Document document = read(new SyntheticJob().withFinding().build(), UnitSystem.US);
        Element last = waypoints(document).get(6);
        assertEquals("44", last.getAttribute("lat"));
        assertEquals("-93", last.getAttribute("lon"));
        assertEquals("Finding 1", text(last, "name"));
        assertEquals(
                "Row 7 looks plugged. First sign here. To check: with the system bled, look at knife 7",
                text(last, "desc"));
        String cautions = text(document.getDocumentElement(), "desc");
        assertTrue(cautions.contains("bleed the pressure") && cautions.contains("product label"), cautions);
        // xsd:dateTime in UTC, the end of the log and not of the run.
        assertTrue(Instant.parse(text(document.getDocumentElement(), "time"))
                .isBefore(Instant.parse("2026-06-15T00:00:00Z")));
    }

    @Test
    void findings_without_a_place_are_none_to_go_to_but_keep_their_numbers() throws Exception {
        List<Finding> findings = List.of(finding(Double.NaN, "somewhere"), finding(44, "a < b & c\u0007"));
        List<Element> found =
                waypoints(read(new SyntheticJob().even().withFindings(findings).build(), UnitSystem.US));
        assertEquals(1, found.size());
        assertEquals("Finding 2", text(found.get(0), "name"));
        assertTrue(text(found.get(0), "desc").endsWith("a < b & c<U+0007>"), text(found.get(0), "desc"));
    }

    private static Finding finding(double latDeg, String check) {
        return new Finding(
                FindingKind.LEAKING,
                List.of(2),
                0,
                1,
                0.5,
                1,
                1,
                1,
                latDeg,
                -93,
                Message.of("findings.text", "evidence"),
                Message.of("findings.text", "other"),
                Message.of("findings.text", check),
                List.of());
    }

    @Test
    void of_very_many_places_the_largest_are_named_and_the_rest_is_said() throws Exception {
        Document document = read(new SyntheticJob().extraPlaces(499).build(), UnitSystem.US);
        assertEquals(205, waypoints(document).size());
        String said = text(document.getDocumentElement(), "desc");
        assertTrue(said.contains("300 smaller places are left out here"), said);
    }
}
