package io.rowledger.document.pdf;

import io.rowledger.document.pdf.DerReader.MalformedDerException;
import io.rowledger.document.pdf.DerReader.Value;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.AlgorithmParameters;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.crypto.Cipher;
import javax.crypto.EncryptedPrivateKeyInfo;
import javax.crypto.SecretKey;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.PBEParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.jspecify.annotations.Nullable;

/**
 * Keys and certificates of a PKCS#12 file (RFC 7292) whose password has letters beyond ASCII, which the key store of Java 17
 * refuses to open. Reads what is encrypted by PBES2 (RFC 8018, 6.2) with PBKDF2 and AES, as OpenSSL 3 and Java write it; there
 * the password is used in UTF-8.
 */
final class UnicodePkcs12 {
    private static final String DATA = "1.2.840.113549.1.7.1";
    private static final String ENCRYPTED_DATA = "1.2.840.113549.1.7.6";
    private static final String SHROUDED_KEY = "1.2.840.113549.1.12.10.1.2";
    private static final String CERTIFICATE = "1.2.840.113549.1.12.10.1.3";
    private static final int SEQUENCE = 0x30;
    /** Java's own limit for key stores: a higher count would keep the program busy for minutes. */
    private static final int MAX_ITERATIONS = 5_000_000;

    private static final Pattern PBES2 = Pattern.compile("PBEWith(HmacSHA\\d+)AndAES_(128|256)");

    private final char[] password;
    private final List<PrivateKey> keys = new ArrayList<>();
    private final List<X509Certificate> certificates = new ArrayList<>();

    private UnicodePkcs12(char[] password) {
        this.password = password;
    }

    /** What a file holds. */
    record Contents(List<PrivateKey> keys, List<X509Certificate> certificates) {
        /** The certificate of a key first, then its issuers as far as they are there; empty where it lacks. */
        List<X509Certificate> chain(PrivateKey key) throws GeneralSecurityException {
            List<X509Certificate> chain = new ArrayList<>();
            X509Certificate next = null;
            for (X509Certificate one : certificates) {
                if (belongs(key, one)) {
                    next = one;
                }
            }
            while (next != null && !chain.contains(next)) {
                chain.add(next);
                next = issuer(next);
            }
            return chain;
        }

        private @Nullable X509Certificate issuer(X509Certificate of) {
            for (X509Certificate one : certificates) {
                if (one.getSubjectX500Principal().equals(of.getIssuerX500Principal())) {
                    return one;
                }
            }
            return null;
        }

        /** Whether what the key signs is verified by the certificate. */
        private static boolean belongs(PrivateKey key, X509Certificate certificate) throws GeneralSecurityException {
            if (!key.getAlgorithm().equals(certificate.getPublicKey().getAlgorithm())) {
                return false;
            }
            java.security.Signature signature = java.security.Signature.getInstance(
                    key.getAlgorithm().equals("EC") ? "SHA256withECDSA" : "SHA256withRSA");
            byte[] words = {1, 2, 3};
            signature.initSign(key);
            signature.update(words);
            byte[] signed = signature.sign();
            signature.initVerify(certificate);
            signature.update(words);
            return signature.verify(signed);
        }
    }

    /**
     * Opens a file.
     *
     * @throws MalformedDerException where it is no PKCS#12 file, or encrypted in another way
     * @throws GeneralSecurityException where the password doesn't open it
     */
    static Contents open(byte[] file, char[] password) throws MalformedDerException, GeneralSecurityException {
        UnicodePkcs12 reader = new UnicodePkcs12(password);
        List<Value> top = DerReader.values(file);
        if (top.isEmpty() || top.get(0).tag() != SEQUENCE) {
            throw new MalformedDerException("no sequence");
        }
        for (Value part :
                DerReader.values(content(top.get(0).at(1), DATA)).get(0).inside()) {
            reader.safe(part);
        }
        return new Contents(List.copyOf(reader.keys), List.copyOf(reader.certificates));
    }

    /** One ContentInfo of the authenticated safe. */
    private void safe(Value info) throws MalformedDerException, GeneralSecurityException {
        byte[] bags;
        if (isObject(info.at(0), DATA)) {
            bags = content(info, DATA);
        } else if (isObject(info.at(0), ENCRYPTED_DATA)) {
            // EncryptedData: version, then type, algorithm and [0] octets.
            Value encrypted = info.at(1).only().at(1);
            bags = decrypted(Der.sequence(
                    encrypted.at(1).encoded(), Der.octets(encrypted.at(2).content())));
        } else {
            return;
        }
        for (Value bag : DerReader.values(bags).get(0).inside()) {
            bag(bag);
        }
    }

    private void bag(Value bag) throws MalformedDerException, GeneralSecurityException {
        if (isObject(bag.at(0), SHROUDED_KEY)) {
            byte[] pkcs8 = decrypted(bag.at(1).only().encoded());
            keys.add(key(pkcs8));
        } else if (isObject(bag.at(0), CERTIFICATE)) {
            // CertBag: type, then [0] an octet string with the certificate.
            byte[] encoded = bag.at(1).only().at(1).only().content();
            certificates.add((X509Certificate)
                    CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(encoded)));
        }
    }

    private static PrivateKey key(byte[] pkcs8) throws GeneralSecurityException {
        PKCS8EncodedKeySpec spec = new PKCS8EncodedKeySpec(pkcs8);
        try {
            return KeyFactory.getInstance("RSA").generatePrivate(spec);
        } catch (GeneralSecurityException e) {
            return KeyFactory.getInstance("EC").generatePrivate(spec);
        }
    }

    /** Decrypts an EncryptedPrivateKeyInfo (RFC 5208, 6), which has the form of any value encrypted by a password. */
    private byte[] decrypted(byte[] info) throws MalformedDerException, GeneralSecurityException {
        EncryptedPrivateKeyInfo encrypted;
        try {
            encrypted = new EncryptedPrivateKeyInfo(info);
        } catch (IOException e) {
            throw new MalformedDerException("no encrypted value");
        }
        AlgorithmParameters parameters = encrypted.getAlgParameters();
        Matcher name = PBES2.matcher(String.valueOf(parameters));
        if (parameters == null || !name.matches()) {
            throw new MalformedDerException("another encryption than PBES2 with AES");
        }
        PBEParameterSpec spec = parameters.getParameterSpec(PBEParameterSpec.class);
        if (spec.getIterationCount() > MAX_ITERATIONS) {
            throw new MalformedDerException(spec.getIterationCount() + " iterations");
        }
        PBEKeySpec given =
                new PBEKeySpec(password, spec.getSalt(), spec.getIterationCount(), Integer.parseInt(name.group(2)));
        SecretKey derived =
                SecretKeyFactory.getInstance("PBKDF2With" + name.group(1)).generateSecret(given);
        given.clearPassword();
        byte[] raw = derived.getEncoded();
        Cipher cipher = Cipher.getInstance("AES/CBC/PKCS5Padding");
        cipher.init(Cipher.DECRYPT_MODE, new SecretKeySpec(raw, "AES"), spec.getParameterSpec());
        Arrays.fill(raw, (byte) 0);
        return cipher.doFinal(encrypted.getEncryptedData());
    }

    /** The octets of a ContentInfo of this type. */
    private static byte[] content(Value info, String type) throws MalformedDerException {
        if (!isObject(info.at(0), type)) {
            throw new MalformedDerException("another content");
        }
        return info.at(1).only().content();
    }

    private static boolean isObject(Value value, String dotted) {
        return Arrays.equals(value.encoded(), Der.object(dotted));
    }
}
