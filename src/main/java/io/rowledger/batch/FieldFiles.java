package io.rowledger.batch;

import io.rowledger.batch.Folder.Role;
import io.rowledger.log.source.LogFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The files of one field of a season's folder, by the rules of a batch: what is there, complete or not.
 *
 * @param name folder below the season's, {@code /} between folders
 * @param folder where it is
 * @param logs its logs, by name
 * @param rig the nearest rig file, or null
 * @param boundary the nearest boundary, or null
 * @param prescription the nearest prescription, or null
 * @param keepOut the nearest map of places to keep away from, or null
 * @param others names of files that are none of these
 */
public record FieldFiles(
        String name,
        Path folder,
        List<Path> logs,
        @Nullable Path rig,
        @Nullable Path boundary,
        @Nullable Path prescription,
        @Nullable Path keepOut,
        List<String> others) {
    /** Copies the lists. */
    public FieldFiles {
        logs = List.copyOf(logs);
        others = List.copyOf(others);
    }

    /**
     * The fields of a season's folder that hold logs, by name.
     *
     * @param leftOut the folder of the results, not looked into
     * @throws io.rowledger.finding.UnusableInputException where the folder can't be read
     */
    public static List<FieldFiles> of(Path season, Path leftOut) {
        List<FieldFiles> fields = new ArrayList<>();
        collect(Folder.of(season, leftOut), List.of(), fields);
        return fields;
    }

    /**
     * The files that a log of this field consists of: itself, with the other parts of a shapefile; of task data in the field's own
     * folder, every file of it.
     */
    public List<Path> parts(Path log) throws IOException {
        if (!log.equals(folder)) {
            List<Path> parts = new ArrayList<>(List.of(log));
            parts.addAll(LogFile.parts(log));
            return parts;
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> LogForms.isPartOfTaskData(String.valueOf(file.getFileName())))
                    .sorted()
                    .toList();
        }
    }

    private static void collect(Folder folder, List<Folder> above, List<FieldFiles> fields) {
        List<Folder> chain = new ArrayList<>(above);
        chain.add(folder);
        if (!folder.logs().isEmpty()) {
            fields.add(field(folder, chain));
        }
        folder.below().forEach(inner -> collect(inner, chain, fields));
    }

    private static FieldFiles field(Folder folder, List<Folder> chain) {
        return new FieldFiles(
                folder.name(),
                folder.path(),
                folder.logs(),
                nearest(chain, Role.RIG),
                nearest(chain, Role.BOUNDARY),
                nearest(chain, Role.PRESCRIPTION),
                nearest(chain, Role.KEEP_OUT),
                folder.others());
    }

    private static @Nullable Path nearest(List<Folder> chain, Role role) {
        for (int i = chain.size() - 1; i >= 0; i--) {
            List<Path> files = chain.get(i).setup().get(role);
            if (files != null && Files.isRegularFile(files.get(0))) {
                return files.get(0);
            }
        }
        return null;
    }
}
