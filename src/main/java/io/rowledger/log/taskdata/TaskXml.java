package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.XmlCharacters;
import java.io.FilterReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * The XML of task data as a small tree: elements that are of no use here (fields, guidance, grids) are passed over. Nothing
 * is fetched; document types are refused, so there are no entities of a file's own.
 */
final class TaskXml {
    /** What is kept; everything below anything else is passed over with it. */
    private static final Set<String> KEPT = Set.of(
            "ISO11783_TaskData",
            "XFC",
            "XFR",
            "DVC",
            "DET",
            "DOR",
            "DPD",
            "DPT",
            "PFD",
            "TSK",
            "TIM",
            "PTN",
            "DLV",
            "TLG",
            "CNN");
    /** ISO 11783-10 nests five deep or so. */
    private static final int DEEPEST = 40;
    /** More elements than a season's task data has. */
    private static final int MAX_ELEMENTS = 500_000;

    private final String file;
    private final XMLStreamReader xml;
    private int elements;

    private TaskXml(String file, XMLStreamReader xml) {
        this.file = file;
        this.xml = xml;
    }

    /**
     * Reads a file.
     *
     * @param root the name its outermost element must have
     */
    static XmlElement read(String file, InputStream in, String root) throws IOException {
        // The JDK's own parser by name: another one on the class path might have other defaults.
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        // JDKs differ in how deep they read; the bound is DEEPEST.
        factory.setProperty("http://www.oracle.com/xml/jaxp/properties/maxElementDepth", "0");
        Reader characters = XmlCharacters.of(
                file, in, "UTF-8, as ISO 11783-10 has it", "copy the task data from the terminal again");
        try {
            return new TaskXml(file, factory.createXMLStreamReader(keptOpen(characters))).document(root);
        } catch (XMLStreamException e) {
            if (e.getNestedException() instanceof CharacterCodingException) {
                throw broken(file, e);
            }
            if (e.getNestedException() instanceof IOException damaged) {
                throw damaged;
            }
            throw broken(file, e);
        }
    }

    /** The parser closes what it has read to the end; the digest wants the bytes behind it too. */
    private static Reader keptOpen(Reader in) {
        return new FilterReader(in) {
            @Override
            public void close() {}
        };
    }

    private static UnusableInputException broken(String file, XMLStreamException e) {
        int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNumber());
        int column = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getColumnNumber());
        UnusableInputException message = UnusableInputException.found("text that is no well-formed XML")
                .inFile(file)
                .atLine(line)
                .expected("XML as ISO 11783-10 has it")
                .hint("copy the task data from the terminal again; this file is damaged");
        return column > 0 ? message.atColumn(String.valueOf(column)) : message;
    }

    private XmlElement document(String root) throws XMLStreamException {
        Deque<XmlElement> open = new ArrayDeque<>();
        XmlElement first = null;
        int skipped = 0;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
                throw at("a document type or an entity of its own")
                        .expected("task data, which has none")
                        .hint("don't trust this file; ask whoever sent it");
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                tooMuch(open.size() + skipped);
                if (skipped > 0 || (first != null && !KEPT.contains(xml.getLocalName()))) {
                    skipped++;
                    continue;
                }
                XmlElement element = element();
                if (first == null) {
                    first = element;
                    isRoot(element, root);
                } else {
                    open.element().add(element);
                }
                open.push(element);
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                if (skipped > 0) {
                    skipped--;
                } else {
                    open.pop();
                }
            }
        }
        if (first == null) {
            throw at("no element").expected("<" + root + ">").hint("copy the task data from the terminal again");
        }
        return first;
    }

    private void isRoot(XmlElement element, String root) {
        if (!element.name().equals(root)) {
            throw element.found("XML that begins with <" + element.name() + ">")
                    .expected("a file of ISO 11783-10 that begins with <" + root + ">")
                    .hint("give the TASKDATA.XML of the job, or the folder it is in");
        }
    }

    private void tooMuch(int depth) {
        if (depth > DEEPEST || ++elements > MAX_ELEMENTS) {
            throw at(depth > DEEPEST ? "elements nested " + depth + " deep" : "more than " + MAX_ELEMENTS + " elements")
                    .expected("task data")
                    .hint("look at the file in a text editor, and ask where it comes from");
        }
    }

    private XmlElement element() {
        Map<String, String> attributes = new HashMap<>();
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            attributes.put(xml.getAttributeLocalName(i), xml.getAttributeValue(i));
        }
        return new XmlElement(file, xml.getLocalName(), line(), attributes);
    }

    private int line() {
        return Math.max(0, xml.getLocation().getLineNumber());
    }

    private UnusableInputException at(String found) {
        return UnusableInputException.found(found).inFile(file).atLine(line());
    }
}
