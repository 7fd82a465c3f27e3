package io.rowledger.results;

import com.fasterxml.jackson.databind.JsonNode;
import io.rowledger.finding.UnusableInputException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;

/** A value in a results file that knows its file and its place in it, so that every complaint can name them. */
record ResultValue(String file, String path, JsonNode node) {
    ResultValue at(String key) {
        JsonNode child = node.isObject() ? node.get(key) : null;
        String where = path.isEmpty() ? key : path + "." + key;
        if (child == null) {
            throw new ResultValue(file, where, node).wrong("nothing", "what report writes there");
        }
        return new ResultValue(file, where, child);
    }

    /** The keys of an object, in their order. */
    List<String> keys() {
        if (!node.isObject()) {
            throw wrong(shown(), "an object");
        }
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    boolean isNull() {
        return node.isNull();
    }

    List<ResultValue> list() {
        if (!node.isArray()) {
            throw wrong(shown(), "a list");
        }
        List<ResultValue> values = new ArrayList<>();
        for (int i = 0; i < node.size(); i++) {
            values.add(new ResultValue(file, path + "[" + i + "]", node.get(i)));
        }
        return values;
    }

    String text() {
        if (!node.isTextual()) {
            throw wrong(shown(), "text");
        }
        return node.textValue();
    }

    boolean flag() {
        if (!node.isBoolean()) {
            throw wrong(shown(), "true or false");
        }
        return node.booleanValue();
    }

    /** A number, or NaN for null. */
    double number() {
        if (node.isNull()) {
            return Double.NaN;
        }
        if (!node.isNumber()) {
            throw wrong(shown(), "a number or null");
        }
        return node.doubleValue();
    }

    int whole(int least, int most) {
        if (!node.isInt() || node.intValue() < least || node.intValue() > most) {
            throw wrong(shown(), "a whole number from " + least + " to " + most);
        }
        return node.intValue();
    }

    /** Epoch seconds of an ISO 8601 instant, or NaN for null. */
    double time() {
        if (node.isNull()) {
            return Double.NaN;
        }
        try {
            return Instant.parse(text()).toEpochMilli() / 1000.0;
        } catch (DateTimeParseException e) {
            throw wrong(shown(), "a time such as 2026-06-14T13:00:00Z");
        }
    }

    private String shown() {
        String text = node.toString();
        return text.length() > 60 ? text.substring(0, 60) + "..." : text;
    }

    UnusableInputException wrong(String found, String expected) {
        return UnusableInputException.found(found)
                .inFile(file)
                .atColumn(path)
                .expected(expected)
                .hint("run report on the log again, and leave its results as they are");
    }
}
