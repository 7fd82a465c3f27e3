package io.rowledger.export;

import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.results.JsonNumbers;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** {@code batch-summary.csv}: one line a job; SI, units in the header; a cell nobody knows is empty. */
public final class BatchCsv {
    private BatchCsv() {}

    public static void write(List<BatchOutcome> outcomes, OutputStream stream) throws IOException {
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
                        "skip_area_m2",
                        "overlap_area_m2",
                        "findings",
                        "results",
                        "assembly",
                        "message"));
        for (BatchOutcome outcome : outcomes) {
            List<String> cells = new ArrayList<>(
                    List.of(Cells.text(outcome.name()), outcome.result().jsonName(), Integer.toString(outcome.logs())));
            BatchFigures of = outcome.figures();
            if (of == null) {
                cells.addAll(List.of("", "", "", "", "", "", "", ""));
            } else {
                cells.add(Objects.requireNonNullElse(JsonNumbers.time(of.job().startS()), ""));
                cells.add(Objects.requireNonNullElse(JsonNumbers.time(of.job().endS()), ""));
                cells.add(JsonNumbers.text(of.job().coveredM2(), JsonNumbers.AREA_M2));
                cells.add(JsonNumbers.text(of.volumeL(), JsonNumbers.VOLUME_L));
                cells.add(JsonNumbers.text(of.job().nitrogenKg(), JsonNumbers.MASS_KG));
                cells.add(JsonNumbers.text(of.skipM2(), JsonNumbers.AREA_M2));
                cells.add(JsonNumbers.text(of.overlapM2(), JsonNumbers.AREA_M2));
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
