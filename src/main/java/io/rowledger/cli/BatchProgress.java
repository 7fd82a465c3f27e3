package io.rowledger.cli;

import io.rowledger.analysis.Progress;
import io.rowledger.batch.Batch;
import io.rowledger.document.text.Messages;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.LongSupplier;

/** One line for each field of a batch when it has ended, and one before the first. */
final class BatchProgress implements Batch.Listener {
    private final Progress progress;
    private final UnitFormat units;
    private final LongSupplier nanos;
    private final Map<String, Long> begun = new ConcurrentHashMap<>();

    BatchProgress(Progress progress, UnitSystem units, LongSupplier nanos) {
        this.progress = progress;
        this.units = new UnitFormat(units, ZoneOffset.UTC);
        this.nanos = nanos;
    }

    @Override
    public void planned(int jobs, int logs, int toDo) {
        progress.begins("reading the folder", jobs + " jobs of " + logs + " logs, " + toDo + " to do");
    }

    @Override
    public void begins(String name) {
        begun.put(name, nanos.getAsLong());
    }

    @Override
    public void ended(BatchOutcome outcome, int ended, int of) {
        Long start = begun.get(outcome.name());
        BatchFigures figures = outcome.figures();
        progress.begins(
                ended + "/" + of,
                outcome.name() + ", "
                        + Messages.english(units).text(outcome.result().text())
                        + (figures == null
                                ? ""
                                : ", "
                                        + units.text(
                                                QuantityKind.AREA, figures.job().coveredM2()))
                        + (start == null ? "" : ", " + seconds((nanos.getAsLong() - start) / 1e9)));
    }

    /** {@code 12.3 s}. */
    static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.1f s", seconds);
    }
}
