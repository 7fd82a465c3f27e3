package io.rowledger.log.taskdata;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** An element of a task file with what is needed of it. */
final class XmlElement {
    private final String file;
    private final String name;
    private final int line;
    private final Map<String, String> attributes;
    private final List<XmlElement> children = new ArrayList<>();

    XmlElement(String file, String name, int line, Map<String, String> attributes) {
        this.file = file;
        this.name = name;
        this.line = line;
        this.attributes = Map.copyOf(attributes);
    }

    void add(XmlElement child) {
        children.add(child);
    }

    String file() {
        return file;
    }

    String name() {
        return name;
    }

    int line() {
        return line;
    }

    List<XmlElement> children(String of) {
        return children.stream().filter(child -> child.name.equals(of)).toList();
    }

    List<XmlElement> children() {
        return children;
    }

    boolean has(String attribute) {
        return attributes.containsKey(attribute);
    }

    /** True where the attribute stands there without a value: the binary file holds it record by record. */
    boolean isInBinary(String attribute) {
        return attributes.getOrDefault(attribute, "-").isEmpty();
    }

    /** The attribute's text without blanks around it; empty where there is none. */
    String text(String attribute) {
        return attributes.getOrDefault(attribute, "").strip();
    }

    /** An attribute that must be there. */
    String need(String attribute, String what) {
        if (text(attribute).isEmpty()) {
            throw found("no " + what + " (attribute " + attribute + ")")
                    .expected("an element " + name + " as ISO 11783-10 has it")
                    .hint("export the task data again");
        }
        return text(attribute);
    }

    /** A whole number that must be there. */
    int number(String attribute, String what) {
        return number(attribute, what, 10);
    }

    /** A number of the data dictionary: four hexadecimal digits (ISO 11783-10). */
    int ddi(String attribute) {
        return number(attribute, "number of the data dictionary", 16);
    }

    private int number(String attribute, String what, int radix) {
        String text = need(attribute, what);
        try {
            return Integer.parseInt(text, radix);
        } catch (NumberFormatException e) {
            throw found("\"" + text + "\" as " + what + " (attribute " + attribute + ")")
                    .expected(radix == 16 ? "hexadecimal digits such as 0025" : "a whole number")
                    .hint("export the task data again");
        }
    }

    /** A message about this element. */
    UnusableInputException found(String found) {
        return UnusableInputException.found(found).inFile(file).atLine(line).atColumn(name);
    }
}
