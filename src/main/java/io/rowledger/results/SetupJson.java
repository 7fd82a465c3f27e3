package io.rowledger.results;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.CorrectedRun;
import io.rowledger.analysis.SetupReview;
import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.rig.Product;
import io.rowledger.rig.RigCorrection;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** {@code setup-check.json}: the rig file's figures against what the log says, in SI, {@code null} where it can't tell. */
public record SetupJson(
        String schema,
        String programVersion,
        List<Parameter> parameters,
        @OrNull @Nullable Corrected corrected) {
    /** Decimals: a millimeter, a millisecond. */
    private static final int FINE = 3;

    /** Writes the setup check of a job. */
    public static void write(Analysis a, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(
                new SetupJson(
                        ResultFile.SETUP_CHECK.schemaId(),
                        programVersion,
                        a.setup().check().measurements().stream()
                                .map(parameter -> Parameter.of(
                                        parameter, a.setup(), a.rig().products()))
                                .toList(),
                        Corrected.of(a.setup().corrected(), a.coverage())),
                out);
    }

    /** The short form in {@code summary.json}. */
    record Summary(
            List<Estimate> parameters, @OrNull @Nullable Corrected corrected) {
        static Summary of(SetupReview setup, Coverage coverage, List<Product> products) {
            return new Summary(
                    setup.check().measurements().stream()
                            .map(parameter -> Estimate.of(parameter, products))
                            .toList(),
                    Corrected.of(setup.corrected(), coverage));
        }
    }

    /**
     * One figure of the setup.
     *
     * @param product key of its product, null where it belongs to the bar
     * @param rigKey its key in the rig file
     * @param rigValue what the rig file says
     * @param estimate what the log says, between low and high with 90 % coverage
     * @param differs true where the log contradicts the rig file
     */
    record Estimate(
            String parameter,
            @OrNull @Nullable String product,
            String rigKey,
            String unit,
            @Decimals(FINE) double rigValue,
            @Decimals(FINE) double estimate,
            @Decimals(FINE) double low,
            @Decimals(FINE) double high,
            boolean differs) {
        static Estimate of(SetupMeasurement p, List<Product> products) {
            return new Estimate(
                    p.parameter().jsonName(),
                    p.product() < 0 ? null : products.get(p.product()).key(),
                    p.key(),
                    unit(p.parameter()),
                    p.given(),
                    p.estimate(),
                    p.low(),
                    p.high(),
                    p.differs());
        }

        private static String unit(SetupParameter what) {
            return switch (what) {
                case FLOW_LAG -> "s";
                case OUTSIDE_SHARE, ROW_ORDER -> "1";
                default -> "m";
            };
        }
    }

    /**
     * The same with the line of the rig file that it would change and what the estimate rests on.
     *
     * @param rigLine line in the rig file, null where none would change
     */
    record Parameter(
            String parameter,
            @OrNull @Nullable String product,
            String rigKey,
            String unit,
            @Decimals(FINE) double rigValue,
            @Decimals(FINE) double estimate,
            @Decimals(FINE) double low,
            @Decimals(FINE) double high,
            boolean differs,
            @OrNull @Nullable Integer rigLine,
            @OrNull @Nullable String writtenBefore,
            @OrNull @Nullable String writtenAfter,
            String basis,
            String alternative) {
        static Parameter of(SetupMeasurement p, SetupReview setup, List<Product> products) {
            Estimate e = Estimate.of(p, products);
            RigCorrection.Line line = setup.line(p);
            return new Parameter(
                    e.parameter,
                    e.product,
                    e.rigKey,
                    e.unit,
                    e.rigValue,
                    e.estimate,
                    e.low,
                    e.high,
                    e.differs,
                    line == null ? null : line.line(),
                    line == null ? null : line.before(),
                    line == null ? null : line.after(),
                    FindingFacts.filed(p.basis()),
                    FindingFacts.filed(p.alternative()));
        }
    }

    /** Areas by the rig file and by the corrected one. */
    record Corrected(String rigFile, Areas before, Areas after) {
        static @Nullable Corrected of(@Nullable CorrectedRun run, Coverage before) {
            return run == null
                    ? null
                    : new Corrected(SetupReview.CORRECTED_FILE, Areas.of(before), Areas.of(run.coverage()));
        }
    }

    /** Areas of a job. */
    record Areas(
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double overlapAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double skipAreaM2) {
        static Areas of(Coverage c) {
            return new Areas(c.coveredAreaM2(), c.overlapAreaM2(), c.skipAreaM2());
        }
    }
}
