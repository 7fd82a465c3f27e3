package io.rowledger.rig;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import io.rowledger.units.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** A block of keys in a YAML file that gives its values by type, and every fault its file, line and key. */
final class YamlMap {
    private static final Pattern WHOLE = Pattern.compile("\\d{1,6}");

    private final String file;
    private final String path;
    private final int line;
    private final Map<String, Node> values = new LinkedHashMap<>();
    private final Map<String, Integer> lines = new LinkedHashMap<>();

    private YamlMap(String file, String path, int line) {
        this.file = file;
        this.path = path;
        this.line = line;
    }

    /** The block in the node; its path is empty at the top. */
    static YamlMap of(String file, String path, Node node) {
        YamlMap map = new YamlMap(file, path, lineOf(node));
        if (!(node instanceof MappingNode mapping)) {
            throw map.fault(map.line, path, words(node))
                    .expected("a block of keys")
                    .hint("indent the keys below " + (path.isEmpty() ? "their block" : path) + ", one a line");
        }
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                throw map.fault(lineOf(tuple.getKeyNode()), path, "a key that is not a word")
                        .expected("\"key: value\"")
                        .hint("write one word before the colon");
            }
            int at = lineOf(key);
            if (map.values.put(key.getValue(), tuple.getValueNode()) != null) {
                throw map.fault(
                                at,
                                map.child(key.getValue()),
                                "the key a second time; the first is on line " + map.lines.get(key.getValue()))
                        .expected("each key once")
                        .hint("take one of the two out");
            }
            map.lines.put(key.getValue(), at);
        }
        return map;
    }

    /** Refuses keys that are not among these. */
    YamlMap only(String... known) {
        List<String> keys = List.of(known);
        for (String key : values.keySet()) {
            if (!keys.contains(key)) {
                String nearest = NearestKey.of(key, keys)
                        .map(near -> "write " + near + " if that is what is meant, or take the line out")
                        .orElse("take the line out, or move it under job, where any key may stand");
                throw fault(lineOf(key), child(key), "an unknown key")
                        .expected("one of " + String.join(", ", keys))
                        .hint(nearest);
            }
        }
        return this;
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    Set<String> keys() {
        return values.keySet();
    }

    String child(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    int lineOf(String key) {
        return lines.getOrDefault(key, line);
    }

    /** The block under a key that must be there. */
    YamlMap map(String key, String what) {
        return of(file, child(key), node(key, what));
    }

    /** The list under a key that must be there. */
    List<Node> list(String key, String what) {
        Node node = node(key, what);
        if (!(node instanceof SequenceNode sequence)) {
            throw fault(lineOf(node), child(key), words(node))
                    .expected("a list, " + what)
                    .hint("write " + what);
        }
        return sequence.getValue();
    }

    /** The text under a key that must be there. */
    String text(String key, String what) {
        return scalar(node(key, what), child(key), what);
    }

    /** The text under a key, or another one where the key is not there. */
    String textOr(String key, String otherwise) {
        return has(key) ? text(key, "a text") : otherwise;
    }

    /** The figure under a key that must be there, in SI. */
    double quantity(String key, Dimension dimension) {
        String what = dimension.words() + " such as " + dimension.example();
        return quantity(node(key, what), child(key), dimension);
    }

    /** The figure under a key, or another one where the key is not there, in SI. */
    double quantityOr(String key, Dimension dimension, double otherwise) {
        return has(key) ? quantity(key, dimension) : otherwise;
    }

    /** The plain number under a key that must be there. */
    double number(String key, String what) {
        String text = text(key, what);
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw fault(key, "\"" + text + "\"").expected(what).hint("write the bare number");
        }
    }

    /** Item number n, from 1, of the list under a key, itself a block. */
    YamlMap item(String key, int n, Node node) {
        return of(file, child(key) + "[" + n + "]", node);
    }

    /** The whole numbers in a list, or the one in a plain value; at least one. */
    List<Integer> wholeNumbers(Node node, String at, String what) {
        List<Node> items = node instanceof SequenceNode sequence ? sequence.getValue() : List.of(node);
        List<Integer> numbers = new ArrayList<>();
        for (Node item : items) {
            String text = scalar(item, at, what).strip();
            if (!WHOLE.matcher(text).matches()) {
                throw fault(lineOf(item), at, words(item)).expected(what).hint("write whole numbers");
            }
            numbers.add(Integer.parseInt(text));
        }
        if (numbers.isEmpty()) {
            throw fault(lineOf(node), at, "an empty list").expected(what).hint("write whole numbers, or delete it");
        }
        return numbers;
    }

    /** True where the key stands there with something behind it. */
    boolean hasMore(String key) {
        Node node = values.get(key);
        return node != null
                && !(node instanceof ScalarNode scalar && scalar.getValue().isEmpty());
    }

    /** True where a block of keys stands under the key. */
    boolean isBlock(String key) {
        return values.get(key) instanceof MappingNode;
    }

    /** True where what stands under the key is a figure of this dimension. */
    boolean isQuantity(String key, Dimension dimension) {
        return values.get(key) instanceof ScalarNode scalar
                && Quantity.read(scalar.getValue(), dimension) instanceof Quantity;
    }

    /** A value without anything below it, with where it stands. */
    record Scalar(String path, String text, int line) {}

    /** Every value at and below a key, blocks and lists gone through; empty where there is no such key. */
    List<Scalar> scalars(String key) {
        List<Scalar> scalars = new ArrayList<>();
        Node node = values.get(key);
        if (node != null) {
            collect(node, child(key), scalars);
        }
        return scalars;
    }

    private static void collect(Node node, String at, List<Scalar> into) {
        if (node instanceof ScalarNode scalar) {
            into.add(new Scalar(at, scalar.getValue().strip(), lineOf(node)));
        } else if (node instanceof SequenceNode sequence) {
            for (Node item : sequence.getValue()) {
                collect(item, at, into);
            }
        } else if (node instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                if (tuple.getKeyNode() instanceof ScalarNode name) {
                    collect(tuple.getValueNode(), at + "." + name.getValue(), into);
                }
            }
        }
    }

    /** The same message with this file's name. */
    UnusableInputException inFile(UnusableInputException message) {
        return message.inFile(file);
    }

    /** A message about this block. */
    UnusableInputException fault(String found) {
        return fault(line, path, found);
    }

    /** A message about a key of this block. */
    UnusableInputException fault(String key, String found) {
        return fault(lineOf(key), child(key), found);
    }

    double quantity(Node node, String at, Dimension dimension) {
        String text = scalar(node, at, dimension.words() + " such as " + dimension.example());
        Reading reading = Quantity.read(text, dimension);
        if (reading instanceof Quantity quantity) {
            return quantity.si();
        }
        Refusal refusal = (Refusal) reading;
        throw fault(lineOf(node), at, refusal.found())
                .kind(RefusalKind.FIGURE, at)
                .expected(refusal.expected())
                .hint(refusal.hint());
    }

    /** Every value below, with dotted keys for blocks and items joined with commas for lists, in their order. */
    Map<String, String> flat() {
        Map<String, String> flat = new LinkedHashMap<>();
        for (Map.Entry<String, Node> entry : values.entrySet()) {
            if (entry.getValue() instanceof MappingNode) {
                for (Map.Entry<String, String> below :
                        of(file, child(entry.getKey()), entry.getValue()).flat().entrySet()) {
                    flat.put(entry.getKey() + "." + below.getKey(), below.getValue());
                }
            } else {
                flat.put(entry.getKey(), joined(entry.getValue(), child(entry.getKey())));
            }
        }
        return flat;
    }

    private String joined(Node node, String at) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue();
        }
        if (node instanceof SequenceNode sequence) {
            List<String> parts = new ArrayList<>();
            for (Node item : sequence.getValue()) {
                parts.add(joined(item, at));
            }
            return String.join(", ", parts);
        }
        List<String> parts = new ArrayList<>();
        for (Map.Entry<String, String> part : of(file, at, node).flat().entrySet()) {
            parts.add(part.getKey() + ": " + part.getValue());
        }
        return String.join(", ", parts);
    }

    private Node node(String key, String what) {
        Node node = values.get(key);
        if (node == null) {
            throw fault(line, path.isEmpty() ? key : path, "no " + key)
                    .kind(RefusalKind.KEY, child(key))
                    .expected(key + ", " + what)
                    .hint("add a line " + key + ": to the block, with its value");
        }
        return node;
    }

    private String scalar(Node node, String at, String what) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue();
        }
        throw fault(lineOf(node), at, words(node)).expected(what).hint("write the value behind the colon");
    }

    private UnusableInputException fault(int atLine, String at, String found) {
        UnusableInputException fault =
                UnusableInputException.found(found).inFile(file).atLine(atLine);
        return at.isEmpty() ? fault : fault.atColumn(at);
    }

    private static String words(Node node) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue().isEmpty() ? "nothing" : "\"" + scalar.getValue() + "\"";
        }
        return node instanceof SequenceNode ? "a list" : "a block of keys";
    }

    private static int lineOf(Node node) {
        return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
    }
}
