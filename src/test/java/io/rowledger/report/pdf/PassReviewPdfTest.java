package io.rowledger.report.pdf;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.report.*;
import io.rowledger.report.file.*;
import io.rowledger.units.UnitSystem;
import java.nio.file.*;
import java.time.ZoneId;
import java.util.*;
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
                            : i == 2
                                    ? new SyntheticJob()
                                            .even()
                                            .withoutBoundary()
                                            .withoutTarget()
                                            .withoutDensity()
                                    : new SyntheticJob())
                    .build();
            ReportOptions o = new ReportOptions(
                    i == 1 ? UnitSystem.METRIC : UnitSystem.US,
                    i == 1 ? Paper.A4 : Paper.LETTER,
                    ZoneId.of("America/Chicago"),
                    null,
                    "0.1.0");
            long t1 = System.nanoTime();
            Reports.write(a, o, Path.of("/tmp/out" + i), EnumSet.of(Audience.APPLICATOR));
            System.err.println("ms " + (System.nanoTime() - t1) / 1e6 + " build " + (t1 - t0) / 1e6);
        }
        assertTrue(true);
    }

    public static void main(String[] x) throws Exception {
        long t0 = System.nanoTime();
        new PassReviewPdfTest().writes();
        System.err.println("all " + (System.nanoTime() - t0) / 1e6);
    }
}
