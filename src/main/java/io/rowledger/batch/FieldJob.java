package io.rowledger.batch;

import io.rowledger.analysis.JobFiles;
import io.rowledger.finding.UnusableInputException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A job as it was put together.
 *
 * @param name its folder below the folder handed in, with {@code /} between folders; its results go under the same name
 * @param logs its logs
 * @param files what {@code report} would be handed, or null where there is a problem
 * @param how it was put together, a sentence
 * @param problem why it can't be done, or null
 */
record FieldJob(
        String name,
        List<Path> logs,
        @Nullable JobFiles files,
        String how,
        @Nullable UnusableInputException problem) {
    FieldJob {
        logs = List.copyOf(logs);
    }

    FieldJob unusable(UnusableInputException why) {
        return new FieldJob(name, logs, null, how, why);
    }

    /** The same without some of its logs, and why. */
    FieldJob withLogs(List<Path> kept, String why) {
        JobFiles fewer = files == null
                ? null
                : new JobFiles(
                        kept, files.rig(), files.boundary(), files.prescription(), files.keepOut(), files.setbackM());
        return new FieldJob(name, kept, fewer, how + " " + why, problem);
    }
}
