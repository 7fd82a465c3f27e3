package io.rowledger.finding;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Files that a person hands in. Only regular files are read: a pipe or a device ({@code /dev/zero}) may never end, and
 * several readers look at a file more than once.
 */
public final class RegularFile {
    private RegularFile() {}

    /**
     * Refuses pipes, sockets and devices. Folders and missing files pass, since each reader has its own words for them.
     *
     * @param expected what should stand there instead, as a clause
     * @throws UnusableInputException for anything else that is no regular file
     */
    public static void requireRegular(Path path, String expected) {
        if (Files.exists(path) && !Files.isRegularFile(path) && !Files.isDirectory(path)) {
            throw UnusableInputException.found("a pipe or a device")
                    .inFile(path.toString())
                    .expected(expected)
                    .hint("save what it holds as a file first, and name that file");
        }
    }

    /**
     * Returns all bytes of a small file. A file that grows while it is read is refused as well.
     *
     * @param maxBytes size above which it is refused
     * @param expected what should stand there, as a clause
     * @throws IOException where it can't be read
     * @throws UnusableInputException where it is larger, or no regular file
     */
    public static byte[] bytes(Path path, int maxBytes, String expected) throws IOException {
        requireRegular(path, expected);
        try (InputStream in = Files.newInputStream(path)) {
            byte[] bytes = in.readNBytes(maxBytes + 1);
            if (bytes.length > maxBytes) {
                throw UnusableInputException.found("a file of more than " + size(maxBytes))
                        .inFile(path.toString())
                        .expected(expected)
                        .hint("this looks like another file; check the name");
            }
            return bytes;
        }
    }

    /** Why a file couldn't be read or written, in the system's words: {@code No space left on device}. */
    public static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "access denied";
        }
        String reason = e instanceof FileSystemException fs ? fs.getReason() : e.getMessage();
        return reason == null ? e.getClass().getSimpleName().replace("Exception", "") : reason;
    }

    /** The last part of a path of any system: folders say nothing to a reader and don't fit a column. */
    public static String name(String path) {
        return path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
    }

    private static String size(int bytes) {
        return bytes >= 1 << 20 ? (bytes >> 20) + " MB" : (bytes >> 10) + " kB";
    }
}
