package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Arrays;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.jce.provider.BouncyCastleProvider;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/**
 * The program signs with the JDK's keys and its own writing of RFC 5652; here PDFBox says which bytes are signed and Bouncy
 * Castle whether the signature holds.
 */
@Tag("slow")
class PdfSignerTest {
    private static final Instant AT = Instant.parse("2026-06-03T12:30:00Z");
    private static final Attachment FIGURES =
            new Attachment("record.json", "application/json", "Figures", new byte[] {'{', '}'});

    @TempDir
    private Path folder;

    private SigningKey key(String kind) throws GeneralSecurityException, IOException {
        return SigningKey.read(TestKeys.file(folder, kind), TestKeys.PASSWORD.toCharArray(), AT);
    }

    private byte[] page() throws IOException {
        return ArchiveTest.withAttachments(folder, List.of());
    }

    /** Whether the signature holds: as Bouncy Castle sees it, over the bytes PDFBox takes from the byte range. */
    private static boolean holds(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDSignature signature = document.getSignatureDictionaries().get(0);
            return holds(signature.getSignedContent(pdf), signature.getContents(pdf));
        }
    }

    private static boolean holds(byte[] content, byte[] signature) throws Exception {
        CMSSignedData cms = new CMSSignedData(new CMSProcessableByteArray(content), signature);
        SignerInformation signer = cms.getSignerInfos().getSigners().iterator().next();
        X509CertificateHolder certificate = cms.getCertificates().getMatches(null).stream()
                .filter(signer.getSID()::match)
                .findFirst()
                .orElseThrow();
        // RFC 5035, 5: the certificate must be the one that was signed along.
        byte[] named = named(signer).getCertHash();
        String hash = named.length == 32 ? "SHA-256" : named.length == 48 ? "SHA-384" : "SHA-512";
        boolean same = Arrays.equals(MessageDigest.getInstance(hash).digest(certificate.getEncoded()), named);
        try {
            return same && signer.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate));
        } catch (CMSException e) {
            return false;
        }
    }

    private static ESSCertIDv2 named(SignerInformation signer) {
        return SigningCertificateV2.getInstance(signer.getSignedAttributes()
                        .get(PKCSObjectIdentifiers.id_aa_signingCertificateV2)
                        .getAttributeValues()[0])
                .getCerts()[0];
    }

    @ParameterizedTest
    @ValueSource(strings = {"RSA", "secp256r1", "secp384r1", "secp521r1"})
    void a_second_library_finds_the_signature_good(String kind) throws Exception {
        byte[] page = page();
        byte[] signed = new PdfSigner(key(kind), AT).sign(page);
        assertTrue(holds(signed));
        assertArrayEquals(page, Arrays.copyOf(signed, page.length), "a signature only appends");
        try (PDDocument document = Loader.loadPDF(signed)) {
            assertEquals(1, document.getSignatureDictionaries().size());
            PDSignature signature = document.getSignatureDictionaries().get(0);
            assertEquals("ETSI.CAdES.detached", signature.getSubFilter());
            assertEquals(AT, signature.getSignDate().toInstant());
            int[] range = signature.getByteRange();
            assertEquals(0, range[0]);
            assertEquals(signed.length, range[2] + range[3], "to the end of the file");
            assertEquals('<', signed[range[1]]);
            assertEquals('>', signed[range[2] - 1]);
            assertTrue(new PDFTextStripper().getText(document).contains("1,289 kg"));
            assertNotNull(
                    document.getSignatureFields().get(0).getWidgets().get(0).getPage());
        }
    }

    @Test
    void a_flipped_byte_anywhere_breaks_the_signature() throws Exception {
        byte[] signed = new PdfSigner(key("RSA"), AT).sign(page());
        int[] range;
        try (PDDocument document = Loader.loadPDF(signed)) {
            range = document.getSignatureDictionaries().get(0).getByteRange();
        }
        int end = range[2] - 2;
        while (signed[end] == '0') {
            end--;
        }
        // In the page, in the update before the signature, in the signature itself (its middle), in the table at the
        // end.
        for (int at : new int[] {range[1] / 3, range[1] - 300, range[1] + 1 + 2 * 700, end, range[2] + 60}) {
            byte[] changed = signed.clone();
            changed[at] ^= 1;
            assertFalse(verifies(changed, range), "byte " + at);
        }
        assertTrue(verifies(signed, range));
    }

    /** Without reading the file's structure, which a changed byte may have broken. */
    private static boolean verifies(byte[] pdf, int[] range) {
        byte[] content = Arrays.copyOf(pdf, range[1] + range[3]);
        System.arraycopy(pdf, range[2], content, range[1], range[3]);
        String hex = new String(pdf, range[1] + 1, range[2] - range[1] - 2, StandardCharsets.US_ASCII);
        try {
            return holds(content, HexFormat.of().parseHex(hex));
        } catch (Exception e) {
            return false;
        }
    }

    /** ETSI EN 319 142-1, 6.3 (level B-B): the signing certificate is signed, the time stands in the dictionary alone. */
    @ParameterizedTest
    @ValueSource(strings = {"RSA", "secp384r1"})
    void the_signature_names_its_certificate_and_no_time(String kind) throws Exception {
        SigningKey key = key(kind);
        byte[] signed = new PdfSigner(key, AT).sign(page());
        try (PDDocument document = Loader.loadPDF(signed)) {
            CMSSignedData cms =
                    new CMSSignedData(document.getSignatureDictionaries().get(0).getContents(signed));
            SignerInformation signer =
                    cms.getSignerInfos().getSigners().iterator().next();
            assertEquals(null, signer.getSignedAttributes().get(CMSAttributes.signingTime));
            assertEquals(
                    key.chain().get(0).getSerialNumber(),
                    named(signer).getIssuerSerial().getSerial().getValue());
        }
    }

    @Test
    void a_signed_page_is_still_fit_for_an_archive() throws Exception {
        SigningKey key = key("RSA");
        Archivist.check(new PdfSigner(key, AT).sign(page()), PDFAFlavour.PDFA_2_A);
        byte[] attached = ArchiveTest.withAttachments(folder, List.of(FIGURES));
        Archivist.check(new PdfSigner(key, AT).sign(attached), PDFAFlavour.PDFA_3_A);
    }

    @Test
    void the_same_rsa_key_and_time_give_the_same_bytes() throws Exception {
        SigningKey key = key("RSA");
        byte[] once = new PdfSigner(key, AT).sign(page());
        assertArrayEquals(once, new PdfSigner(key, AT).sign(page()));
        assertFalse(Arrays.equals(once, new PdfSigner(key, AT.plusSeconds(1)).sign(page())));
    }

    @Test
    void the_issuers_certificates_go_into_the_signature() throws Exception {
        KeyPair issuer = TestKeys.pair("secp256r1");
        KeyPair pair = TestKeys.pair("RSA");
        X509Certificate own = TestKeys.certificate(pair, issuer, KeyUsage.nonRepudiation);
        X509Certificate its = new JcaX509CertificateConverter()
                .getCertificate(new JcaX509v3CertificateBuilder(
                                new X500Name("CN=Test issuer,O=Nobody"),
                                BigInteger.TWO,
                                Date.from(TestKeys.FROM),
                                Date.from(TestKeys.TO),
                                new X500Name("CN=Test issuer,O=Nobody"),
                                issuer.getPublic())
                        .build(new JcaContentSignerBuilder("SHA256withECDSA").build(issuer.getPrivate())));
        Path file = TestKeys.file(folder, pair.getPrivate(), own, its);
        byte[] signed = new PdfSigner(SigningKey.read(file, TestKeys.PASSWORD.toCharArray(), AT), AT).sign(page());
        assertTrue(holds(signed));
        try (PDDocument document = Loader.loadPDF(signed)) {
            CMSSignedData cms =
                    new CMSSignedData(document.getSignatureDictionaries().get(0).getContents(signed));
            assertEquals(2, cms.getCertificates().getMatches(null).size());
        }
    }

    private void refused(Path file, String password, Instant at, String words) {
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> SigningKey.read(file, password.toCharArray(), at));
        assertTrue(e.getMessage().contains(words), e.getMessage());
        assertTrue(e.getMessage().contains("Hint:"), e.getMessage());
        assertEquals(file.toString(), e.file());
    }

    @Test
    void a_key_that_cannot_sign_is_refused_with_the_reason() throws Exception {
        Path file = TestKeys.file(folder, "RSA");
        refused(file, "wrong", AT, "this password does not open");
        refused(file, TestKeys.PASSWORD, TestKeys.FROM.minusSeconds(1), "not valid before 2026-01-01T00:00:00Z");
        refused(file, TestKeys.PASSWORD, TestKeys.TO.plusSeconds(1), "ran out at 2027-01-01T00:00:00Z");
        refused(folder.resolve("none.p12"), TestKeys.PASSWORD, AT, "no such file");
        refused(folder, TestKeys.PASSWORD, AT, "a file that can't be read");
        refused(Files.writeString(folder.resolve("text.p12"), "a key? no"), TestKeys.PASSWORD, AT, "no PKCS#12 file");
        KeyPair pair = TestKeys.pair("RSA");
        X509Certificate certificate = TestKeys.certificate(pair, pair, KeyUsage.keyEncipherment);
        refused(TestKeys.file(folder, null, certificate), TestKeys.PASSWORD, AT, "no private key");
        refused(
                TestKeys.file(folder, pair.getPrivate(), certificate),
                TestKeys.PASSWORD,
                AT,
                "a certificate that is not for signing");
        KeyPair odd = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
        refused(
                TestKeys.file(folder, odd.getPrivate(), TestKeys.certificate(odd, pair, KeyUsage.digitalSignature)),
                TestKeys.PASSWORD,
                AT,
                "a key of kind");
    }

    @Test
    void keys_that_can_be_forged_are_refused() throws Exception {
        KeyPair issuer = TestKeys.issuer();
        KeyPairGenerator rsa = KeyPairGenerator.getInstance("RSA");
        rsa.initialize(1024);
        KeyPairGenerator ec = KeyPairGenerator.getInstance("EC", new BouncyCastleProvider());
        ec.initialize(new ECGenParameterSpec("secp224r1"));
        for (KeyPair weak : List.of(rsa.generateKeyPair(), ec.generateKeyPair())) {
            X509Certificate certificate = TestKeys.certificate(weak, issuer, KeyUsage.digitalSignature);
            Path file = TestKeys.modernFile(folder, "größe", weak.getPrivate(), certificate);
            boolean known = weak.getPrivate().getAlgorithm().equals("RSA");
            // Java itself does not know the shorter curves any more.
            refused(file, "größe", AT, known ? "an RSA key of 1024 bits" : "found ");
        }
        KeyPair weak = rsa.generateKeyPair();
        refused(
                TestKeys.file(folder, weak.getPrivate(), TestKeys.certificate(weak, issuer, KeyUsage.digitalSignature)),
                TestKeys.PASSWORD,
                AT,
                "an RSA key of 1024 bits");
    }

    @Test
    void a_password_beyond_ascii_opens_a_file_and_a_wrong_one_does_not() throws Exception {
        for (String kind : List.of("RSA", "secp384r1")) {
            KeyPair pair = TestKeys.pair(kind);
            X509Certificate certificate = TestKeys.certificate(pair, TestKeys.issuer(), KeyUsage.digitalSignature);
            Path file = TestKeys.modernFile(folder, "größe € 田", pair.getPrivate(), certificate);
            SigningKey key = SigningKey.read(file, "größe € 田".toCharArray(), AT);
            assertEquals(pair.getPrivate(), key.key());
            assertEquals(List.of(certificate), key.chain());
            refused(file, "grösse € 田", AT, "this password does not open");
            refused(file, "plain", AT, "this password does not open");
        }
        refused(Files.writeString(folder.resolve("text.p12"), "a key? no"), "ä", AT, "no PKCS#12 file");
        refused(
                Files.write(folder.resolve("cut.p12"), new byte[] {0x30, (byte) 0x84, 127, 1, 1, 1}),
                "ä",
                AT,
                "no PKCS#12");
    }
}
