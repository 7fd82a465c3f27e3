package io.rowledger.cli;

import io.rowledger.document.pdf.PdfSigner;
import io.rowledger.document.pdf.SigningKey;
import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How the record is signed. A password is never part of the call, where other users of the machine could read it. */
final class SignOptions {
    static final String VARIABLE = "ROWLEDGER_SIGN_PASSWORD";

    private static final String EXPECTED = "a text file in UTF-8 with the password in its first line";
    private static final int MAX_PASSWORD_BYTES = 1 << 16;
    /** The standard of the signature is of 2002 (RFC 3369); a certificate runs for decades at most. */
    private static final int MIN_YEAR = 2002;

    private static final int MAX_YEAR = 2199;

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
            OffsetDateTime at = OffsetDateTime.parse(time);
            if (at.getYear() < MIN_YEAR || at.getYear() > MAX_YEAR) {
                throw UnusableInputException.found("'" + time + "'")
                        .atColumn("--sign-time")
                        .expected("a time in the years " + MIN_YEAR + " to " + MAX_YEAR)
                        .hint("correct the year, or leave --sign-time out to state the present");
            }
            return at.toInstant().truncatedTo(ChronoUnit.SECONDS);
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
                byte[] bytes = RegularFile.bytes(passwordFile, MAX_PASSWORD_BYTES, EXPECTED);
                String text = StandardCharsets.UTF_8
                        .newDecoder()
                        .decode(ByteBuffer.wrap(bytes))
                        .toString();
                // Some editors put a byte order mark first.
                return (text.startsWith("\ufeff") ? text.substring(1) : text).split("\\R", 2)[0].toCharArray();
            } catch (IOException e) {
                throw UnusableInputException.found(
                                "a file that can't be read (" + e.getClass().getSimpleName() + ")")
                        .inFile(passwordFile.toString())
                        .expected(EXPECTED)
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
        if (password.indexOf('\ufffd') >= 0) {
            throw UnusableInputException.found("a password with letters that this session can't hold")
                    .atColumn(VARIABLE)
                    .expected("a password in the session's language setting")
                    .hint("write it into a file in UTF-8 and name that with --sign-password-file");
        }
        return password.toCharArray();
    }
}
