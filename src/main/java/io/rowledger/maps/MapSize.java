package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The largest map file that is read, and the messages for files that are too large or unreadable. */
final class MapSize {
    /** Largest map file, packed or unpacked, bytes: a map of one field is far smaller, and memory holds it. */
    static final long MAX_BYTES = 64L << 20;

    private MapSize() {}

    /**
     * Refuses files above {@link #MAX_BYTES}.
     *
     * @throws UnusableInputException for those, and for files that can't be read
     */
    static void require(Path file) {
        try {
            if (Files.size(file) > MAX_BYTES) {
                throw tooLarge(file.toString());
            }
        } catch (IOException e) {
            throw unreadable(file.toString(), e);
        }
    }

    static UnusableInputException tooLarge(String file) {
        return UnusableInputException.found("a map of more than " + (MAX_BYTES >> 20) + " MB")
                .inFile(file)
                .expected("the map of one field")
                .hint("export this field alone");
    }

    static UnusableInputException unreadable(String file, IOException e) {
        return UnusableInputException.found("a map file that can't be read (" + e.getMessage() + ")")
                .inFile(file)
                .expected("a readable file")
                .hint("check the path and the file's permissions");
    }
}
