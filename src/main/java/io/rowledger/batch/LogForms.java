package io.rowledger.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;
import java.util.zip.ZipFile;

/**
 * What in a folder is taken for a log. A form of log is one line of the list; it may be a folder, which is then not
 * looked into.
 */
final class LogForms {
    private static final List<Predicate<Path>> FORMS = List.of(
            file(".csv"),
            file(".tsv"),
            file(".csv.gz"),
            file(".tsv.gz"),
            file(".xlsx"),
            file(".zip").and(LogForms::holdsText),
            LogForms::isTaskFolder);

    /** The standard's name for task data and the folder it lies in (ISO 11783-10). */
    private static final String TASK_DATA = "taskdata";

    private LogForms() {}

    /** True for an entry that {@code LogReader} is to read as one log. */
    static boolean isLog(Path entry) {
        return FORMS.stream().anyMatch(form -> form.test(entry));
    }

    /** True for a folder with task data in it, which as a whole is one log. */
    static boolean holdsTaskData(Path folder) {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.anyMatch(
                    entry -> lower(String.valueOf(entry.getFileName())).equals(TASK_DATA + ".xml")
                            && Files.isRegularFile(entry));
        } catch (IOException e) {
            return false;
        }
    }

    /** Under another name such a folder is a field's, with the rig file beside the task data perhaps. */
    private static boolean isTaskFolder(Path entry) {
        return lower(String.valueOf(entry.getFileName())).equals(TASK_DATA)
                && Files.isDirectory(entry, LinkOption.NOFOLLOW_LINKS)
                && holdsTaskData(entry);
    }

    /** True for the files of task data beside a TASKDATA.XML. */
    static boolean isPartOfTaskData(String file) {
        String name = lower(file);
        return name.endsWith(".xml") || (name.startsWith("tlg") && name.endsWith(".bin"));
    }

    private static Predicate<Path> file(String end) {
        return entry -> lower(String.valueOf(entry.getFileName())).endsWith(end) && Files.isRegularFile(entry);
    }

    /** A zip without text is a map or pictures. One that can't be opened is taken for a log, so that its damage is said. */
    private static boolean holdsText(Path zip) {
        try (ZipFile file = new ZipFile(zip.toFile())) {
            List<String> names =
                    file.stream().map(entry -> lower(entry.getName())).toList();
            // A map's zip often has a text that says where it is from.
            boolean map = names.stream().anyMatch(name -> name.endsWith(".shp"));
            return names.stream().anyMatch(name -> isText(name) && !(map && name.endsWith(".txt")));
        } catch (IOException | IllegalArgumentException e) {
            return true;
        }
    }

    private static boolean isText(String name) {
        return name.endsWith(".csv")
                || name.endsWith(".tsv")
                || name.endsWith(".txt")
                || name.equals(TASK_DATA + ".xml")
                || name.endsWith("/" + TASK_DATA + ".xml");
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT);
    }
}
