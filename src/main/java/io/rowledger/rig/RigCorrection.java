package io.rowledger.rig;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * A rig file with a few figures replaced: its owner's own text, order and comments, each new figure in the units the old one
 * was written in. The file itself is only read.
 */
public final class RigCorrection {
    /** Figures and units in turn: {@code 19 ft 4 in}. */
    private static final Pattern TERM =
            Pattern.compile("([+-]?\\d*\\.?\\d+(?:[eE][+-]?\\d+)?)\\s*([^\\d\\s+.-][^\\d+.-]*)");

    /** Resolution of new figures: lengths to a centimeter, times to a hundredth of a second. */
    private static final double FINEST_LENGTH_M = 0.01;

    private static final double FINEST_TIME_S = 0.011;

    /** Most decimals of a new figure: enough for that resolution in the largest unit. */
    private static final int MAX_DECIMALS = 4;

    /** A figure with a name that others may use, its tag left out: {@code &reach 5.9 m}. */
    private static final Pattern ANCHOR =
            Pattern.compile("(?:!\\S*\\s+)?&([^\\s,\\[\\]{}]+)\\s+(?:!\\S*\\s+)?(.*)", Pattern.DOTALL);

    private static final Pattern ALIAS = Pattern.compile("\\*[^\\s,\\[\\]{}]+");

    private RigCorrection() {}

    /**
     * A new figure.
     *
     * @param path where it stands, such as {@code rig.hitch_to_drop}
     * @param si the figure, m or s
     * @param dimension length or time
     */
    public record Change(String path, double si, Dimension dimension) {}

    /** A figure before and after, as written in the file; {@code before} is empty where the line is new. */
    public record Line(String path, int line, String before, String after) {}

    /** The rig file's text with the changes made, and what they look like. */
    public record Corrected(String text, List<Line> lines) {
        /** Copies the lines. */
        public Corrected {
            lines = List.copyOf(lines);
        }
    }

    /**
     * The rig file's text with these figures in it, line by line as its owner counts them.
     *
     * <p>The new text is read again. If it is refused, or a figure did not become the new one (YAML has forms that this does
     * not follow), nothing is changed: the result has no lines and the text as it was.
     */
    public static Corrected of(Path rigFile, List<Change> changes) {
        YamlFile file = new YamlFile(rigFile);
        String text = file.text();
        List<Line> lines = new ArrayList<>();
        try {
            for (Change change : changes) {
                // Read anew after each change, so that every mark counts the text as it is now.
                YamlFile now = new YamlFile(file.name(), text.getBytes(StandardCharsets.UTF_8));
                text = changed(now, change, lines, file.root());
            }
            requireWritten(new YamlFile(file.name(), text.getBytes(StandardCharsets.UTF_8)), lines);
            RigReader.ofText(file.name(), text);
        } catch (UnusableInputException | IllegalArgumentException e) {
            return new Corrected(file.text(), List.of());
        }
        return new Corrected(text, lines);
    }

    private static void requireWritten(YamlFile corrected, List<Line> lines) {
        for (Line line : lines) {
            String[] keys = line.path().split("\\.", -1);
            NodeTuple tuple = tuple(block(corrected.root(), keys), keys[keys.length - 1]);
            if (tuple == null
                    || !(tuple.getValueNode() instanceof ScalarNode scalar)
                    || !scalar.getValue().equals(line.after())) {
                throw new IllegalArgumentException("not written: " + line.path());
            }
        }
    }

    /** The block that holds the last of the keys. */
    private static MappingNode block(Node root, String[] keys) {
        Node block = root;
        for (int i = 0; i < keys.length - 1; i++) {
            NodeTuple tuple = tuple(block, keys[i]);
            if (tuple == null) {
                throw new IllegalArgumentException("no block " + keys[i]);
            }
            block = tuple.getValueNode();
        }
        if (block instanceof MappingNode mapping) {
            return mapping;
        }
        throw new IllegalArgumentException("no block above " + keys[keys.length - 1]);
    }

