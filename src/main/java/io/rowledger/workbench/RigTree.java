package io.rowledger.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/**
 * A rig file as a tree of blocks and texts, so that one screen changes its own lines and leaves all others, the ones that this
 * program's screens don't know included. Texts stay as a person typed them. {@code RigReader} decides what they mean.
 */
final class RigTree {
    /** Largest rig file, bytes. */
    private static final int MAX_BYTES = 1 << 20;

    private final Map<String, Object> top;

    private RigTree(Map<String, Object> top) {
        this.top = top;
    }

    /** A rig file without a line. */
    static RigTree empty() {
        return new RigTree(new LinkedHashMap<>());
    }

    /** A tree as the page sent it. */
    static RigTree of(Map<String, Object> tree) {
        return new RigTree(new LinkedHashMap<>(tree));
    }

    /**
     * Reads a rig file.
     *
     * @throws HttpRefusal if it is no YAML of blocks
     */
    static RigTree read(Path file) throws IOException {
        if (Files.size(file) > MAX_BYTES || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new HttpRefusal(HttpRefusal.UNUSABLE, "refusals.rigFile", nameOf(file));
        }
        try {
            // All values stay texts: 32-0-0 is no date and 012 no number.
            LoadSettings settings = LoadSettings.builder()
                    .setSchema(new FailsafeSchema())
                    .setAllowDuplicateKeys(false)
                    .setMaxAliasesForCollections(0)
                    .build();
            Object tree = new Load(settings).loadFromString(Files.readString(file, StandardCharsets.UTF_8));
            return tree == null ? empty() : new RigTree(block(tree));
        } catch (YamlEngineException e) {
            throw new HttpRefusal(HttpRefusal.UNUSABLE, "refusals.rigYaml", nameOf(file), oneLine(e));
        }
    }

    private static String nameOf(Path file) {
        return String.valueOf(file.getFileName());
    }

    private static String oneLine(YamlEngineException e) {
        return String.valueOf(e.getMessage()).replace('\n', ' ');
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> block(Object value) {
        if (value instanceof Map<?, ?> map && map.keySet().stream().allMatch(String.class::isInstance)) {
            return new LinkedHashMap<>((Map<String, Object>) map);
        }
        return new LinkedHashMap<>();
    }

    Map<String, Object> tree() {
        return top;
    }

    /** Returns a block; empty if there is none. */
    Map<String, Object> block(String... path) {
        Map<String, Object> at = top;
        for (String key : path) {
            Object inner = at.get(key);
            at = inner == null ? new LinkedHashMap<>() : block(inner);
        }
        return at;
    }

    /** Returns the text at a path, or null. */
    @Nullable
    String text(String... path) {
        Object value = block(java.util.Arrays.copyOf(path, path.length - 1)).get(path[path.length - 1]);
        return value instanceof String text ? text : null;
    }

    /** Puts a block in place of the one of this name; an empty one takes it out. */
    RigTree with(String name, Map<String, Object> block) {
        Map<String, Object> tree = new LinkedHashMap<>(top);
        if (block.isEmpty()) {
            tree.remove(name);
        } else {
            tree.put(name, block);
        }
        return new RigTree(tree);
    }

    /** Replaces the blocks of these names and leaves the others. */
    RigTree with(Map<String, Object> blocks) {
        RigTree tree = this;
        for (Map.Entry<String, Object> each : blocks.entrySet()) {
            tree = tree.with(each.getKey(), block(each.getValue()));
        }
        return tree;
    }

    /** The file's text, blocks in the order of the documentation. */
    String yaml() {
        Map<String, Object> ordered = new LinkedHashMap<>();
        for (String key : List.of("rig", "rows", "products", "columns", "prescription", "log", "job")) {
            if (top.containsKey(key)) {
                ordered.put(key, top.get(key));
            }
        }
        top.forEach(ordered::putIfAbsent);
        DumpSettings settings = DumpSettings.builder()
                .setDefaultFlowStyle(FlowStyle.BLOCK)
                .setWidth(200)
                .setSchema(new FailsafeSchema())
                .build();
        return "# Written by the workbench; read by every command. Each measure carries its unit.\n"
                + new Dump(settings).dumpToString(ordered);
    }
}
