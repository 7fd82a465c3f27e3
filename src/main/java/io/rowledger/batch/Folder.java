package io.rowledger.batch;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.MapLog;
import io.rowledger.results.ResultFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A folder as it lies on the disk: its logs, its files by what their names say they are, the folders in it that matter.
 *
 * @param path where it is
 * @param name below the top, {@code /} between folders; the top's own name for the top
 * @param logs its logs, by name
 * @param setup rig, boundary, prescription and keep-out files; more than one of a kind is the user's to settle
 * @param others names of files that are none of these
 * @param below folders in it that hold logs somewhere, by name, and those that can't be read
 * @param problem why it can't be read, or null
 */
record Folder(
        Path path,
        String name,
        List<Path> logs,
        Map<Role, List<Path>> setup,
        List<String> others,
        List<Folder> below,
        @Nullable UnusableInputException problem) {
    /** Files that only this program writes: a folder with one of them holds results, and its tables are no logs. */
    private static final List<String> RESULTS = Stream.of(
                    ResultFile.SUMMARY, ResultFile.BATCH, ResultFile.SEASON, ResultFile.COMPARISON)
            .map(ResultFile::fileName)
            .toList();

    private static final List<String> RIGS = List.of("yaml", "yml");
    private static final List<String> MAPS = List.of("geojson", "json", "kml", "kmz", "shp", "zip", "gpkg");
    private static final List<String> SHAPEFILE_PARTS = List.of("dbf", "shx", "prj", "cpg", "sbn", "sbx", "qpj");

    /** What a file beside the logs is for. */
    enum Role {
        RIG("rig", "--rig"),
        BOUNDARY("boundary", "--boundary"),
        PRESCRIPTION("prescription", "--prescription"),
        KEEP_OUT("keepout", "--keep-out");

        private final String plain;
        private final String option;

        Role(String plain, String option) {
            this.plain = plain;
            this.option = option;
        }

        /** Its word in a message. */
        String word() {
            return option.substring(2);
        }
    }

    /**
     * Looks through a folder.
     *
     * @param leftOut a folder that is not looked into: that of the results
     * @throws UnusableInputException where a folder can't be read
     */
    static Folder of(Path top, Path leftOut) {
        return of(top, String.valueOf(top.toAbsolutePath().normalize().getFileName()), true, leftOut);
    }

    private static Folder of(Path path, String name, boolean top, Path leftOut) {
        List<Path> logs = new ArrayList<>();
        Map<Role, List<Path>> setup = new TreeMap<>();
        List<String> others = new ArrayList<>();
        List<Folder> below = new ArrayList<>();
        List<Path> maps = new ArrayList<>();
        boolean taskData = LogForms.holdsTaskData(path);
        if (taskData) {
            logs.add(path);
        }
        for (Path entry : entries(path)) {
            String file = String.valueOf(entry.getFileName());
            Role role = role(file);
            if (file.startsWith(".") || file.startsWith("~$") || file.equals("__MACOSX") || isSame(entry, leftOut)) {
                continue;
            }
            if (role != null && Files.isRegularFile(entry)) {
                setup.computeIfAbsent(role, key -> new ArrayList<>()).add(entry);
            } else if (LogForms.isLog(entry)) {
                logs.add(entry);
            } else if (Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS)) {
                if (!holdsResults(entry)) {
                    below.add(inner(entry, top ? file : name + "/" + file, leftOut));
                }
            } else if (isMap(file)) {
                maps.add(entry);
            } else if (!isPartOfMap(path, file) && !(taskData && LogForms.isPartOfTaskData(file))) {
                others.add(file);
            }
        }
        // Beside another log a map with rates is more likely a prescription than the same work once more.
        boolean alone = logs.isEmpty();
        for (Path map : maps) {
            if (alone && MapLog.is(map)) {
                logs.add(map);
            } else {
                others.add(String.valueOf(map.getFileName()));
            }
        }
        others.sort(Comparator.naturalOrder());
        below.removeIf(inner -> !inner.isOfUse());
        return new Folder(path, name, logs, setup, others, below, null);
    }

    /** One that can't be read is no reason to leave the others undone. */
    private static Folder inner(Path path, String name, Path leftOut) {
        try {
            return of(path, name, false, leftOut);
        } catch (UnusableInputException e) {
            return new Folder(path, name, List.of(), Map.of(), List.of(), List.of(), e);
        }
    }

    private boolean isOfUse() {
        return problem != null || !logs.isEmpty() || !below.isEmpty();
    }

    /** This folder and those below it that hold logs themselves. */
    List<Folder> logFolders() {
        List<Folder> all = new ArrayList<>();
        if (!logs.isEmpty()) {
            all.add(this);
        }
        below.forEach(inner -> all.addAll(inner.logFolders()));
        return all;
    }

    private static List<Path> entries(Path folder) {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.sorted((a, b) -> a.toString().compareTo(b.toString()))
                    .toList();
        } catch (IOException e) {
            throw UnusableInputException.found("a folder that can't be read (" + e.getMessage() + ")")
                    .inFile(folder.toString())
                    .expected("a folder that may be read")
                    .hint("give yourself leave to read it");
        }
    }

    private static boolean isSame(Path entry, Path leftOut) {
        return entry.toAbsolutePath()
                .normalize()
                .equals(leftOut.toAbsolutePath().normalize());
    }

    private static boolean holdsResults(Path folder) {
        return RESULTS.stream().anyMatch(file -> Files.exists(folder.resolve(file)));
    }

    /** By the name alone, ignoring case, spaces, underscores, hyphens and a plural: {@code Keep_Outs.kml}. */
    private static @Nullable Role role(String file) {
        int dot = file.lastIndexOf('.');
        String end = file.substring(dot + 1).toLowerCase(Locale.ROOT);
        String stem = plain(dot < 0 ? "" : file.substring(0, dot));
        for (Role role : Role.values()) {
            if ((stem.equals(role.plain) || stem.equals(role.plain + "s"))
                    && (role == Role.RIG ? RIGS : MAPS).contains(end)) {
                return role;
            }
        }
        return null;
    }

    private static boolean isMap(String file) {
        return MAPS.contains(file.substring(file.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
    }

    private static boolean isPartOfMap(Path folder, String file) {
        int dot = file.lastIndexOf('.');
        String shapes = dot > 0 ? file.substring(0, dot) + ".shp" : "";
        return dot > 0
                && SHAPEFILE_PARTS.contains(file.substring(dot + 1).toLowerCase(Locale.ROOT))
                && (role(shapes) != null || Files.isRegularFile(folder.resolve(shapes)));
    }

    private static String plain(String stem) {
        return stem.toLowerCase(Locale.ROOT).replaceAll("[ _-]", "");
    }
}
