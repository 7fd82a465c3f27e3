package io.rowledger.report.pdf;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.report.*;
import io.rowledger.units.UnitSystem;
import java.io.OutputStream;
import java.nio.file.*;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class PassReviewPdfTest {
    @Test
    void writes() throws Exception {
        for (int i = 0; i < 3; i++) {
            long t0 = System.nanoTime();
            Analysis a = (i == 1
                            ? new SyntheticJob()
                                    .withSecondProduct()
                                    .withFinding()
                                    .extraPlaces(30)
                            : new SyntheticJob())
                    .build();
            ReportOptions o = new ReportOptions(
                    i == 1 ? UnitSystem.METRIC : UnitSystem.US,
                    i == 1 ? Paper.A4 : Paper.LETTER,
                    ZoneId.of("America/Chicago"),
                    null,
                    "0.1.0");
            long t1 = System.nanoTime();
            try (OutputStream out = Files.newOutputStream(Path.of("/tmp/review" + i + ".pdf"))) {
                PassReviewPdf.write(a, PassReviewBuilder.build(a, o), o, out);
            }
            System.err.println("ms " + (System.nanoTime() - t1) / 1e6 + " build " + (t1 - t0) / 1e6);
        }
        assertTrue(true);
    }
}
