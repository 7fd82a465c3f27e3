package io.rowledger.rig;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import io.rowledger.units.Dimension;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads a rig file. An unknown key is refused, with its line and the nearest known key. */
public final class RigReader {
    /** Longest plausible distance on a tractor or drawbar, m: beyond it the unit is wrong. */
    private static final double MAX_M = 30;
    /** Shortest plausible length from hitch pin to wheels, m. */
    private static final double MIN_DRAWBAR_M = 0.3;
    /** Largest plausible side offset of an antenna or a bar, m. */
    private static final double MAX_ASIDE_M = 10;
    /** Largest tolerance of a measured length, m. */
    private static final double MAX_TOLERANCE_M = 0.5;

    private static final String[] BLOCKS = {"rig", "rows", "products", "columns", "prescription", "log", "job"};

    private RigReader() {}

    /**
     * The rig in the file.
     *
     * @throws UnusableInputException if the file can't be used
     */
    public static RigFile read(Path path) {
        return read(new YamlFile(path));
    }

    /** The rig in a text that is not on disk. */
    public static Rig ofText(String name, String text) {
        return read(new YamlFile(name, text.getBytes(StandardCharsets.UTF_8))).rig();
    }

    private static RigFile read(YamlFile file) {
        YamlMap top = file.top().only(BLOCKS);
        Unmeasured.refuse(top);
        YamlMap rig = top.map("rig", "a block with the lengths of tractor and bar")
                .only(
                        "name",
                        "antenna",
                        "axle_to_hitch",
                        "hitch",
                        "hitch_to_wheels",
                        "hitch_to_drop",
                        "bar_right_of_center",
                        "tolerance");
        BarLengths lengths = lengths(rig);
        YamlMap rows = top.map("rows", "a block with count and spacing, or with outlets");
        List<Band> bands = BandReader.read(rows);
        List<Product> products = ProductReader.read(top.map("products", "a block with a key for each liquid"));
        Rig read = new Rig(
                rig.textOr("name", "Unnamed bar"),
                lengths,
                bands,
                RowMeters.read(rows, bands.size()),
                products,
                hints(top, products),
                top.hasMore("job") ? JobReader.read(top.map("job", "a block"), products) : Job.NONE);
        return new RigFile(file.name(), file.sha256(), read);
    }

    private static FileHints hints(YamlMap top, List<Product> products) {
        PrescriptionColumns prescription = top.hasMore("prescription")
                ? PrescriptionColumnsReader.read(top.map("prescription", "a block"), products)
                : PrescriptionColumns.NONE;
        return new FileHints(columns(top), logHints(top), prescription);
    }

    /**
     * The part of a rig file that concerns reading logs. The rest of the file is not checked, so that a log can be
     * inspected before the machine is measured.
     *
     * @throws UnusableInputException if that part can't be used
     */
    public static LogOptions logOptions(Path path) {
        YamlMap top = new YamlFile(path).top().only(BLOCKS);
        return new LogOptions(columns(top), List.of(), 0, logHints(top));
    }

    private static Map<String, String> columns(YamlMap top) {
        Map<String, String> columns = new LinkedHashMap<>();
        if (top.hasMore("columns")) {
            YamlMap map = top.map("columns", "a block");
            for (String quantity : map.keys()) {
                columns.put(quantity, map.text(quantity, "the header of the column in the log"));
            }
        }
        return columns;
    }

    private static LogHints logHints(YamlMap top) {
        return top.hasMore("log") ? LogHintsReader.read(top.map("log", "a block")) : LogHints.NONE;
    }

    private static BarLengths lengths(YamlMap rig) {
        YamlMap antenna = rig.map("antenna", "a block with ahead_of_axle and right_of_center")
                .only("ahead_of_axle", "right_of_center");
        Hitch hitch = hitch(rig);
        return new BarLengths(
                length(antenna, "ahead_of_axle"),
                aside(antenna, "right_of_center"),
                length(rig, "axle_to_hitch"),
                hitch,
                hitch == Hitch.PULL_TYPE ? wheels(rig) : Double.NaN,
                length(rig, "hitch_to_drop"),
                aside(rig, "bar_right_of_center"),
                tolerance(rig));
    }

