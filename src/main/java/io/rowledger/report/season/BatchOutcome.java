package io.rowledger.report.season;

import org.jspecify.annotations.Nullable;

/**
 * What became of one job of a batch.
 *
 * @param name of the job
 * @param result what became of it
 * @param logs how many logs it has
 * @param how it was put together; empty where it could not be
 * @param message why it was skipped or failed; empty where it was done
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
        /** Analysed in this run. */
        DONE("done"),
        /** Its files and options are those of results that are there. */
        AS_BEFORE("as before"),
        /** All its logs are in another job. */
        SAME_LOG("same log"),
        /** Its files can't be used as they are. */
        UNUSABLE("can't be used"),
        /** The program failed. */
        FAILED("program failed");

        private final String words;

        Result(String words) {
            this.words = words;
        }

        /** As a person reads it. */
        public String words() {
            return words;
        }

        /** As a program reads it. */
        public String jsonName() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        /** True where the job has results that hold. */
        public boolean holds() {
            return this == DONE || this == AS_BEFORE;
        }

        /** True where somebody has to mend something. */
        public boolean hint() {
            return this == UNUSABLE || this == FAILED;
        }
    }
}
