package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.verapdf.core.VeraPDFException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Holds a PDF against the rules of ISO 19005 or ISO 14289 with the reference validator veraPDF. */
final class Archivist {
    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private Archivist() {}

    /** The rules a PDF breaks, with the first place each; and how many rules were held against it at all. */
    record Opinion(Map<String, String> broken, int checks) {}

    static Opinion opinion(byte[] pdf, PDFAFlavour flavour) throws IOException {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
            Map<String, String> broken = new TreeMap<>();
            for (TestAssertion check : result.getTestAssertions()) {
                if (check.getStatus() == TestAssertion.Status.FAILED) {
                    broken.putIfAbsent(
                            check.getRuleId().getClause() + "-"
                                    + check.getRuleId().getTestNumber(),
                            check.getMessage() + " @ " + check.getLocation().getContext());
                }
            }
            return new Opinion(broken, result.getTotalAssertions());
        } catch (VeraPDFException e) {
            throw new IOException(e);
        }
    }

    static void check(byte[] pdf, PDFAFlavour flavour) throws IOException {
        Opinion opinion = opinion(pdf, flavour);
        assertTrue(opinion.checks > 500, "only " + opinion.checks + " checks");
        assertTrue(opinion.broken.isEmpty(), () -> flavour.getId() + ":\n" + opinion.broken);
    }
}
