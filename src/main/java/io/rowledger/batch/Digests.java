package io.rowledger.batch;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import java.util.stream.Stream;

/** SHA-256 of files as they lie on the disk, lower-case hex. */
final class Digests {
    private Digests() {}

    /**
     * Of a file; of a folder, that of the names and digests of all files in it.
     *
     * @throws UnusableInputException where it can't be read
     */
    static String of(Path path) {
        try {
            if (!Files.isDirectory(path)) {
                return Sha256.of(path);
            }
            MessageDigest digest = Sha256.digest();
            for (Path file : files(path)) {
                String line = path.relativize(file) + "\0" + of(file) + "\n";
                digest.update(line.getBytes(StandardCharsets.UTF_8));
            }
            return Sha256.hex(digest);
        } catch (IOException e) {
            throw UnusableInputException.found("a file that can't be read (" + e.getMessage() + ")")
                    .inFile(path.toString())
                    .expected("a file that may be read")
                    .hint("give yourself leave to read it, or copy it again");
        }
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        }
    }
}