    private static String changed(YamlFile file, Change change, List<Line> lines, Node original) {
        String[] keys = change.path().split("\\.", -1);
        String key = keys[keys.length - 1];
        MappingNode block = block(file.root(), keys);
        NodeTuple tuple = tuple(block, key);
        if (tuple == null) {
            return inserted(file, block, key, change, lines, block(original, keys));
        }
        if (!(tuple.getValueNode() instanceof ScalarNode scalar)) {
            throw new IllegalArgumentException(change.path() + " is not a figure");
        }
        String before = scalar.getValue();
        String after = written(before, change);
        NodeTuple first = tuple(block(original, keys), key);
        lines.add(new Line(change.path(), line((first == null ? tuple : first).getKeyNode()), before, after));
        String text = file.text();
        Place place = place(text, tuple);
        String end = text.substring(place.end());
        Matcher anchor = ANCHOR.matcher(text.substring(place.start(), place.end()));
        if (anchor.lookingAt()) {
            end = withoutAliases(end, anchor.group(1), anchor.group(2));
        }
        return text.substring(0, place.start()) + after + end;
    }

    /** Replaces aliases of a changed figure by its old value: only the figure itself was found wrong. */
    private static String withoutAliases(String text, String name, String value) {
        String end = "(?=[\\s,\\]}]|$)";
        Matcher next = Pattern.compile("&" + Pattern.quote(name) + end).matcher(text);
        int until = next.find() ? next.start() : text.length();
        return text.substring(0, until)
                        .replaceAll("(?<=[\\s\\[,{])\\*" + Pattern.quote(name) + end, Matcher.quoteReplacement(value))
                + text.substring(until);
    }

    /** Where a value stands in the text. */
    private record Place(int start, int end) {}

    /** The place of a value; that of an alias is behind its own key, not where the anchor stands. */
    private static Place place(String text, NodeTuple tuple) {
        int key = offset(text, tuple.getKeyNode().getEndMark());
        int start = offset(text, tuple.getValueNode().getStartMark());
        if (start > key) {
            return new Place(start, offset(text, tuple.getValueNode().getEndMark()));
        }
        Matcher alias = ALIAS.matcher(text);
        if (!alias.find(key)) {
            throw new IllegalArgumentException("a value before its key that is no alias");
        }
        return new Place(alias.start(), alias.end());
    }

    private static int line(Node node) {
        return mark(node.getStartMark()).getLine() + 1;
    }

