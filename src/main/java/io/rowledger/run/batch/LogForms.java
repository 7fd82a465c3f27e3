package io.rowledger.run.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
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
            file(".zip").and(LogForms::holdsText));

    private LogForms() {}

    /** True for an entry that {@code LogReader} is to read as one log. */
    static boolean isLog(Path entry) {
        return FORMS.stream().anyMatch(form -> form.test(entry));
    }

    /** A log's name without its endings: {@code north.csv.gz} is {@code north}. */
    static String stem(Path log) {
        String name = String.valueOf(log.getFileName());
        String plain = lower(name);
        for (String end : List.of(".csv.gz", ".tsv.gz", ".csv", ".tsv", ".zip")) {
            if (plain.endsWith(end) && plain.length() > end.length()) {
                return name.substring(0, name.length() - end.length());
            }
        }
        return name;
    }

    private static Predicate<Path> file(String end) {
        return entry -> lower(String.valueOf(entry.getFileName())).endsWith(end) && Files.isRegularFile(entry);
    }

    /** A zip without text is a map or pictures. One that can't be opened is taken for a log, so that its damage is said. */
    private static boolean holdsText(Path zip) {
        try (ZipFile file = new ZipFile(zip.toFile())) {
            return file.stream().map(entry -> lower(entry.getName())).anyMatch(LogForms::isText);
        } catch (IOException | IllegalArgumentException e) {
            return true;
        }
    }

    private static boolean isText(String name) {
        return name.endsWith(".csv") || name.endsWith(".tsv") || name.endsWith(".txt");
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT);
    }
}
