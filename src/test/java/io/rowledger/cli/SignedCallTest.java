package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.TestKeys;
import io.rowledger.sim.SmallJob;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.cert.X509Certificate;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code report --sign} from the call to a record whose signature another library verifies. */
@Tag("slow")
class SignedCallTest {
    @TempDir
    private Path folder;

    @Test
    void the_record_of_a_call_is_signed_by_the_key_of_the_call() throws Exception {
        SmallJob.writeTo(folder, 5, 80);
        KeyPair pair = TestKeys.pair("secp256r1");
        X509Certificate certificate = TestKeys.certificate(pair, TestKeys.issuer(), KeyUsage.digitalSignature);
        Path key = TestKeys.modernFile(folder, "Grüße 田", pair.getPrivate(), certificate);
        Path password = Files.writeString(folder.resolve("password"), "\ufeffGrüße 田\r\n");
        List<Object> call = List.of(
                "report",
                folder.resolve("log.csv"),
                "--rig",
                folder.resolve("rig.yaml"),
                "--for",
                "landlord",
                "--sign",
                key,
                "--sign-password-file",
                password,
                "--sign-time",
                "2026-06-03T07:30:00-05:00",
                "--out",
                folder.resolve("out"));
        Calls done = Calls.of(call.toArray());
        assertEquals(0, done.status(), done.err());
        byte[] pdf = Files.readAllBytes(folder.resolve("out/nitrogen-record.pdf"));
        verify(pdf, certificate);
    }

    private static void verify(byte[] pdf, X509Certificate certificate) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<PDSignature> signatures = document.getSignatureDictionaries();
            assertEquals(1, signatures.size());
            PDSignature signature = signatures.get(0);
            CMSSignedData cms = new CMSSignedData(
                    new CMSProcessableByteArray(signature.getSignedContent(pdf)), signature.getContents(pdf));
            SignerInformation signer =
                    cms.getSignerInfos().getSigners().iterator().next();
            assertTrue(signer.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate)));
            byte[] changed = signature.getSignedContent(pdf);
            changed[changed.length / 2] ^= 1;
            CMSSignedData forged = new CMSSignedData(new CMSProcessableByteArray(changed), signature.getContents(pdf));
            SignerInformation of =
                    forged.getSignerInfos().getSigners().iterator().next();
            boolean good;
            try {
                good = of.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate));
            } catch (org.bouncycastle.cms.CMSException e) {
                good = false;
            }
            assertFalse(good, "a changed byte");
        }
    }
}
