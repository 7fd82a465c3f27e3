package io.rowledger.export;

import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** {@code batch-summary.csv}: one line a job. */
public final class BatchCsv {
    private BatchCsv() {}

    public static void write(List<BatchOutcome> outcomes, UnitFormat format, OutputStream out) throws IOException {
        new CsvTable<BatchOutcome>(format)
                .text("job", BatchOutcome::name)
                .text("result", outcome -> outcome.result().jsonName())
                .whole("logs", BatchOutcome::logs)
                .time("start", known(of -> of.job().startS()))
                .time("end", known(of -> of.job().endS()))
                .figure("covered_area", QuantityKind.AREA, known(of -> of.job().coveredM2()))
                .figure("volume", QuantityKind.VOLUME, known(BatchFigures::volumeL))
                .figure("nitrogen", QuantityKind.NITROGEN, known(of -> of.job().nitrogenKg()))
                .figure("skip_area", QuantityKind.AREA, known(BatchFigures::skipM2))
                .figure("overlap_area", QuantityKind.AREA, known(BatchFigures::overlapM2))
                .text("findings", BatchCsv::findings)
                .text("results", BatchOutcome::results)
                .text("assembly", BatchOutcome::how)
                .text("message", BatchOutcome::message)
                .write(outcomes, out);
    }

    /** A figure of the job's results; NaN where it has none. */
    private static ToDoubleFunction<BatchOutcome> known(ToDoubleFunction<BatchFigures> figure) {
        return outcome -> {
            BatchFigures of = outcome.figures();
            return of == null ? Double.NaN : figure.applyAsDouble(of);
        };
    }

    private static String findings(BatchOutcome outcome) {
        BatchFigures of = outcome.figures();
        return of == null ? "" : Integer.toString(of.findings().size());
    }
}
