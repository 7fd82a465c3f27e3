package io.rowledger.report.season;

import io.rowledger.text.Message;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What became of one job of a batch.
 *
 * @param name of the job
 * @param result what became of it
 * @param logs number of logs
 * @param how the files it was made from; empty if that is not known
 * @param message why it was skipped or failed; empty if it was done
 * @param results the folder of its results below that of the batch, or null
 * @param figures its figures, or null
 */
public record BatchOutcome(
        String name,
        Result result,
        int logs,
        String how,
        String message,
        @Nullable String results,
        @Nullable BatchFigures figures) {
    /** What became of a job. */
    public enum Result {
        /** Analyzed in this run. */
        DONE,
        /** Results of the same files and options exist already. */
        AS_BEFORE,
        /** All its logs are in another job. */
        SAME_LOG,
        /** Its files can't be used as they are. */
        UNUSABLE,
        /** The program failed. */
        FAILED;

        /** The result in words. */
        public Message text() {
            return Message.of("season.result." + name());
        }

        /** The name in JSON and CSV. */
        public String jsonName() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** True if the job has valid results. */
        public boolean hasResults() {
            return this == DONE || this == AS_BEFORE;
        }

        /** True if the user has to change something before the job can be done. */
        public boolean needsAction() {
            return this == UNUSABLE || this == FAILED;
        }
    }
}
