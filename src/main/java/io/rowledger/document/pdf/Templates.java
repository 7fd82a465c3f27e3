package io.rowledger.document.pdf;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The templates of a report: the user's own if their folder has the file, else those of the jar.
 *
 * @param folder the user's folder, or null
 */
record Templates(@Nullable Path folder) {
    /** The largest built-in one has 40 kB. */
    private static final int MAX_BYTES = 1 << 20;

    private static final String BUILT_IN = "/report-templates/";

    /** A template: its name in messages, its text, and whether it is the user's own. */
    record Template(String name, String text, boolean own) {}

    Templates {
        if (folder != null && !Files.isDirectory(folder)) {
            throw UnusableInputException.found("no such folder")
                    .inFile(folder.toString())
                    .expected("a folder with report templates")
                    .hint("name the folder that holds pass-review.xhtml or report.css, or leave the option out");
        }
    }

    /** The template of this file name. */
    Template read(String name) {
        if (folder != null) {
            Path own = folder.resolve(name);
            if (Files.exists(own)) {
                return new Template(own.toString(), readOwn(folder, own), true);
            }
        }
        return new Template(name, readBuiltIn(name), false);
    }

    /** True where the user's folder or the jar has a file of this name; a path is no name. */
    boolean has(String name) {
        boolean plain = !name.isEmpty() && name.indexOf('/') < 0 && name.indexOf('\\') < 0 && name.indexOf(':') < 0;
        return plain
                && !name.equals("..")
                && ((folder != null && Files.isRegularFile(folder.resolve(name)))
                        || Templates.class.getResource(BUILT_IN + name) != null);
    }

    private static String readOwn(Path folder, Path file) {
        try {
            if (!file.toRealPath().startsWith(folder.toRealPath())) {
                throw UnusableInputException.found("a link to a file outside the folder of templates")
                        .inFile(file.toString())
                        .expected("a template in that folder")
                        .hint("copy the file itself into the folder");
            }
            byte[] bytes = RegularFile.bytes(file, MAX_BYTES, "a template in UTF-8");
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw UnusableInputException.found("text that is not UTF-8")
                    .inFile(file.toString())
                    .expected("a template in UTF-8")
                    .hint("save the file as UTF-8");
        } catch (IOException e) {
            throw UnusableInputException.found("a template that can't be read (" + e + ")")
                    .inFile(file.toString())
                    .hint("check that the file is readable");
        }
    }

    private static String readBuiltIn(String name) {
        try (InputStream in = Templates.class.getResourceAsStream(BUILT_IN + name)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks the template " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("reading " + name, e);
        }
    }
}
