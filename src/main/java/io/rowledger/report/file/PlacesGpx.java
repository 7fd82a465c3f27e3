package io.rowledger.report.file;

import io.rowledger.coverage.Place;
import io.rowledger.finding.Finding;
import io.rowledger.report.Analysis;
import io.rowledger.report.JobTimes;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** {@code layers/places.gpx}: a waypoint for each skip, double and finding, GPX 1.1, for a hand-held receiver or a phone. */
final class PlacesGpx {
    static final String FILE = "layers/places.gpx";

    private static final String SPACE = "http://www.topografix.com/GPX/1/1";

    private final Analysis a;
    private final XMLStreamWriter xml;

    private PlacesGpx(Analysis a, XMLStreamWriter xml) {
        this.a = a;
        this.xml = xml;
    }

    static void write(Analysis a, OutputStream out) throws IOException {
        try {
            XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(out, "UTF-8");
            new PlacesGpx(a, xml).document();
            xml.flush();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private void document() throws XMLStreamException {
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeCharacters("\n");
        xml.writeStartElement("gpx");
        xml.writeDefaultNamespace(SPACE);
        xml.writeAttribute("version", "1.1");
        xml.writeAttribute("creator", "Rowledger");
        xml.writeCharacters("\n");
        xml.writeStartElement("metadata");
        element("name", "Places to go back to");
        String time = Decimals.time(JobTimes.endS(a));
        if (time != null) {
            element("time", time);
        }
        xml.writeEndElement();
        xml.writeCharacters("\n");
        places(a.coverage().missed(), "Skip", "skipped");
        places(a.coverage().overlaps(), "Double", "doubled");
        int number = 0;
        for (Finding finding : a.findings()) {
            number++;
            if (Double.isFinite(finding.latDeg()) && Double.isFinite(finding.lonDeg())) {
                String rows = finding.rows().isEmpty() ? "" : ", row " + numbers(finding.rows());
                waypoint(
                        finding.latDeg(),
                        finding.lonDeg(),
                        "Finding " + number,
                        words(finding.kind().jsonName()) + rows + ". " + finding.check(),
                        words(finding.kind().jsonName()));
            }
        }
        xml.writeEndElement();
        xml.writeEndDocument();
    }

    private void places(List<Place> places, String name, String what) throws XMLStreamException {
        double[] latLon = new double[2];
        for (Place place : places) {
            a.track().plane().inverse(place.eastM(), place.northM(), latLon);
            String cause = words(place.cause().name().toLowerCase(Locale.ROOT));
            String by = (place.passes().isEmpty() ? "" : ", pass " + numbers(place.passes()))
                    + (place.rows().isEmpty() ? "" : ", row " + numbers(place.rows()));
            waypoint(
                    latLon[0],
                    latLon[1],
                    name + " " + place.number(),
                    Decimals.text(place.areaM2(), 1) + " m2 " + what + ": " + cause + by,
                    what);
        }
    }

    private void waypoint(double latDeg, double lonDeg, String name, String text, String type)
            throws XMLStreamException {
        xml.writeStartElement("wpt");
        xml.writeAttribute("lat", Decimals.text(latDeg, Decimals.DEGREES));
        xml.writeAttribute("lon", Decimals.text(lonDeg, Decimals.DEGREES));
        element("name", name);
        element("desc", text);
        element("type", type);
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    private void element(String name, String text) throws XMLStreamException {
        xml.writeStartElement(name);
        // XML 1.0 has no other control characters.
        xml.writeCharacters(text.replaceAll("[\\p{Cntrl}&&[^\\t\\n]]", " "));
        xml.writeEndElement();
    }

    private static String words(String name) {
        return name.replace('_', ' ');
    }

    private static String numbers(List<Integer> numbers) {
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
