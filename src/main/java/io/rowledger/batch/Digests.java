package io.rowledger.batch;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** SHA-256 of files as they lie on the disk, lower-case hex. */
final class Digests {
    private static final int BUFFER = 1 << 16;

    private Digests() {}

    /**
     * Of a file; of a folder, that of the names and digests of all files in it.
     *
     * @throws UnusableInputException where it can't be read
     */
    static String of(Path path) {
        MessageDigest digest = sha256();
        try {
            if (Files.isDirectory(path)) {
                for (Path file : files(path)) {
                    String line = path.relativize(file) + "\0" + of(file) + "\n";
                    digest.update(line.getBytes(StandardCharsets.UTF_8));
                }
            } else {
                addAll(path, digest);
            }
        } catch (IOException e) {
            throw UnusableInputException.found("a file that can't be read (" + e.getMessage() + ")")
                    .inFile(path.toString())
                    .expected("a file that may be read")
                    .hint("give yourself leave to read it, or copy it again");
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }

    private static void addAll(Path file, MessageDigest digest) throws IOException {
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
