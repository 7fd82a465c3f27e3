package io.rowledger.rig;

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

/** Reads a rig file, strictly: what it does not understand it refuses, with the line and the nearest known key. */
public final class RigReader {
    /** Longer than any distance on a tractor or a bar's drawbar: above it a unit is wrong. */
    private static final double MAX_M = 30;
    /** Farther aside than any antenna or bar sits. */
    private static final double MAX_ASIDE_M = 10;
    /** A machine measured worse than this has not been measured. */
    private static final double WORST_TOLERANCE_M = 0.5;

    private RigReader() {}

    /**
     * The rig in the file.
     *
     * @throws UnusableInputException where the file can't be used
     */
    public static RigFile read(Path path) {
        return read(new YamlFile(path));
    }

    /** The rig in a text that is not on disk. */
    public static Rig ofText(String name, String text) {
        return read(new YamlFile(name, text.getBytes(StandardCharsets.UTF_8))).rig();
    }

    private static RigFile read(YamlFile file) {
        YamlMap top = file.top().only("rig", "rows", "products", "columns", "log", "job");
        Unmeasured.refuse(top);
        YamlMap rig = top.map("rig", "a block with the lengths of tractor and bar")
                .only(
                        "name",
                        "antenna",
                        "axle_to_hitch",
                        "towing",
                        "hitch_to_wheels",
                        "hitch_to_drop",
                        "bar_right_of_center",
                        "tolerance");
        YamlMap antenna = rig.map("antenna", "a block with ahead_of_axle and right_of_center")
                .only("ahead_of_axle", "right_of_center");
        Towing towing = towing(rig);
        List<Band> bands = BandReader.read(top.map("rows", "a block with count and spacing, or with outlets"));
        List<Product> products = ProductReader.read(top.map("products", "a block with a key for each liquid"));
        Map<String, String> columns = top.hasMore("columns") ? columns(top.map("columns", "a block")) : Map.of();
        LogHints hints = top.hasMore("log") ? LogHintsReader.read(top.map("log", "a block")) : LogHints.NONE;
        Job job = top.hasMore("job") ? JobReader.read(top.map("job", "a block"), products) : Job.NONE;
        Rig read = new Rig(
                rig.textOr("name", "Unnamed bar"),
                length(antenna, "ahead_of_axle"),
                aside(antenna, "right_of_center"),
                length(rig, "axle_to_hitch"),
                towing,
                towing == Towing.DRAWN ? wheels(rig) : Double.NaN,
                length(rig, "hitch_to_drop"),
                aside(rig, "bar_right_of_center"),
                bands,
                products,
                columns,
                hints,
                job,
                tolerance(rig));
        return new RigFile(file.name(), file.sha256(), read);
    }

    /**
     * What a rig file says about reading logs, and no more of it: its lengths need not be measured yet.
     *
     * @throws UnusableInputException where the file can't be used
     */
    public static LogOptions logOptions(Path path) {
        YamlMap top = new YamlFile(path).top().only("rig", "rows", "products", "columns", "log", "job");
        Map<String, String> columns = top.hasMore("columns") ? columns(top.map("columns", "a block")) : Map.of();
        LogHints hints = top.hasMore("log") ? LogHintsReader.read(top.map("log", "a block")) : LogHints.NONE;
        return new LogOptions(columns, List.of(), 0, hints);
    }

    private static Towing towing(YamlMap rig) {
        String text = rig.text("towing", "drawn or carried");
        Towing towing =
                switch (text.strip().toLowerCase(Locale.ROOT)) {
                    case "drawn" -> Towing.DRAWN;
                    case "carried" -> Towing.CARRIED;
                    default ->
                        throw rig.fault("towing", "\"" + text + "\"")
                                .expected("drawn or carried")
                                .hint(
                                        "write drawn for a bar on its own wheels behind a hitch pin, carried for one on the "
                                                + "three-point hitch");
                };
        if (towing == Towing.CARRIED && rig.has("hitch_to_wheels")) {
            throw rig.fault("hitch_to_wheels", "a wheel line on a carried bar")
                    .expected("hitch_to_wheels for drawn bars only")
                    .hint("take the line out, or write towing: drawn");
        }
        if (towing == Towing.DRAWN && !rig.has("hitch_to_wheels")) {
            throw rig.fault("towing", "a drawn bar without hitch_to_wheels")
                    .expected("hitch_to_wheels, the length from the hitch pin back to the wheels, such as 4.4 m")
                    .hint("measure it and add the line hitch_to_wheels: 4.4 m with your length, or write towing: "
                            + "carried");
        }
        return towing;
    }

    /** How far a measured length may be off, m; NaN where the rig file does not say. */
    private static double tolerance(YamlMap rig) {
        double toleranceM = rig.quantityOr("tolerance", Dimension.LENGTH, Double.NaN);
        if (toleranceM < 0 || toleranceM > WORST_TOLERANCE_M) {
            throw rig.fault("tolerance", "\"" + rig.text("tolerance", "a length") + "\"")
                    .expected("how far each measure may be off, from 0 to 0.5 m")
                    .hint("write what the tape can be trusted to, such as 1 in");
        }
        return toleranceM;
    }

    private static double wheels(YamlMap rig) {
        double lengthM = length(rig, "hitch_to_wheels");
        if (lengthM == 0) {
            throw rig.fault("hitch_to_wheels", "a length of zero")
                    .expected("the length from the hitch pin back to the wheels, such as 4.4 m")
                    .hint("measure it; a bar without that length is carried");
        }
        return lengthM;
    }

    private static double length(YamlMap map, String key) {
        double lengthM = map.quantity(key, Dimension.LENGTH);
        if (lengthM < 0) {
            throw map.fault(key, "the negative length \"" + map.text(key, "a length") + "\"")
                    .expected("a length of zero or more")
                    .hint("write it without the minus sign; the README shows which way each length is taken");
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

    private static Map<String, String> columns(YamlMap map) {
        Map<String, String> columns = new LinkedHashMap<>();
        for (String quantity : map.keys()) {
            columns.put(quantity, map.text(quantity, "the header of the column in the log"));
        }
        return columns;
    }

    /** The figures of a list of two, such as a band's edges. */
    static List<Double> lengths(YamlMap map, String key, String what) {
        List<Double> lengths = new ArrayList<>();
        for (Node item : map.list(key, what)) {
            lengths.add(map.quantity(item, map.child(key), Dimension.LENGTH));
        }
        return lengths;
    }
}
