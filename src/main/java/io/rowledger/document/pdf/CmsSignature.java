package io.rowledger.document.pdf;

import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.security.interfaces.ECKey;
import java.util.ArrayList;
import java.util.List;

/**
 * A detached signature in the Cryptographic Message Syntax (RFC 5652) as a PDF carries it (CAdES baseline, ETSI EN 319
 * 122-1): content type, digest and signing certificate (RFC 5035) are signed; the time stands in the PDF, not here (ETSI EN
 * 319 142-1). RSA keys sign with PKCS#1 v1.5 and SHA-256, which gives the same bytes every time; EC keys with ECDSA and
 * the SHA-2 of the curve's size, which doesn't.
 */
final class CmsSignature {
    private static final String DATA = "1.2.840.113549.1.7.1";
    private static final String SIGNED_DATA = "1.2.840.113549.1.7.2";
    private static final String CONTENT_TYPE = "1.2.840.113549.1.9.3";
    private static final String MESSAGE_DIGEST = "1.2.840.113549.1.9.4";
    private static final String SIGNING_CERTIFICATE_V2 = "1.2.840.113549.1.9.16.2.47";
    /** Context tag 0, constructed. */
    private static final int FIRST = 0xa0;
    /** The directory name among the general names of RFC 5280. */
    private static final int DIRECTORY_NAME = 0xa4;

    /** Digest and signature by their Java names and object identifiers (RFC 5754). */
    private enum Algorithm {
        RSA("SHA-256", "2.16.840.1.101.3.4.2.1", "SHA256withRSA", "1.2.840.113549.1.1.11"),
        EC_256("SHA-256", "2.16.840.1.101.3.4.2.1", "SHA256withECDSA", "1.2.840.10045.4.3.2"),
        EC_384("SHA-384", "2.16.840.1.101.3.4.2.2", "SHA384withECDSA", "1.2.840.10045.4.3.3"),
        EC_521("SHA-512", "2.16.840.1.101.3.4.2.3", "SHA512withECDSA", "1.2.840.10045.4.3.4");

        final String digest;
        final String digestId;
        final String signature;
        final String signatureId;

        Algorithm(String digest, String digestId, String signature, String signatureId) {
            this.digest = digest;
            this.digestId = digestId;
            this.signature = signature;
            this.signatureId = signatureId;
        }

        static Algorithm of(SigningKey key) {
            if (!(key.key() instanceof ECKey ec)) {
                return RSA;
            }
            int bits = ec.getParams().getOrder().bitLength();
            return bits <= 256 ? EC_256 : bits <= 384 ? EC_384 : EC_521;
        }
    }

    private CmsSignature() {}

    /** Signs these bytes. */
    static byte[] sign(byte[] content, SigningKey key) throws GeneralSecurityException {
        Algorithm algorithm = Algorithm.of(key);
        X509Certificate certificate = key.certificate();
        byte[] digest = MessageDigest.getInstance(algorithm.digest).digest(content);
        List<byte[]> attributes = List.of(
                attribute(CONTENT_TYPE, Der.object(DATA)),
                attribute(MESSAGE_DIGEST, Der.octets(digest)),
                attribute(SIGNING_CERTIFICATE_V2, signingCertificate(algorithm, certificate)));

        Signature signer = Signature.getInstance(algorithm.signature);
        signer.initSign(key.key());
        // Signed as a set, carried under a context tag (RFC 5652, 5.4).
        signer.update(Der.set(Der.SET, attributes));
        byte[] digestAlgorithm = Der.sequence(Der.object(algorithm.digestId));
        byte[] signerInfo = Der.sequence(
                Der.integer(BigInteger.ONE),
                Der.sequence(certificate.getIssuerX500Principal().getEncoded(), serial(certificate)),
                digestAlgorithm,
                Der.set(FIRST, attributes),
                algorithm == Algorithm.RSA
                        ? Der.sequence(Der.object(algorithm.signatureId), Der.nothing())
                        : Der.sequence(Der.object(algorithm.signatureId)),
                Der.octets(signer.sign()));
        List<byte[]> certificates = new ArrayList<>();
        for (X509Certificate one : key.chain()) {
            certificates.add(one.getEncoded());
        }
        byte[] signedData = Der.sequence(
                Der.integer(BigInteger.ONE),
                Der.tagged(Der.SET, digestAlgorithm),
                Der.sequence(Der.object(DATA)),
                Der.set(FIRST, certificates),
                Der.tagged(Der.SET, signerInfo));
        return Der.sequence(Der.object(SIGNED_DATA), Der.tagged(FIRST, signedData));
    }

    private static byte[] attribute(String type, byte[] value) {
        return Der.sequence(Der.object(type), Der.tagged(Der.SET, value));
    }

    /** SigningCertificateV2 of RFC 5035 with one ESSCertIDv2; SHA-256 is the default and must then be left out. */
    private static byte[] signingCertificate(Algorithm algorithm, X509Certificate certificate)
            throws GeneralSecurityException {
        byte[] hash = Der.octets(MessageDigest.getInstance(algorithm.digest).digest(certificate.getEncoded()));
        byte[] issuer = Der.sequence(
                Der.sequence(Der.tagged(
                        DIRECTORY_NAME, certificate.getIssuerX500Principal().getEncoded())),
                serial(certificate));
        byte[] id = algorithm.digest.equals("SHA-256")
                ? Der.sequence(hash, issuer)
                : Der.sequence(Der.sequence(Der.object(algorithm.digestId)), hash, issuer);
        return Der.sequence(Der.sequence(id));
    }

    private static byte[] serial(X509Certificate certificate) {
        return Der.integer(certificate.getSerialNumber());
    }
}
