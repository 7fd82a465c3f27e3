package io.rowledger.export;

import io.rowledger.document.text.Messages;
import io.rowledger.report.answer.ReturnPlaces;
import io.rowledger.report.answer.ReturnPlaces.ReturnPlace;
import io.rowledger.results.JsonNumbers;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * {@code layers/places.gpx}: a waypoint for each place to go back to, with start and end of long skips, and routes along them,
 * GPX 1.1 (topografix.com/GPX/1/1), for a hand-held receiver, a phone or the cab.
 */
public final class PlacesGpx {
    public static final String FILE = "layers/places.gpx";

    private static final String SPACE = "http://www.topografix.com/GPX/1/1";

    private final XMLStreamWriter xml;

    private PlacesGpx(XMLStreamWriter xml) {
        this.xml = xml;
    }

    public static void write(FieldMap map, UnitFormat f, OutputStream out) throws IOException {
        try {
            XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(out, "UTF-8");
            Messages messages = new Messages(f);
            new PlacesGpx(xml)
                    .document(
                            messages.text("words.return.title"),
                            ReturnPlaces.of(map.coverage(), map.track(), map.findings(), messages),
                            JsonNumbers.time(map.endS()));
            xml.flush();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private void document(String title, ReturnPlaces places, @org.jspecify.annotations.Nullable String time)
            throws XMLStreamException {
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeCharacters("\n");
        xml.writeStartElement("gpx");
        xml.writeDefaultNamespace(SPACE);
        xml.writeAttribute("version", "1.1");
        xml.writeAttribute("creator", "Rowledger");
        xml.writeCharacters("\n");
        xml.writeStartElement("metadata");
        element("name", title);
        element("desc", places.cautions());
        if (time != null) {
            element("time", time);
        }
        xml.writeEndElement();
        xml.writeCharacters("\n");
        for (ReturnPlace place : places.places()) {
            point("wpt", place);
        }
        for (ReturnPlaces.Route route : places.routes()) {
            xml.writeStartElement("rte");
            element("name", route.name());
            for (ReturnPlace place : route.places()) {
                point("rtept", place);
            }
            xml.writeEndElement();
            xml.writeCharacters("\n");
        }
        xml.writeEndElement();
        xml.writeEndDocument();
    }

    private void point(String tag, ReturnPlace place) throws XMLStreamException {
        xml.writeStartElement(tag);
        xml.writeAttribute("lat", JsonNumbers.text(place.latDeg(), JsonNumbers.DEGREES));
        xml.writeAttribute("lon", JsonNumbers.text(place.lonDeg(), JsonNumbers.DEGREES));
        element("name", place.name());
        element("desc", place.text());
        element("type", place.kind());
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    private void element(String name, String text) throws XMLStreamException {
        xml.writeStartElement(name);
        xml.writeCharacters(plain(text));
        xml.writeEndElement();
    }

    /** XML 1.0 has no other control characters; small screens know no spaces but the plain one. */
    private static String plain(String text) {
        return text.replaceAll("[\\p{Cntrl}\\u00a0\\u202f]", " ");
    }
}
