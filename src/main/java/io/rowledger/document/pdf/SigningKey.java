package io.rowledger.document.pdf;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.security.cert.X509Certificate;
import java.security.interfaces.ECPublicKey;
import java.security.interfaces.RSAPublicKey;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Date;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The user's key to sign with, RSA or EC.
 *
 * @param key the private key
 * @param chain its certificate first, then those of its issuers as far as the file has them
 */
public record SigningKey(PrivateKey key, List<X509Certificate> chain) {
    private static final Set<String> KINDS = Set.of("RSA", "EC");
    /** A key with a long chain of certificates has some 20 kB. */
    private static final int MAX_BYTES = 1 << 20;

    private static final int MIN_RSA_BITS = 2048;
    private static final int MIN_EC_BITS = 256;
    private static final int DIGITAL_SIGNATURE = 0;
    private static final int NON_REPUDIATION = 1;

    /** Keeps its own list. */
    public SigningKey {
        chain = List.copyOf(chain);
    }

    X509Certificate certificate() {
        return chain.get(0);
    }

    /**
     * Reads the only key of a PKCS#12 file (RFC 7292).
     *
     * @param at the moment of signing, in which the certificate must be valid
     * @throws UnusableInputException where the file can't be read or opened with this password, or its key can't sign then
     */
    public static SigningKey read(Path file, char[] password, Instant at) {
        byte[] bytes = bytes(file);
        if (new String(password).chars().anyMatch(c -> c < ' ' || c > '~')) {
            return beyondAscii(bytes, password, file, at);
        }
        KeyStore store = open(bytes, password, file);
        try {
            List<String> keys = new ArrayList<>();
            for (String alias : Collections.list(store.aliases())) {
                if (store.isKeyEntry(alias)) {
                    keys.add(alias);
                }
            }
            if (keys.size() != 1) {
                throw keyCount(keys.size(), file);
            }
            SigningKey key = of(store.getKey(keys.get(0), password), store.getCertificateChain(keys.get(0)), file);
            key.check(file, at);
            return key;
        } catch (UnrecoverableKeyException e) {
            throw wrongPassword(file);
        } catch (GeneralSecurityException e) {
            throw found("a key this program can't use (" + e.getMessage() + ")", file)
                    .expected("an RSA or EC key with its certificate")
                    .hint("sign with another key, or leave --sign out");
        }
    }

    /** The same for a password that Java 17 does not take. */
    private static SigningKey beyondAscii(byte[] bytes, char[] password, Path file, Instant at) {
        try {
            UnicodePkcs12.Contents contents = UnicodePkcs12.open(bytes, password);
            if (contents.keys().size() != 1) {
                throw keyCount(contents.keys().size(), file);
            }
            PrivateKey only = contents.keys().get(0);
            SigningKey key = of(only, contents.chain(only).toArray(new Certificate[0]), file);
            key.check(file, at);
            return key;
        } catch (DerReader.MalformedDerException e) {
            throw found("no PKCS#12 file that a password beyond ASCII opens (" + e.getMessage() + ")", file)
                    .expected("a .p12 or .pfx file encrypted by PBES2 with AES (RFC 8018)")
                    .hint("export the key again with AES-256, or with a password of plain letters and digits");
        } catch (GeneralSecurityException e) {
            throw wrongPassword(file);
        }
    }

    private static UnusableInputException keyCount(int keys, Path file) {
        return found(keys == 0 ? "no private key" : keys + " private keys", file)
                .expected("one private key with its certificate")
                .hint("export the key together with its certificate into a PKCS#12 file of its own");
    }

    private static byte[] bytes(Path file) {
        try {
            return RegularFile.bytes(file, MAX_BYTES, "a PKCS#12 file");
        } catch (NoSuchFileException e) {
            throw found("no such file", file).expected("a PKCS#12 file").hint("correct the name after --sign");
        } catch (IOException e) {
            throw found("a file that can't be read (" + e.getClass().getSimpleName() + ")", file)
                    .expected("a PKCS#12 file")
                    .hint("check that it is a file you may read");
        }
    }

