package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.PdfSigner;
import io.rowledger.document.pdf.TestKeys;
import io.rowledger.finding.UnusableInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class SignOptionsTest {
    private static final String TIME = "2026-06-03T07:30:00-05:00";

    @TempDir
    private Path folder;

    private static PdfSigner signer(Map<String, String> environment, Object... words) {
        String[] args = new String[words.length];
        for (int i = 0; i < words.length; i++) {
            args[i] = words[i].toString();
        }
        return CommandLine.populateCommand(new SignOptions(), args).signer(environment);
    }

    private static void refused(String words, Map<String, String> environment, Object... args) {
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> signer(environment, args));
        assertTrue(e.getMessage().contains(words), e.getMessage());
        assertTrue(e.getMessage().contains("Hint:"), e.getMessage());
    }

    @Test
    void the_password_comes_from_a_file_or_the_environment() throws Exception {
        Path key = TestKeys.file(folder, "secp256r1");
        Path password = Files.writeString(folder.resolve("password"), TestKeys.PASSWORD + "\r\nnot this");
        PdfSigner signer = signer(Map.of(), "--sign", key, "--sign-password-file", password, "--sign-time", TIME);
        assertNotNull(signer);
        assertEquals(Instant.parse("2026-06-03T12:30:00Z"), signer.at());
        assertEquals("EC", signer.key().key().getAlgorithm());
        assertNotNull(signer(Map.of("ROWLEDGER_SIGN_PASSWORD", TestKeys.PASSWORD), "--sign", key, "--sign-time", TIME));
        assertNull(signer(Map.of()), "nothing is signed unasked");
    }

    @Test
    void what_cannot_sign_is_refused_before_anything_is_analyzed() throws Exception {
        Path key = TestKeys.file(folder, "secp256r1");
        Path wrong = Files.writeString(folder.resolve("password"), "guess");
        refused("no password for", Map.of(), "--sign", key);
        refused("this password does not open", Map.of(), "--sign", key, "--sign-password-file", wrong);
        refused("a file that can't be read", Map.of(), "--sign", key, "--sign-password-file", folder.resolve("none"));
        refused(
                "ran out",
                Map.of(SignOptions.VARIABLE, TestKeys.PASSWORD),
                "--sign",
                key,
                "--sign-time",
                "2027-03-01T00:00Z");
        refused(
                "'yesterday'",
                Map.of(SignOptions.VARIABLE, TestKeys.PASSWORD),
                "--sign",
                key,
                "--sign-time",
                "yesterday");
        refused("nothing to sign with", Map.of(), "--sign-password-file", wrong);
        Calls call = Calls.of(
                "report",
                folder.resolve("no-log.csv"),
                "--rig",
                folder.resolve("no-rig.yaml"),
                "--sign",
                folder.resolve("no.p12"),
                "--sign-password-file",
                wrong);
        assertEquals(2, call.status());
        assertTrue(call.err().contains("no.p12: found no such file"), call.err());
    }

    @Test
    void a_password_in_the_call_is_no_option() {
        Calls call = Calls.of("report", "log.csv", "--rig", "rig.yaml", "--sign", "k.p12", "--sign-password", "secret");
        assertEquals(2, call.status());
        assertTrue(call.err().contains("found \"--sign-password\"; expected an option"), call.err());
    }
}