    private static Hitch hitch(YamlMap rig) {
        String text = rig.text("hitch", "pull-type or mounted");
        Hitch hitch =
                switch (text.strip().toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-')) {
                    case "pull-type" -> Hitch.PULL_TYPE;
                    case "mounted" -> Hitch.MOUNTED;
                    default ->
                        throw rig.fault("hitch", "\"" + text + "\"")
                                .expected("pull-type or mounted")
                                .hint("write pull-type for a bar on its own wheels behind a hitch pin, mounted for one "
                                        + "that the tractor carries");
                };
        if (hitch == Hitch.MOUNTED && rig.has("hitch_to_wheels")) {
            throw rig.fault("hitch_to_wheels", "hitch_to_wheels on a mounted bar")
                    .expected("hitch_to_wheels for pull-type bars only")
                    .hint("delete the line, or write hitch: pull-type");
        }
        if (hitch == Hitch.PULL_TYPE && !rig.has("hitch_to_wheels")) {
            throw rig.fault("hitch", "a pull-type bar without hitch_to_wheels")
                    .kind(RefusalKind.KEY, "rig.hitch_to_wheels")
                    .expected("hitch_to_wheels, the length from the hitch pin back to the wheels, such as 4.4 m")
                    .hint("measure it and add the line hitch_to_wheels: 4.4 m with your length, or write hitch: "
                            + "mounted");
        }
        return hitch;
    }

    /** How far a measured length may be off, m; NaN if the rig file does not say. */
    private static double tolerance(YamlMap rig) {
        double toleranceM = rig.quantityOr("tolerance", Dimension.LENGTH, Double.NaN);
        if (toleranceM < 0 || toleranceM > MAX_TOLERANCE_M) {
            throw rig.fault("tolerance", "\"" + rig.text("tolerance", "a length") + "\"")
                    .expected("how far each length may be off, from 0 to 0.5 m")
                    .hint("write how well the tape was read, such as 1 in");
        }
        return toleranceM;
    }

    private static double wheels(YamlMap rig) {
        double lengthM = length(rig, "hitch_to_wheels");
        if (lengthM < MIN_DRAWBAR_M) {
            throw rig.fault("hitch_to_wheels", "\"" + rig.text("hitch_to_wheels", "a length") + "\"")
                    .expected("the length from the hitch pin back to the wheels, such as 4.4 m")
                    .hint("measure it, or write hitch: mounted for a bar without wheels");
        }
        return lengthM;
    }

    private static double length(YamlMap map, String key) {
        double lengthM = map.quantity(key, Dimension.LENGTH);
        if (lengthM < 0) {
            throw map.fault(key, "the negative length \"" + map.text(key, "a length") + "\"")
                    .expected("a length of zero or more")
                    .hint("delete the minus sign; the README shows which way each length runs");
        }
        if (lengthM > MAX_M) {
            throw map.fault(key, "\"" + map.text(key, "a length") + "\"")
                    .expected("a length of at most " + (int) MAX_M + " m")
                    .hint("check the figure and its unit");
        }
        return lengthM;
    }

    private static double aside(YamlMap map, String key) {
        double lengthM = map.quantityOr(key, Dimension.LENGTH, 0);
        if (Math.abs(lengthM) > MAX_ASIDE_M) {
            throw map.fault(key, "\"" + map.text(key, "a length") + "\"")
                    .expected("at most " + (int) MAX_ASIDE_M + " m to either side, left negative")
                    .hint("check the figure and its unit");
        }
        return lengthM;
    }

    /** The lengths in a list, m. */
    static List<Double> lengths(YamlMap map, String key, String what) {
        List<Double> lengths = new ArrayList<>();
        for (Node item : map.list(key, what)) {
            lengths.add(map.quantity(item, map.child(key), Dimension.LENGTH));
        }
        return lengths;
    }
}
