package io.rowledger.site;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A page of {@code src/site/markdown} whose tables are written by the runs that measure them. A table stands between the lines
 * {@code <!-- begin NAME -->} and {@code <!-- end NAME -->}.
 */
public final class SitePage {
    private static final Path FOLDER = Path.of("src/site/markdown");

    private SitePage() {}

    /**
     * Replaces a table.
     *
     * @param page file name without ending
     * @param name of the table
     * @param text the new table, plain text or Markdown
     */
    public static void write(String page, String name, String text) {
        Path file = FOLDER.resolve(page + ".md");
        try {
            Files.writeString(file, replaced(Files.readString(file), name, text));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The page with the table replaced. */
    static String replaced(String page, String name, String text) {
        String begin = "<!-- begin " + name + " -->";
        String end = "<!-- end " + name + " -->";
        int from = page.indexOf(begin);
        int to = page.indexOf(end);
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("no table named " + name);
        }
        return page.substring(0, from + begin.length()) + "\n" + text.strip() + "\n" + page.substring(to);
    }

    /** Text as a block of code, for tables whose columns are set by spaces. */
    public static String code(String text) {
        return "```text\n" + text.strip() + "\n```";
    }
}
