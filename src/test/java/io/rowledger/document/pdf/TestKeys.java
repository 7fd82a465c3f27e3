package io.rowledger.document.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.spec.AlgorithmParameterSpec;
import java.security.spec.ECGenParameterSpec;
import java.security.spec.RSAKeyGenParameterSpec;
import java.time.Instant;
import java.util.Date;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.DERNull;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.jce.provider.BouncyCastleProvider;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.OutputEncryptor;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.pkcs.PKCS12PfxPduBuilder;
import org.bouncycastle.pkcs.jcajce.JcaPKCS12SafeBagBuilder;
import org.bouncycastle.pkcs.jcajce.JcePKCS12MacCalculatorBuilder;
import org.bouncycastle.pkcs.jcajce.JcePKCSPBEOutputEncryptorBuilder;

/** Keys and certificates of people who don't exist, made afresh for each test by Bouncy Castle. */
public final class TestKeys {
    /** The first and last moment in which the certificates are valid. */
    public static final Instant FROM = Instant.parse("2026-01-01T00:00:00Z");

    public static final Instant TO = Instant.parse("2027-01-01T00:00:00Z");
    public static final String PASSWORD = "corn & clover";

    /** Pairs by kind: two primes of 1,024 bits take a second to find. */
    private static final Map<String, KeyPair> PAIRS = new ConcurrentHashMap<>();

    private static final String ISSUER = "issuer ";

    private TestKeys() {}

    /** A pair: {@code RSA} or the name of a curve; the same at each call. */
    public static KeyPair pair(String kind) throws GeneralSecurityException {
        return pair(kind, kind);
    }

    /** The RSA pair of whoever issues certificates for the others. */
    public static KeyPair issuer() throws GeneralSecurityException {
        return pair(ISSUER, "RSA");
    }

    private static KeyPair pair(String name, String kind) throws GeneralSecurityException {
        KeyPair known = PAIRS.get(name);
        if (known == null) {
            known = newPair(kind);
            PAIRS.put(name, known);
        }
        return known;
    }

    private static KeyPair newPair(String kind) throws GeneralSecurityException {
        boolean rsa = kind.equals("RSA");
        AlgorithmParameterSpec spec =
                rsa ? new RSAKeyGenParameterSpec(2048, RSAKeyGenParameterSpec.F4) : new ECGenParameterSpec(kind);
        KeyPairGenerator generator = KeyPairGenerator.getInstance(rsa ? "RSA" : "EC");
        generator.initialize(spec);
        return generator.generateKeyPair();
    }

    /** A certificate for the pair, by an issuer with a key of its own. */
    public static X509Certificate certificate(KeyPair pair, KeyPair issuer, int usage)
            throws GeneralSecurityException, IOException {
        X509v3CertificateBuilder builder = new JcaX509v3CertificateBuilder(
                new X500Name("CN=Test issuer,O=Nobody"),
                new BigInteger("8899aabbccddeeff00112233", 16),
                Date.from(FROM),
                Date.from(TO),
                new X500Name("CN=Test applicator,O=Nobody"),
                pair.getPublic());
        builder.addExtension(Extension.keyUsage, true, new KeyUsage(usage));
        try {
            String signing = issuer.getPrivate().getAlgorithm().equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
            return new JcaX509CertificateConverter()
                    .getCertificate(builder.build(new JcaContentSignerBuilder(signing).build(issuer.getPrivate())));
        } catch (OperatorCreationException e) {
            throw new GeneralSecurityException(e);
        }
    }

    /** Writes a PKCS#12 file with this key, or only the certificate where there is none. */
    public static Path file(Path folder, PrivateKey key, X509Certificate... chain)
            throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        if (key == null) {
            store.setCertificateEntry("only", chain[0]);
        } else {
            store.setKeyEntry("applicator", key, PASSWORD.toCharArray(), (Certificate[]) chain);
        }
        Path file = folder.resolve("key.p12");
        try (OutputStream out = Files.newOutputStream(file)) {
            store.store(out, PASSWORD.toCharArray());
        }
        return file;
    }

    /** Writes a PKCS#12 file as OpenSSL 3 does, PBES2 with AES-256 throughout and the password in UTF-8. */
    public static Path modernFile(Path folder, String password, PrivateKey key, X509Certificate certificate)
            throws Exception {
        OutputEncryptor encryptor = new JcePKCSPBEOutputEncryptorBuilder(NISTObjectIdentifiers.id_aes256_CBC)
                .setPRF(new AlgorithmIdentifier(PKCSObjectIdentifiers.id_hmacWithSHA256, DERNull.INSTANCE))
                .setIterationCount(2048)
                .setProvider(new BouncyCastleProvider())
                .build(password.toCharArray());
        PKCS12PfxPduBuilder file = new PKCS12PfxPduBuilder();
        file.addEncryptedData(encryptor, new JcaPKCS12SafeBagBuilder(certificate).build());
        file.addData(new JcaPKCS12SafeBagBuilder(key, encryptor).build());
        byte[] bytes = file.build(
                        new JcePKCS12MacCalculatorBuilder().setProvider(new BouncyCastleProvider()),
                        password.toCharArray())
                .getEncoded(ASN1Encoding.DER);
        return Files.write(folder.resolve("modern.p12"), bytes);
    }

    /** A PKCS#12 file with a key that may sign. */
    public static Path file(Path folder, String kind) throws GeneralSecurityException, IOException {
        KeyPair pair = pair(kind);
        KeyPair issuer = issuer();
        return file(folder, pair.getPrivate(), certificate(pair, issuer, KeyUsage.digitalSignature));
    }
}