    private static KeyStore open(byte[] bytes, char[] password, Path file) {
        try {
            KeyStore store = KeyStore.getInstance("PKCS12");
            store.load(new ByteArrayInputStream(bytes), password);
            return store;
        } catch (IOException e) {
            if (e.getCause() instanceof UnrecoverableKeyException) {
                throw wrongPassword(file);
            }
            throw noStore(file);
        } catch (GeneralSecurityException e) {
            throw noStore(file);
        }
    }

    private static SigningKey of(@Nullable Object key, Certificate @Nullable [] chain, Path file) {
        List<X509Certificate> certificates = new ArrayList<>();
        for (Certificate certificate : chain == null ? new Certificate[0] : chain) {
            if (certificate instanceof X509Certificate x509) {
                certificates.add(x509);
            }
        }
        if (!(key instanceof PrivateKey secret) || certificates.isEmpty()) {
            throw found("a key without its certificate", file)
                    .expected("one private key with its certificate")
                    .hint("export the key together with its certificate");
        }
        return new SigningKey(secret, certificates);
    }

    private void check(Path file, Instant at) {
        if (!KINDS.contains(key.getAlgorithm())) {
            throw found("a key of kind " + key.getAlgorithm(), file)
                    .expected("an RSA or EC key")
                    .hint("sign with another key, or leave --sign out");
        }
        checkStrength(file);
        try {
            certificate().checkValidity(Date.from(at));
        } catch (CertificateExpiredException e) {
            throw found(
                            "a certificate that ran out at "
                                    + certificate().getNotAfter().toInstant(),
                            file)
                    .expected("one that is valid when it signs, at " + at)
                    .hint("get a new certificate for the key, or leave --sign out");
        } catch (CertificateNotYetValidException e) {
            throw found(
                            "a certificate that is not valid before "
                                    + certificate().getNotBefore().toInstant(),
                            file)
                    .expected("one that is valid when it signs, at " + at)
                    .hint("wait until then or correct the machine's clock");
        }
        boolean[] usage = certificate().getKeyUsage();
        if (usage != null && !usage[DIGITAL_SIGNATURE] && !usage[NON_REPUDIATION]) {
            throw found("a certificate that is not for signing", file)
                    .expected("the key usage digital signature or non-repudiation (RFC 5280, 4.2.1.3)")
                    .hint("sign with another key, or leave --sign out");
        }
    }

    /** NIST SP 800-57 part 1 rev. 5, table 2: RSA of 2048 bits resists 2^112 steps, EC of 256 bits 2^128. */
    private void checkStrength(Path file) {
        PublicKey open = certificate().getPublicKey();
        int bits = 0;
        int least = 0;
        if (open instanceof RSAPublicKey rsa) {
            bits = rsa.getModulus().bitLength();
            least = MIN_RSA_BITS;
        } else if (open instanceof ECPublicKey ec) {
            bits = ec.getParams().getCurve().getField().getFieldSize();
            least = MIN_EC_BITS;
        }
        if (bits < least) {
            throw found("an " + key.getAlgorithm() + " key of " + bits + " bits, which others can forge", file)
                    .expected("RSA of " + MIN_RSA_BITS + " bits or more, or EC of " + MIN_EC_BITS + " bits or more")
                    .hint("sign with a longer key, or leave --sign out");
        }
    }

    private static UnusableInputException wrongPassword(Path file) {
        return found("a file that this password does not open", file)
                .expected("the password the PKCS#12 file was made with")
                .hint("correct the file after --sign-password-file (its first line counts) or ROWLEDGER_SIGN_PASSWORD");
    }

    private static UnusableInputException noStore(Path file) {
        return found("no PKCS#12 file, or a damaged one", file)
                .expected("a .p12 or .pfx file with a key and its certificate")
                .hint("export the key as PKCS#12");
    }

    private static UnusableInputException found(String what, Path file) {
        return UnusableInputException.found(what).inFile(file.toString());
    }
}
