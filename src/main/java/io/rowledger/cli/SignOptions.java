package io.rowledger.cli;

import io.rowledger.document.pdf.PdfSigner;
import io.rowledger.document.pdf.SigningKey;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How the record is signed. A password is never part of the call, where other users of the machine could read it. */
final class SignOptions {
    static final String VARIABLE = "ROWLEDGER_SIGN_PASSWORD";

    @Option(
            names = "--sign",
            paramLabel = "KEY.p12",
            description = "Signs the nitrogen record with the key in this PKCS#12 file.")
    private @Nullable Path key;

    @Option(
            names = "--sign-password-file",
            paramLabel = "FILE",
            description = "Its first line is the password of KEY.p12 (else the variable " + VARIABLE + ").")
    private @Nullable Path passwordFile;

    @Option(
            names = "--sign-time",
            paramLabel = "TIME",
            description =
                    "Time in the signature, ISO 8601 with zone (default: now). Give it to make the same file again.")
    private @Nullable String time;

    /**
     * What signs, or null where nothing is to be signed.
     *
     * @param environment the variables of the environment
     * @throws UnusableInputException where key, password or time can't be used
     */
    @Nullable
    PdfSigner signer(Map<String, String> environment) {
        if (key == null) {
            if (passwordFile != null || time != null) {
                throw UnusableInputException.found("nothing to sign with")
                        .atColumn("--sign")
                        .expected("a PKCS#12 file")
                        .hint("add --sign KEY.p12, or leave out the other signing options");
            }
            return null;
        }
        Instant at = time == null ? Instant.now().truncatedTo(ChronoUnit.SECONDS) : parsed(time);
        return new PdfSigner(SigningKey.read(key, password(environment), at), at);
    }

    private static Instant parsed(String time) {
        try {
            return OffsetDateTime.parse(time).toInstant().truncatedTo(ChronoUnit.SECONDS);
        } catch (DateTimeParseException e) {
            throw UnusableInputException.found("'" + time + "'")
                    .atColumn("--sign-time")
                    .expected("a time with its zone, such as 2026-06-03T07:30:00-05:00")
                    .hint("correct the time, or leave --sign-time out to state the present");
        }
    }

    private char[] password(Map<String, String> environment) {
        if (passwordFile != null) {
            try {
                List<String> lines = Files.readAllLines(passwordFile);
                return (lines.isEmpty() ? "" : lines.get(0)).toCharArray();
            } catch (IOException e) {
                throw UnusableInputException.found(
                                "a file that can't be read (" + e.getClass().getSimpleName() + ")")
                        .inFile(passwordFile.toString())
                        .expected("a text file in UTF-8 with the password in its first line")
                        .hint("correct the name after --sign-password-file");
            }
        }
        String password = environment.get(VARIABLE);
        if (password == null) {
            throw UnusableInputException.found("no password for " + key)
                    .atColumn("--sign")
                    .expected("one in a file or in the variable " + VARIABLE)
                    .hint("add --sign-password-file FILE, or set the variable; never put a password into the call");
        }
        return password.toCharArray();
    }
}
