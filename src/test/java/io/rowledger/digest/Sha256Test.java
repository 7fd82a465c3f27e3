package io.rowledger.digest;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class Sha256Test {
    /** NIST, FIPS 180-4, example values for SHA-256 of one block; and the digest of no bytes, from memory. */
    @Test
    void digests_are_those_of_the_standard(@TempDir Path folder) throws IOException {
        String abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assertEquals(abc, Sha256.of("abc".getBytes(StandardCharsets.US_ASCII)));
        assertEquals(abc, Sha256.of(Files.writeString(folder.resolve("abc"), "abc")));
        assertEquals("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855", Sha256.of(new byte[0]));
    }
}
