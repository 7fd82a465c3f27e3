package io.rowledger.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Bars that were entered before: a folder of rig files without a job, one for each bar. The columns of its console go with
 * the bar, since the next field's log comes from the same one.
 */
final class SavedBars {
    static final String FOLDER = "bars";
    private static final List<String> BLOCKS = List.of("rig", "rows", "products", "columns", "log");
    private static final String ENDING = ".yaml";

    private final SeasonFolder folder;

    SavedBars(SeasonFolder folder) {
        this.folder = folder;
    }

    /**
     * A saved bar.
     *
     * @param name of its file, without the ending
     * @param tree its blocks
     */
    record SavedBar(String name, Map<String, Object> tree) {}

    /** All saved bars, and why the other files beside them can't be read. */
    record All(List<SavedBar> bars, List<ProblemText> closed) {}

    All all() throws IOException {
        Path bars = folder.inside(List.of(FOLDER));
        List<SavedBar> all = new ArrayList<>();
        List<ProblemText> closed = new ArrayList<>();
        if (!Files.isDirectory(bars, LinkOption.NOFOLLOW_LINKS)) {
            return new All(all, closed);
        }
        try (Stream<Path> files = Files.list(bars)) {
            for (Path file : files.sorted().toList()) {
                String name = String.valueOf(file.getFileName());
                if (name.endsWith(ENDING) && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                    try {
                        String bar = name.substring(0, name.length() - ENDING.length());
                        all.add(new SavedBar(bar, RigTree.read(file).tree()));
                    } catch (HttpRefusal e) {
                        // A file that somebody else put there hides no other bar.
                        closed.add(e.problem());
                    }
                }
            }
        }
        return new All(all, closed);
    }

    /** Saves the bar of a rig file under its name. */
    void save(RigTree rig) throws IOException {
        String name = rig.text("rig", "name");
        if (name == null || name.isBlank()) {
            return;
        }
        RigTree bar = RigTree.empty();
        for (String block : BLOCKS) {
            bar = bar.with(block, rig.block(block));
        }
        String file = SeasonFolder.requireName(name.strip().replaceAll("[/\\\\:*?\"<>|.]", "-")) + ENDING;
        byte[] text = bar.yaml().getBytes(StandardCharsets.UTF_8);
        Path before = folder.inside(List.of(FOLDER, file));
        if (!Files.isRegularFile(before) || !java.util.Arrays.equals(Files.readAllBytes(before), text)) {
            folder.write(List.of(FOLDER, file), out -> out.write(text));
        }
    }
}