    private static @Nullable NodeTuple tuple(Node block, String key) {
        if (block instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                if (tuple.getKeyNode() instanceof ScalarNode scalar
                        && scalar.getValue().equals(key)) {
                    return tuple;
                }
            }
        }
        return null;
    }

    private static Mark mark(Optional<Mark> mark) {
        return mark.orElseThrow(() -> new IllegalStateException("the composer keeps marks"));
    }

    private static int offset(String text, Optional<Mark> mark) {
        return text.offsetByCodePoints(0, mark(mark).getIndex());
    }

    /** The block with one more line after its last one that holds a plain figure or word, or one more entry in its braces. */
    private static String inserted(
            YamlFile file, MappingNode block, String key, Change change, List<Line> lines, MappingNode original) {
        String text = file.text();
        String unit = change.dimension() == Dimension.LENGTH ? lengthUnit(file.root()) : "s";
        String after = written("0 " + unit, change);
        boolean braces = block.getFlowStyle() == FlowStyle.FLOW;
        NodeTuple last = last(block, braces);
        NodeTuple first = last(original, braces);
        if (last == null || first == null) {
            throw new IllegalArgumentException("no line to put " + change.path() + " after");
        }
        int end = place(text, last).end();
        if (braces) {
            // Right behind the last entry: between it and the brace there may be a comma, or a comment.
            lines.add(new Line(change.path(), line(first.getKeyNode()), "", after));
            return text.substring(0, end) + ", " + key + ": " + after + text.substring(end);
        }
        int newline = text.indexOf('\n', end);
        int at = newline < 0 ? text.length() : newline + 1;
        String indent = " ".repeat(mark(last.getKeyNode().getStartMark()).getColumn());
        String lineEnd = newline > 0 && text.charAt(newline - 1) == '\r' ? "\r\n" : "\n";
        lines.add(new Line(change.path(), line(first.getKeyNode()) + 1, "", after));
        return text.substring(0, at) + (newline < 0 ? lineEnd : "") + indent + key + ": " + after + lineEnd
                + text.substring(at);
    }

    /** The last entry whose line can be followed by another: in braces any, else a figure or word on one line. */
    private static @Nullable NodeTuple last(MappingNode block, boolean braces) {
        NodeTuple last = null;
        for (NodeTuple tuple : block.getValue()) {
            boolean oneLine = tuple.getValueNode() instanceof ScalarNode scalar
                    && scalar.getScalarStyle() != ScalarStyle.LITERAL
                    && scalar.getScalarStyle() != ScalarStyle.FOLDED
                    && !scalar.getValue().isEmpty();
            last = braces || oneLine ? tuple : last;
        }
        return last;
    }

    /** The unit the drop line's length is written in, the last one of a pair such as feet and inches. */
    private static String lengthUnit(Node root) {
        NodeTuple rig = tuple(root, "rig");
        NodeTuple drop = rig == null ? null : tuple(rig.getValueNode(), "hitch_to_drop");
        String unit = "m";
        if (drop != null && drop.getValueNode() instanceof ScalarNode scalar) {
            Matcher term = TERM.matcher(scalar.getValue());
            while (term.find()) {
                unit = term.group(2).strip();
            }
        }
        return unit;
    }

    /** The new figure in the units of the old one. */
    static String written(String before, Change change) {
        List<String> units = new ArrayList<>();
        Matcher term = TERM.matcher(before);
        while (term.find()) {
            units.add(term.group(2).strip());
        }
        if (units.isEmpty()) {
            throw new IllegalArgumentException("\"" + before + "\" is no figure with a unit");
        }
        String last = units.get(units.size() - 1);
        double smallest = toSi(last, change.dimension());
        double finest = change.dimension() == Dimension.LENGTH ? FINEST_LENGTH_M : FINEST_TIME_S;
        int decimals = 0;
        while (decimals < MAX_DECIMALS && smallest * Math.pow(10, -decimals) > finest) {
            decimals++;
        }
        BigDecimal left = BigDecimal.valueOf(Math.abs(change.si()) / smallest).setScale(decimals, RoundingMode.HALF_UP);
        String sign = change.si() < 0 && left.signum() != 0 ? "-" : "";
        if (units.size() == 2) {
            BigDecimal per = BigDecimal.valueOf(Math.round(toSi(units.get(0), change.dimension()) / smallest));
            BigDecimal[] whole = left.divideAndRemainder(per);
            return sign + whole[0].toBigInteger() + spaced(units.get(0)) + " " + plain(whole[1]) + spaced(last);
        }
        return sign + plain(left) + spaced(last);
    }

    private static String plain(BigDecimal figure) {
        return figure.signum() == 0 ? "0" : figure.stripTrailingZeros().toPlainString();
    }

    /** Signs such as ' and " stand close to their figure. */
    private static String spaced(String unit) {
        return Character.isLetter(unit.charAt(0)) ? " " + unit : unit;
    }

    private static double toSi(String unit, Dimension dimension) {
        if (Quantity.read("1 " + unit, dimension) instanceof Quantity one) {
            return one.si();
        }
        return Unit.find(unit, dimension)
                .orElseThrow(() -> new IllegalArgumentException("\"" + unit + "\" is no unit of " + dimension.words()))
                .toSi();
    }
}
