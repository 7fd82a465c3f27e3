package io.rowledger.report.file;

import io.rowledger.report.BatchFigures;
import io.rowledger.report.BatchOutcome;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** {@code batch-summary.csv}: one line a job; SI, units in the header; a cell nobody knows is empty. */
final class BatchCsv {
    private BatchCsv() {}

    static void write(List<BatchOutcome> outcomes, OutputStream stream) throws IOException {
        Writer out = Cells.writer(stream);
        Cells.record(
                out,
                List.of(
                        "job",
                        "result",
                        "logs",
                        "start",
                        "end",
                        "covered_area_m2",
                        "volume_l",
                        "nitrogen_kg",
                        "missed_area_m2",
                        "overlap_area_m2",
                        "findings",
                        "results",
                        "put_together",
                        "message"));
        for (BatchOutcome outcome : outcomes) {
            List<String> cells = new ArrayList<>(
                    List.of(Cells.text(outcome.name()), outcome.result().jsonName(), Integer.toString(outcome.logs())));
            BatchFigures of = outcome.figures();
            if (of == null) {
                cells.addAll(List.of("", "", "", "", "", "", "", ""));
            } else {
                cells.add(Objects.requireNonNullElse(Decimals.time(of.job().startS()), ""));
                cells.add(Objects.requireNonNullElse(Decimals.time(of.job().endS()), ""));
                cells.add(Decimals.text(of.job().coveredM2(), Decimals.AREA_M2));
                cells.add(Decimals.text(of.volumeL(), Decimals.VOLUME_L));
                cells.add(Decimals.text(of.job().nitrogenKg(), Decimals.NITROGEN_KG));
                cells.add(Decimals.text(of.missedM2(), Decimals.AREA_M2));
                cells.add(Decimals.text(of.overlapM2(), Decimals.AREA_M2));
                cells.add(Integer.toString(of.findings().size()));
            }
            cells.add(Cells.text(Objects.requireNonNullElse(outcome.results(), "")));
            cells.add(Cells.text(outcome.how()));
            cells.add(Cells.text(outcome.message()));
            Cells.record(out, cells);
        }
        out.flush();
    }
}
